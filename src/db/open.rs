//! Opening the store: the one file that knows it is SQLite.
//!
//! Promises: a lost power supply loses nothing that was answered (`synchronous=FULL`); an older file is copied and the
//! copy checked before it is changed; a newer file, or a library too old to trust, is refused in one sentence.

use std::path::{Path, PathBuf};
use std::time::Duration;

use sqlx::migrate::Migrator;
use sqlx::pool::PoolOptions;
use sqlx::sqlite::{SqliteConnectOptions, SqliteJournalMode, SqliteSynchronous};
use sqlx::{ConnectOptions, Connection, Pool};

use super::{Con, Db, Reading, Result, Writing};

static MIGRATIONS: Migrator = sqlx::migrate!();

/// Libraries from 3.7.0 to 3.51.2 can lose committed pages in WAL mode (sqlite.org, wal.html, "The WAL-Reset Bug").
const OLDEST_LIBRARY: (u32, u32, u32) = (3, 51, 3);
const READERS: u32 = 4;

/// Why the store cannot be opened.
#[derive(Debug)]
pub enum CannotOpen {
    /// The file was written by a newer program.
    Newer { file: PathBuf, number: i64 },
    /// The file was written by an older program, and only reading was asked for.
    Older { file: PathBuf, number: i64 },
    /// The file does not fit this program: a step that was taken long ago reads otherwise today.
    Altered { file: PathBuf, number: i64 },
    /// The library loses data.
    OldLibrary(String),
    /// The copy made before changing an older file did not prove good.
    BadCopy { copy: PathBuf, said: String },
    /// Anything else, as the engine says it.
    Broken { file: PathBuf, error: sqlx::Error },
}

impl std::fmt::Display for CannotOpen {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Newer { file, number } => write!(
                f,
                "{} was written by a newer Fuelwright (step {number} is not known here); use that version or a backup",
                file.display()
            ),
            Self::Older { file, number } => write!(
                f,
                "{} was written by an older Fuelwright (step {number}); start this version on it once, then ask again",
                file.display()
            ),
            Self::Altered { file, number } => {
                write!(f, "{} does not belong to this version: its step {number} is another one", file.display())
            }
            Self::OldLibrary(found) => {
                write!(f, "this build carries SQLite {found}, which can lose data; 3.51.3 or newer is needed")
            }
            Self::BadCopy { copy, said } => {
                write!(
                    f,
                    "the copy made before the update, {}, is not sound ({said}); nothing was changed",
                    copy.display()
                )
            }
            Self::Broken { file, error } => write!(f, "cannot open {}: {error}", file.display()),
        }
    }
}

impl std::error::Error for CannotOpen {}

/// The open store.
#[derive(Debug, Clone)]
pub struct Database {
    writer: Pool<Db>,
    readers: Pool<Db>,
    folder: PathBuf,
}

impl Database {
    /// Opens `file`, makes it when it is missing, brings it up to date when it is older.
    pub async fn open(file: &Path) -> std::result::Result<Self, CannotOpen> {
        let broken = |error| CannotOpen::Broken { file: file.to_owned(), error };
        let mut con = options(file).connect().await.map_err(broken)?;
        refuse_old_library(&mut con).await?;
        migrate(&mut con, file).await?;
        con.close().await.map_err(broken)?;
        // After a failed COMMIT the library's idea of "in a transaction" can stay stuck on a pooled connection; every
        // later write would fail until the next start. Such a connection is dropped and a fresh one made.
        let writer = PoolOptions::new()
            .max_connections(1)
            .before_acquire(|con: &mut Con, _| Box::pin(async move { Ok(!con.is_in_transaction()) }))
            .connect_with(options(file))
            .await
            .map_err(broken)?;
        let readers = PoolOptions::new()
            .max_connections(READERS)
            .connect_with(options(file).read_only(true))
            .await
            .map_err(broken)?;
        let folder = file.parent().map(Path::to_owned).unwrap_or_default();
        Ok(Self { writer, readers, folder })
    }

    /// Opens a store that is there, to read it and nothing else, beside a process that serves it. A write is refused.
    ///
    /// # Errors
    /// [`CannotOpen::Newer`] or [`CannotOpen::Older`] when the file took other steps than this program knows.
    pub async fn open_to_read(file: &Path) -> std::result::Result<Self, CannotOpen> {
        let broken = |error| CannotOpen::Broken { file: file.to_owned(), error };
        let options = options(file).create_if_missing(false).read_only(true).optimize_on_close(false, None);
        let readers = PoolOptions::new().max_connections(READERS).connect_with(options).await.map_err(broken)?;
        let mut con = readers.acquire().await.map_err(broken)?;
        refuse_old_library(&mut con).await?;
        let taken = steps_taken(&mut con).await.map_err(broken)?.unwrap_or(0);
        let newest = newest_step();
        if taken > newest {
            return Err(CannotOpen::Newer { file: file.to_owned(), number: taken });
        }
        if taken < newest {
            return Err(CannotOpen::Older { file: file.to_owned(), number: taken });
        }
        drop(con);
        let folder = file.parent().map(Path::to_owned).unwrap_or_default();
        Ok(Self { writer: readers.clone(), readers, folder })
    }

