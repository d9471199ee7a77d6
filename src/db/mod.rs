//! SQL, one file a noun.
