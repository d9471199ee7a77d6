//! What a backup says about itself.

use serde::{Deserialize, Serialize};
use time::OffsetDateTime;

/// Tag of the manifest.
pub const FORMAT: &str = "fuelwright/backup/1";
/// Its name in the tar file; it comes first.
pub const NAME: &str = "manifest.json";

/// One file of the backup.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Member {
    /// Path in the data folder.
    pub path: String,
    /// Its length.
    pub bytes: u64,
    /// Its SHA-256, lower-case hexadecimal.
    pub sha256: String,
}

/// The manifest.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Manifest {
    /// Always [`FORMAT`].
    pub format: String,
    /// Version of the program that wrote it.
    pub program: String,
    /// When it was made.
    #[serde(with = "time::serde::rfc3339")]
    pub made_at: OffsetDateTime,
    /// The last step of the schema.
    pub step: i64,
    /// Number of lines in the log.
    pub audit_lines: i64,
    /// Hash of the last one, hexadecimal.
    pub audit_head: String,
    /// Rows of each table.
    pub counts: Vec<(String, i64)>,
    /// Every file but the manifest itself.
    pub members: Vec<Member>,
    /// Files that rows name and the folder had not.
    pub missing: Vec<String>,
    /// Whether the signing key lies in it, wrapped.
    pub has_key: bool,
}
