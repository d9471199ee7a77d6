//! Flags, then environment, then the file in the data folder.
