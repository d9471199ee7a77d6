//! A backup is brought back: into an empty folder, and only when every byte is what the manifest says.

use std::collections::BTreeMap;
use std::fs::{self, File, OpenOptions};
use std::io::{Read as _, Write as _};
use std::os::unix::fs::OpenOptionsExt as _;
use std::path::{Component, Path};

use anyhow::{Context, bail};

use super::key;
use super::manifest::{self, Manifest};
use crate::db::{self, Database};
use crate::seal;

/// Largest manifest read, in bytes.
const MOST_MANIFEST: u64 = 256 * 1024 * 1024;

/// The file by which one process at a time holds a data folder.
pub const LOCK: &str = "fuelwright.lock";

/// Whether nothing lies in the folder, or it is not there. The file by which one process at a time holds a folder does
/// not count: whoever restores holds it too.
pub fn is_empty(folder: &Path) -> anyhow::Result<bool> {
    if !folder.exists() {
        return Ok(true);
    }
    for entry in fs::read_dir(folder)? {
        if entry?.file_name() != LOCK {
            return Ok(false);
        }
    }
    Ok(true)
}

/// Reads `file` into the empty `folder`. Everything lies in a room inside it until all of it is proved; a refusal leaves
/// the folder as empty as it was.
///
/// # Errors
/// The folder is not empty; the file is no backup, or some part of it is missing, altered, or not in the manifest.
pub async fn unpack(file: &Path, folder: &Path, passphrase: Option<&str>) -> anyhow::Result<Manifest> {
    if !is_empty(folder)? {
        bail!("{} is not empty; a backup is brought back into an empty folder only", folder.display());
    }
    fs::create_dir_all(folder).with_context(|| format!("cannot make the folder {}", folder.display()))?;
    let room = tempfile::Builder::new().prefix(".restoring-").tempdir_in(folder)?;
    let manifest = read(file, room.path())?;
    count_again(&manifest, &room.path().join(super::pack::STORE)).await?;
    let wrapped = room.path().join(key::NAME);
    if wrapped.is_file() {
        if let Some(passphrase) = passphrase {
            let pem = key::unwrap(&fs::read(&wrapped)?, passphrase)?;
            put(&room.path().join(super::pack::KEY), &pem)?;
        }
        fs::remove_file(&wrapped)?;
    }
    for entry in fs::read_dir(room.path())? {
        let entry = entry?;
        fs::rename(entry.path(), folder.join(entry.file_name()))?;
    }
    room.close()?;
    File::open(folder)?.sync_all()?;
    Ok(manifest)
}

fn read(file: &Path, room: &Path) -> anyhow::Result<Manifest> {
    let opened = File::open(file).with_context(|| format!("cannot read {}", file.display()))?;
    let mut tar = tar::Archive::new(opened);
    let mut entries = tar.entries()?;
    let no_backup = || format!("{} is no backup of Fuelwright", file.display());
    let first = entries.next().with_context(no_backup)?.with_context(no_backup)?;
    if first.path()?.as_os_str() != manifest::NAME {
        bail!(no_backup());
    }
    let mut json = vec![];
    first.take(MOST_MANIFEST).read_to_end(&mut json)?;
    let manifest: Manifest = serde_json::from_slice(&json).with_context(no_backup)?;
    if manifest.format != manifest::FORMAT {
        bail!("the backup has the format {:?}, which this version does not know", manifest.format);
    }
    let mut wanted: BTreeMap<&str, _> = manifest.members.iter().map(|one| (one.path.as_str(), one)).collect();
    for entry in entries {
        let mut entry = entry.context("the backup is cut off")?;
        let path = entry.path()?.to_string_lossy().into_owned();
        // A name that climbs out of the folder was never written by a backup.
        let is_plain = Path::new(&path).components().all(|part| matches!(part, Component::Normal(_)));
        let Some(member) = wanted.remove(path.as_str()).filter(|_| is_plain) else {
            bail!("{path:?} is in the backup and not in its manifest");
        };
        let mut bytes = vec![];
        entry.by_ref().take(member.bytes + 1).read_to_end(&mut bytes).context("the backup is cut off")?;
        if bytes.len() as u64 != member.bytes || seal::sha256_hex(&bytes) != member.sha256 {
            bail!("{path} in the backup is not what its manifest says; nothing was restored");
        }
        put(&room.join(&path), &bytes)?;
    }
    if let Some((path, _)) = wanted.pop_first() {
        bail!("{path} is missing from the backup; nothing was restored");
    }
    Ok(manifest)
}

fn put(path: &Path, bytes: &[u8]) -> anyhow::Result<()> {
    if let Some(folder) = path.parent() {
        fs::create_dir_all(folder)?;
    }
    let mut file = OpenOptions::new().write(true).create_new(true).mode(0o600).open(path)?;
    file.write_all(bytes)?;
    file.sync_all()?;
    if let Some(folder) = path.parent() {
        File::open(folder)?.sync_all()?;
    }
    Ok(())
}

/// The store must hold what the manifest counted, and its log must end where it ended.
async fn count_again(manifest: &Manifest, store: &Path) -> anyhow::Result<()> {
    let db = Database::open_to_read(store).await?;
    let mut con = db.read().await?;
    let (counts, head) = (db::whole::counts(&mut con).await?, db::audit::head(&mut con).await?);
    drop(con);
    db.close().await;
    if head.sequence != manifest.audit_lines || seal::hex(&head.hash) != manifest.audit_head {
        bail!("the log in the backup does not end where its manifest says; nothing was restored");
    }
    if counts != manifest.counts {
        bail!("the store in the backup does not hold the rows that its manifest counts; nothing was restored");
    }
    Ok(())
}
