//! Where the PDFs of issued papers lie: beside the store, each under its checksum, on the disk before any row names it.

use crate::attachments::{Files, Kind, Ready};
use crate::seal;
use crate::shop::{Refusal, Shop};

impl Shop {
    /// The folder of issued papers, beside the store.
    pub fn paper_files(&self) -> Files {
        Files::in_folder(self.db.folder().join("papers"))
    }

    /// Keeps a PDF under its checksum, on the disk before any row names it.
    pub(super) async fn keep_pdf(&self, pdf: Vec<u8>) -> Result<String, Refusal> {
        let (files, sha256) = (self.paper_files(), seal::sha256_hex(&pdf));
        let ready = Ready {
            name: String::new(),
            content: pdf,
            sha256: sha256.clone(),
            kind: Kind::Pdf,
            size: None,
            captured: None,
        };
        let kept = tokio::task::spawn_blocking(move || files.keep(&ready)).await;
        kept.map_err(|error| Refusal::Broken(error.to_string()))?
            .map_err(|error| Refusal::Broken(format!("a paper cannot be kept: {error}")))?;
        Ok(sha256)
    }

    pub(super) async fn read_pdf(&self, sha256: &str) -> Result<Option<Vec<u8>>, Refusal> {
        let (files, sha256) = (self.paper_files(), sha256.to_owned());
        let read = tokio::task::spawn_blocking(move || files.read(&sha256)).await;
        read.map_err(|error| Refusal::Broken(error.to_string()))?.map_err(|error| Refusal::Broken(error.to_string()))
    }
}
