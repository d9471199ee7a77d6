//! Out of the house: what the shop issued, as files that are read without this program.
//!
//! Nothing here changes what the shop knows, but for the line of the log that says that it was taken out.

pub mod papers_out;
pub mod spreadsheet;
pub mod target;
