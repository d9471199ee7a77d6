//! The guided sheet of proving, by one person with a tablet.
