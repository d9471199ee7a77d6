//! Pages: every address, who may, and what it answers.
