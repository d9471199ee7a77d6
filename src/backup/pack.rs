//! A backup is written, while the shop serves.

use std::fs::{self, File};
use std::io::Write as _;
use std::path::{Path, PathBuf};

use anyhow::{Context, bail};
use time::OffsetDateTime;

use super::key;
use super::manifest::{self, Manifest, Member};
use crate::attachments::Files;
use crate::db::{self, Database};
use crate::seal;

/// Name of the store in a backup.
pub const STORE: &str = "fuelwright.db";
/// Name of the settings file.
pub const SETTINGS: &str = "fuelwright.toml";
/// Name of the signing key in a data folder; never in a backup as it is.
pub const KEY: &str = "signing-key.pem";

/// Writes the shop in `folder` to `target`: under a temporary name beside it, to the disk, then under its own name. `db`
/// may be open for reading only.
///
/// The copy of the store is made first. A row is written only after its file is on the disk, so every file that the copy
/// names is there to be taken.
///
/// # Errors
/// `target` exists, or a file cannot be read or written. Nothing is left behind then.
pub async fn pack(
    db: &Database,
    folder: &Path,
    target: &Path,
    passphrase: Option<&str>,
    now: OffsetDateTime,
) -> anyhow::Result<Manifest> {
    if target.exists() {
        bail!("{} is there already; a backup never writes over a file", target.display());
    }
    let beside = target.parent().filter(|path| !path.as_os_str().is_empty()).unwrap_or_else(|| Path::new("."));
    let room = tempfile::Builder::new()
        .prefix(".fuelwright-backup-")
        .tempdir_in(beside)
        .with_context(|| format!("cannot write in {}", beside.display()))?;
    let store = room.path().join(STORE);
    db.copy_to(&store).await?;
    let copy = Database::open(&store).await?;
    let mut con = copy.read().await?;
    let head = db::audit::head(&mut con).await?;
    let (step, counts) = (db::whole::settings(&mut con).await?.step, db::whole::counts(&mut con).await?);
    let attachments = db::attachments::list_checksums(&mut con).await?;
    let papers = db::whole::paper_checksums(&mut con).await?;
    drop(con);
    copy.close().await;
    let mut sources: Vec<(String, PathBuf)> = vec![(STORE.to_owned(), store)];
    let mut missing = vec![];
    for (name, named) in [("attachments", attachments), ("papers", papers)] {
        let files = Files::in_folder(folder.join(name));
        for sha256 in named {
            match files.path(&sha256).filter(|path| path.is_file()) {
                Some(path) => sources.push((format!("{name}/{}/{sha256}", &sha256[..2]), path)),
                None => missing.push(format!("{name}/{sha256}")),
            }
        }
    }
    let settings = folder.join(SETTINGS);
    if settings.is_file() {
        sources.push((SETTINGS.to_owned(), settings));
    }
    let key_file = folder.join(KEY);
    let has_key = match passphrase {
        Some(passphrase) if key_file.is_file() => {
            let wrapped = room.path().join(key::NAME);
            fs::write(&wrapped, key::wrap(&fs::read(&key_file)?, passphrase)?)?;
            sources.push((key::NAME.to_owned(), wrapped));
            true
        }
        _ => false,
    };
    let mut members = Vec::with_capacity(sources.len());
    for (path, source) in &sources {
        let bytes = fs::read(source).with_context(|| format!("cannot read {}", source.display()))?;
        members.push(Member { path: path.clone(), bytes: bytes.len() as u64, sha256: seal::sha256_hex(&bytes) });
    }
    let manifest = Manifest {
        format: manifest::FORMAT.to_owned(),
        program: env!("CARGO_PKG_VERSION").to_owned(),
        made_at: now,
        step,
        audit_lines: head.sequence,
        audit_head: seal::hex(&head.hash),
        counts,
        members,
        missing,
        has_key,
    };
    write(&manifest, &sources, beside, target, now)?;
    Ok(manifest)
}

fn write(
    manifest: &Manifest,
    sources: &[(String, PathBuf)],
    beside: &Path,
    target: &Path,
    now: OffsetDateTime,
) -> anyhow::Result<()> {
    // A temporary file is readable by its owner alone, and keeps that when it gets its name.
    let draft = tempfile::Builder::new().prefix(".fuelwright-backup-").tempfile_in(beside)?;
    let mut tar = tar::Builder::new(draft);
    let seconds = u64::try_from(now.unix_timestamp()).unwrap_or(0);
    let mut add = |path: &str, bytes: &[u8]| {
        let mut header = tar::Header::new_gnu();
        header.set_size(bytes.len() as u64);
        header.set_mode(0o600);
        header.set_mtime(seconds);
        tar.append_data(&mut header, path, bytes)
    };
    add(manifest::NAME, &serde_json::to_vec_pretty(manifest)?)?;
    for (path, source) in sources {
        add(path, &fs::read(source)?)?;
    }
    let mut draft = tar.into_inner()?;
    draft.flush()?;
    draft.as_file().sync_all()?;
    draft.persist_noclobber(target).with_context(|| format!("cannot write {}", target.display()))?;
    File::open(beside)?.sync_all()?;
    Ok(())
}
