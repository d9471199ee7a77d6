//! Data to PDF bytes.
