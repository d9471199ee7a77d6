//! A file too large for the memory, on its way to the disk: written as it comes under a name nobody looks for, summed on
//! the way, and given its own name only when all of it is there. One that is dropped before leaves nothing.

use std::io::{self, Write as _};
use std::path::Path;
use std::time::SystemTime;

use sha2::{Digest, Sha256};
use tempfile::NamedTempFile;

use super::store::{Files, Kept, sync};
use super::{Kind, hex};

/// How names begin while a file comes in.
const PREFIX: &str = ".incoming-";

/// A file that is still coming.
#[derive(Debug)]
pub struct Incoming {
    file: NamedTempFile,
    sum: Sha256,
    head: Vec<u8>,
    bytes: u64,
}

/// A file that came whole, not kept yet.
#[derive(Debug)]
pub struct Received {
    /// SHA-256 of its bytes, hexadecimal.
    pub sha256: String,
    /// What it is.
    pub kind: Kind,
    /// Its size.
    pub bytes: u64,
    file: NamedTempFile,
}

impl Incoming {
    /// Adds bytes. Waits for the disk: call it where that is allowed.
    pub fn write(&mut self, bytes: &[u8]) -> io::Result<()> {
        let wanted = 8_usize.saturating_sub(self.head.len()).min(bytes.len());
        self.head.extend_from_slice(&bytes[..wanted]);
        self.sum.update(bytes);
        self.bytes += bytes.len() as u64;
        self.file.write_all(bytes)
    }

    /// How many bytes came so far.
    pub fn bytes(&self) -> u64 {
        self.bytes
    }

    /// All of it is there.
    pub fn finish(mut self) -> io::Result<Received> {
        self.file.flush()?;
        let sha256 = hex(&self.sum.finalize());
        Ok(Received { sha256, kind: Kind::of_log(&self.head), bytes: self.bytes, file: self.file })
    }
}

impl Received {
    /// Where its bytes lie until it is kept or dropped.
    pub fn path(&self) -> &Path {
        self.file.path()
    }
}

impl Files {
    /// Begins a file.
    pub fn incoming(&self) -> io::Result<Incoming> {
        self.make(self.folder())?;
        let file = tempfile::Builder::new().prefix(PREFIX).tempfile_in(self.folder())?;
        Ok(Incoming { file, sum: Sha256::new(), head: Vec::new(), bytes: 0 })
    }

    /// Keeps a file that came whole, under its checksum; after that, and not before, a row may name it.
    pub fn keep_received(&self, one: Received) -> io::Result<()> {
        let path = self.path(&one.sha256).ok_or(io::ErrorKind::InvalidInput)?;
        if self.state(&one.sha256)? == Kept::Sound {
            return Ok(());
        }
        let folder = path.parent().unwrap_or(self.folder());
        self.make(folder)?;
        one.file.as_file().sync_all()?;
        one.file.persist(&path).map_err(|error| error.error)?;
        sync(folder)
    }

    /// Removes what was still coming when the machine stopped: files begun before `than`. Returns how many went.
    pub fn forget_incoming(&self, than: SystemTime) -> io::Result<u64> {
        let mut gone = 0;
        let Ok(entries) = std::fs::read_dir(self.folder()) else { return Ok(0) };
        for entry in entries {
            let entry = entry?;
            let is_incoming = entry.file_name().to_string_lossy().starts_with(PREFIX);
            if is_incoming && entry.metadata()?.modified()? < than {
                std::fs::remove_file(entry.path())?;
                gone += 1;
            }
        }
        Ok(gone)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::attachments::sha256_of;

    #[test]
    fn a_file_that_came_in_pieces_is_kept_under_the_sum_of_the_whole() {
        let folder = tempfile::tempdir().expect("a folder");
        let files = Files::in_folder(folder.path());
        let mut incoming = files.incoming().expect("begun");
        for piece in [&b"time"[..], b"", b";rpm\n0;8", b"00\n"] {
            incoming.write(piece).expect("written");
        }
        let received = incoming.finish().expect("whole");
        assert_eq!((received.kind, received.bytes), (Kind::Log, 15));
        let sum = received.sha256.clone();
        assert_eq!(sum, sha256_of(b"time;rpm\n0;800\n"));
        files.keep_received(received).expect("kept");
        assert_eq!(files.state(&sum).expect("read"), Kept::Sound);
        assert_eq!(std::fs::read(files.path(&sum).expect("a path")).expect("read"), b"time;rpm\n0;800\n");
    }

    #[test]
    fn a_file_that_stopped_coming_leaves_nothing() {
        let folder = tempfile::tempdir().expect("a folder");
        let files = Files::in_folder(folder.path());
        let mut incoming = files.incoming().expect("begun");
        incoming.write(b"half").expect("written");
        assert_eq!(std::fs::read_dir(folder.path()).expect("a folder").count(), 1);
        drop(incoming);
        assert_eq!(std::fs::read_dir(folder.path()).expect("a folder").count(), 0);
        // A machine that stopped drops nothing: what it left goes later, by its age, and nothing younger with it.
        std::fs::write(folder.path().join(".incoming-left"), b"half").expect("written");
        let day = std::time::Duration::from_hours(24);
        let written =
            std::fs::metadata(folder.path().join(".incoming-left")).expect("there").modified().expect("a time");
        assert_eq!(files.forget_incoming(written - day).expect("looked"), 0);
        assert_eq!(files.forget_incoming(written + day).expect("looked"), 1);
    }
}
