//! The invented shop that the demonstration shows.
