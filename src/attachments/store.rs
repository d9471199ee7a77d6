//! The folder: a file lies under its SHA-256, in a folder named by its first two figures.

use std::io::{self, Read as _, Write as _};
use std::path::{Path, PathBuf};

use sha2::{Digest, Sha256};

use super::{Ready, hex};

/// The folder of kept files.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Files {
    folder: PathBuf,
}

/// How a file lies in the folder.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kept {
    /// As it was written.
    Sound,
    /// Not there.
    Missing,
    /// There, but its bytes are others.
    Altered,
}

impl Files {
    /// Files in `folder`, which is made when the first comes.
    pub fn in_folder(folder: impl Into<PathBuf>) -> Self {
        Self { folder: folder.into() }
    }

    /// Where a file with this checksum lies; nothing for a text that is no checksum.
    pub fn path(&self, sha256: &str) -> Option<PathBuf> {
        let is_checksum = sha256.len() == 64 && sha256.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'));
        is_checksum.then(|| self.folder.join(&sha256[..2]).join(sha256))
    }

    /// Writes a file: under a name nobody looks for, to the disk, under its own name, then the folder to the disk.
    /// After that, and not before, a row may name it. A file that is there already is left alone.
    pub fn keep(&self, ready: &Ready) -> io::Result<()> {
        let path = self.path(&ready.sha256).ok_or(io::ErrorKind::InvalidInput)?;
        if self.state(&ready.sha256)? == Kept::Sound {
            return Ok(());
        }
        let folder = path.parent().unwrap_or(&self.folder);
        self.make(folder)?;
        let mut file = tempfile::Builder::new().prefix(".incoming-").tempfile_in(folder)?;
        file.write_all(&ready.content)?;
        file.as_file().sync_all()?;
        file.persist(&path).map_err(|error| error.error)?;
        sync(folder)
    }

    /// The bytes of a file; nothing when it is not there.
    pub fn read(&self, sha256: &str) -> io::Result<Option<Vec<u8>>> {
        let Some(path) = self.path(sha256) else { return Ok(None) };
        match std::fs::read(path) {
            Ok(bytes) => Ok(Some(bytes)),
            Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(None),
            Err(error) => Err(error),
        }
    }

    /// Whether a file still is what it was.
    pub fn state(&self, sha256: &str) -> io::Result<Kept> {
        let Some(path) = self.path(sha256) else { return Ok(Kept::Missing) };
        let mut file = match std::fs::File::open(path) {
            Ok(file) => file,
            Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(Kept::Missing),
            Err(error) => return Err(error),
        };
        // A log may be larger than the memory should hold.
        let (mut sum, mut piece) = (Sha256::new(), vec![0; 256 * 1024]);
        loop {
            match file.read(&mut piece)? {
                0 => break,
                length => sum.update(&piece[..length]),
            }
        }
        Ok(if hex(&sum.finalize()) == sha256 { Kept::Sound } else { Kept::Altered })
    }

    pub(super) fn folder(&self) -> &Path {
        &self.folder
    }

    pub(super) fn make(&self, folder: &Path) -> io::Result<()> {
        if folder.is_dir() {
            return Ok(());
        }
        std::fs::create_dir_all(folder)?;
        sync(&self.folder)?;
        self.folder.parent().map_or(Ok(()), sync)
    }
}

/// A rename is on the disk only when the folder that holds the name is.
pub(super) fn sync(folder: &Path) -> io::Result<()> {
    let folder = if folder.as_os_str().is_empty() { Path::new(".") } else { folder };
    std::fs::File::open(folder)?.sync_all()
}
