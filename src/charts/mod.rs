//! Numbers to strokes: one small drawing trait, SVG and PDF outputs.
