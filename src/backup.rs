//! The whole shop in one file, and back again; and the check that both rest on.
//!
//! A backup is a tar file: the store as it was at one instant, every kept file that its rows name, the settings file, the
//! signing key only when a passphrase wraps it, and a manifest with counts, checksums and the end of the audit chain.

pub mod check;
pub mod key;
pub mod manifest;
pub mod pack;
pub mod unpack;