    /// The folder in which the store lies, and kept files beside it.
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// A connection for reading.
    pub async fn read(&self) -> Result<Reading> {
        Ok(self.readers.acquire().await?)
    }

    /// A transaction for writing. It waits for the one before.
    pub async fn write(&self) -> Result<Writing> {
        Ok(self.writer.begin_with("BEGIN IMMEDIATE").await?)
    }

    /// Whether the store reads and takes a write.
    pub async fn is_ready(&self) -> Result<()> {
        sqlx::query("select count(*) from branches").execute(&mut *self.read().await?).await?;
        Ok(self.write().await?.rollback().await?)
    }

    /// Writes a whole, consistent copy to `copy`, which must not exist, while work goes on.
    pub async fn copy_to(&self, copy: &Path) -> Result<()> {
        copy_of(&mut *self.read().await?, copy).await
    }

    /// Finishes what is running and folds the log back into the file.
    pub async fn close(&self) {
        self.readers.close().await;
        self.writer.close().await;
    }
}

fn options(file: &Path) -> SqliteConnectOptions {
    SqliteConnectOptions::new()
        .filename(file)
        .create_if_missing(true)
        .journal_mode(SqliteJournalMode::Wal)
        .synchronous(SqliteSynchronous::Full)
        .foreign_keys(true)
        .busy_timeout(Duration::from_secs(5))
        .pragma("trusted_schema", "OFF")
        .pragma("journal_size_limit", "67108864")
        .pragma("mmap_size", "0")
        .pragma("cache_size", "-16000")
        .optimize_on_close(true, 400)
        .disable_statement_logging()
}

async fn refuse_old_library(con: &mut Con) -> std::result::Result<(), CannotOpen> {
    let found: String = sqlx::query_scalar("select sqlite_version()")
        .fetch_one(con)
        .await
        .map_err(|error| CannotOpen::Broken { file: PathBuf::new(), error })?;
    let mut numbers = found.split('.').map(|part| part.parse().unwrap_or(0));
    let mut next = || numbers.next().unwrap_or(0);
    if (next(), next(), next()) < OLDEST_LIBRARY { Err(CannotOpen::OldLibrary(found)) } else { Ok(()) }
}

async fn migrate(con: &mut Con, file: &Path) -> std::result::Result<(), CannotOpen> {
    use sqlx::migrate::MigrateError::{VersionMismatch, VersionMissing};
    let broken = |error| CannotOpen::Broken { file: file.to_owned(), error };
    let taken = steps_taken(con).await.map_err(broken)?;
    let newest = newest_step();
    if let Some(last) = taken {
        if last > newest {
            return Err(CannotOpen::Newer { file: file.to_owned(), number: last });
        }
        if last < newest {
            keep_a_copy(con, file, last + 1).await?;
        }
    }
    MIGRATIONS.run_direct(None, &mut *con, false).await.map_err(|error| match error {
        VersionMissing(number) => CannotOpen::Newer { file: file.to_owned(), number },
        VersionMismatch(number) => CannotOpen::Altered { file: file.to_owned(), number },
        other => broken(sqlx::Error::Migrate(Box::new(other))),
    })
}

/// The last step this program knows.
pub(super) fn newest_step() -> i64 {
    MIGRATIONS.iter().map(|step| step.version).max().unwrap_or(0)
}

/// The last step the file has taken; `None` for a fresh file.
async fn steps_taken(con: &mut Con) -> std::result::Result<Option<i64>, sqlx::Error> {
    let tables: i64 = sqlx::query_scalar("select count(*) from sqlite_master where name = '_sqlx_migrations'")
        .fetch_one(&mut *con)
        .await?;
    if tables == 0 {
        return Ok(None);
    }
    sqlx::query_scalar("select max(version) from _sqlx_migrations").fetch_one(con).await
}

async fn keep_a_copy(con: &mut Con, file: &Path, next: i64) -> std::result::Result<(), CannotOpen> {
    let copy = file.with_extension(format!("before-step-{next}.db"));
    let bad = |said: String| CannotOpen::BadCopy { copy: copy.clone(), said };
    if copy.exists() {
        // An update that broke off left it. The file is still the old one, so a fresh copy says the same.
        std::fs::remove_file(&copy).map_err(|error| bad(error.to_string()))?;
    }
    copy_of(con, &copy).await.map_err(|error| bad(error.to_string()))?;
    let mut opened = SqliteConnectOptions::new()
        .filename(&copy)
        .read_only(true)
        .connect()
        .await
        .map_err(|error| bad(error.to_string()))?;
    let said: String = sqlx::query_scalar("pragma integrity_check")
        .fetch_one(&mut opened)
        .await
        .map_err(|error| bad(error.to_string()))?;
    if said == "ok" { Ok(()) } else { Err(bad(said)) }
}

async fn copy_of(con: &mut Con, copy: &Path) -> Result<()> {
    sqlx::query("vacuum into $1").bind(copy.to_string_lossy().into_owned()).execute(con).await?;
    Ok(())
}
