//! The data folder, opened by one process at a time.

use std::fs::{self, File, TryLockError};
use std::io::ErrorKind;
use std::path::{Path, PathBuf};

use anyhow::{Context, bail};

use crate::backup::unpack::LOCK;
use crate::clock::Clock;
use crate::config::Config;
use crate::db::Database;
use crate::seal::{Signer, key_file};
use crate::shop::issue::Issuer;
use crate::shop::{Hasher, Shop};

/// An open data folder. While it lives, no other process opens the same one.
#[derive(Debug)]
pub struct Folder {
    pub shop: Shop,
    _lock: File,
}

/// Network file systems whose locks and write order the store cannot rest on; magic numbers of the Linux headers
/// (`linux/magic.h`; CIFS and SMB2 in `fs/smb/client`, Ceph in `linux/ceph/ceph_fs.h`).
const NETWORK: &[(i64, &str)] = &[
    (0x6969, "NFS"),
    (0x517b, "SMB"),
    (0xff53_4d42, "CIFS"),
    (0xfe53_4d42, "SMB2"),
    (0x0102_1997, "9p"),
    (0x6573_5546, "FUSE or virtiofs"),
    (0x00c3_6400, "Ceph"),
];

impl Folder {
    /// Opens the folder of `config`; makes it, and the store in it, when they are missing.
    ///
    /// # Errors
    /// One sentence for whoever started the program: a folder that cannot be written or lies on a network, another process
    /// in it, a store of a newer program.
    pub async fn open(config: &Config, clock: Clock) -> anyhow::Result<Self> {
        let lock = lock(config)?;
        let db = Database::open(&config.database()).await?;
        let issuer = Issuer::new(signer(config)?, config.public_url.clone(), config.is_demo).kept_in(key_path(config));
        Ok(Self { shop: Shop { db, clock, hasher: Hasher::new(), issuer }, _lock: lock })
    }

    /// Opens a folder that must hold a shop already.
    pub async fn open_existing(config: &Config, clock: Clock) -> anyhow::Result<Self> {
        if !config.database().exists() {
            bail!("there is no shop in {}; name its folder with --data", config.data.display());
        }
        Self::open(config, clock).await
    }
}

/// The key that signs papers; made at the first start, readable by its owner alone.
fn signer(config: &Config) -> anyhow::Result<Signer> {
    let mut random = [0_u8; 32];
    rand::fill(&mut random);
    let path = key_path(config);
    key_file::load_or_create(&path, &random).with_context(|| format!("cannot use the signing key {}", path.display()))
}

fn key_path(config: &Config) -> PathBuf {
    config.data.join("signing-key.pem")
}

/// Takes the folder for this process, making it when it is missing; given back when the file is dropped.
pub(super) fn lock(config: &Config) -> anyhow::Result<File> {
    let data = &config.data;
    make(data)?;
    refuse_network(config)?;
    let file = match File::options().create(true).truncate(false).write(true).open(data.join(LOCK)) {
        Ok(file) => file,
        Err(error) if matches!(error.kind(), ErrorKind::PermissionDenied | ErrorKind::ReadOnlyFilesystem) => {
            bail!("the folder {} cannot be written by this user; Fuelwright keeps its database there", data.display())
        }
        Err(error) => return Err(error).with_context(|| format!("cannot open the folder {}", data.display())),
    };
    match file.try_lock() {
        Ok(()) => Ok(file),
        Err(TryLockError::WouldBlock) => bail!(
            "another Fuelwright is running on {}; stop it first, or name another folder with --data",
            data.display()
        ),
        Err(TryLockError::Error(error)) => Err(error).with_context(|| format!("cannot lock {}", data.display())),
    }
}

fn make(data: &Path) -> anyhow::Result<()> {
    if data.is_dir() {
        return Ok(());
    }
    fs::create_dir_all(data).with_context(|| format!("cannot make the folder {}", data.display()))?;
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        fs::set_permissions(data, fs::Permissions::from_mode(0o700))
            .with_context(|| format!("cannot close the folder {} to others", data.display()))?;
    }
    Ok(())
}

#[cfg(target_os = "linux")]
fn refuse_network(config: &Config) -> anyhow::Result<()> {
    let kind = rustix::fs::statfs(&config.data).context("cannot ask what the data folder lies on")?.f_type;
    let Some((_, name)) = NETWORK.iter().find(|(magic, _)| *magic == kind) else { return Ok(()) };
    if config.network_folder {
        eprintln!("fuelwright: {} lies on {name}; a lost connection may damage the database", config.data.display());
        return Ok(());
    }
    bail!(
        "the folder {} lies on a network file system ({name}), where a database can be damaged; use a local disk, or \
         set network_folder = true at your own risk",
        config.data.display()
    )
}

#[cfg(not(target_os = "linux"))]
fn refuse_network(_: &Config) -> anyhow::Result<()> {
    Ok(())
}
