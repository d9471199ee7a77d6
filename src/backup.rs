//! The whole shop in one file, and back again.
