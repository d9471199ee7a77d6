//! Each migration is tried on a shop that has data: a file of every earlier number, with a row in each of its tables, is
//! brought up to date by the way the program takes, and keeps what it held.

use std::collections::BTreeMap;
use std::path::Path;

use fuelwright::db::{Database, Db};
use sqlx::migrate::Migrator;
use sqlx::{AssertSqlSafe, Connection};
use tempfile::TempDir;

type Con = <Db as sqlx::Database>::Connection;

fn all() -> Migrator {
    sqlx::migrate!()
}

/// The rows that go in after a migration, by its number.
fn rows(number: i64) -> String {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/migrations");
    let start = format!("{number:04}_");
    let mut files = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    let file = files.find(|file| file.file_name().unwrap().to_string_lossy().starts_with(&start));
    std::fs::read_to_string(file.unwrap_or_else(|| panic!("tests/migrations has no rows for {start}"))).unwrap()
}

/// Tables of the shop and how many rows each holds.
async fn counts(con: &mut Con) -> BTreeMap<String, i64> {
    let tables: Vec<String> = sqlx::query_scalar(
        "select name from sqlite_master where type = 'table' and name not like 'sqlite_%' and name not like '_sqlx_%'",
    )
    .fetch_all(&mut *con)
    .await
    .unwrap();
    let mut counts = BTreeMap::new();
    for table in tables {
        let rows = sqlx::query_scalar(AssertSqlSafe(format!("select count(*) from {table}")));
        counts.insert(table, rows.fetch_one(&mut *con).await.unwrap());
    }
    counts
}

#[tokio::test]
async fn a_shop_of_every_earlier_version_comes_up_to_date_and_keeps_its_rows() {
    let numbers: Vec<i64> = all().iter().map(|one| one.version).collect();
    assert!(numbers.len() >= 7);
    for stop in &numbers {
        let folder = TempDir::new().unwrap();
        let file = folder.path().join("fuelwright.db");
        let mut con = Con::connect(&format!("sqlite://{}?mode=rwc", file.display())).await.unwrap();
        for number in numbers.iter().filter(|number| *number <= stop) {
            let mut part = all();
            part.migrations = part.migrations.iter().filter(|one| one.version <= *number).cloned().collect();
            part.run(&mut con).await.unwrap();
            sqlx::raw_sql(AssertSqlSafe(rows(*number)))
                .execute(&mut con)
                .await
                .unwrap_or_else(|error| panic!("{number}: {error}"));
            let empty: Vec<String> =
                counts(&mut con).await.into_iter().filter(|(_, rows)| *rows == 0).map(|(table, _)| table).collect();
            assert!(empty.is_empty(), "tests/migrations leaves tables of migration {number} empty: {empty:?}");
        }
        let before = counts(&mut con).await;
        con.close().await.unwrap();

        let db = Database::open(&file).await.unwrap_or_else(|error| panic!("a shop of version {stop}: {error}"));
        let mut con = db.read().await.unwrap();
        let after = counts(&mut con).await;
        for (table, rows) in &before {
            assert!(after.get(table).is_some_and(|now| now >= rows), "{table} lost rows on the way from {stop}");
        }
        let whole: String = sqlx::query_scalar("pragma integrity_check").fetch_one(&mut *con).await.unwrap();
        assert_eq!(whole, "ok", "a shop of version {stop}");
        let strays = sqlx::query("pragma foreign_key_check").fetch_all(&mut *con).await.unwrap();
        assert!(strays.is_empty(), "a shop of version {stop} has rows that point nowhere");
    }
}
