//! The only room that asks what time it is.
