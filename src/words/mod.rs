//! A key and its values in, a sentence out.
