//! The store: refuses what it must, keeps a copy before it changes an older file, heals, and answers while it is busy.

use fuelwright::db::{self, CannotOpen, Database};
use tempfile::TempDir;

use crate::support::TestShop;

#[tokio::test]
async fn a_file_of_a_newer_program_is_refused_in_one_sentence() {
    let open = TestShop::open().await;
    let mut tx = open.shop.db.write().await.unwrap();
    sqlx::query(
        "insert into _sqlx_migrations (version, description, success, checksum, execution_time)
         values (9999, 'later', true, x'00', 0)",
    )
    .execute(&mut *tx)
    .await
    .unwrap();
    tx.commit().await.unwrap();
    open.shop.db.close().await;
    let refused = Database::open(&open.folder.path().join("fuelwright.db")).await.unwrap_err();
    assert!(matches!(refused, CannotOpen::Newer { number: 9999, .. }));
    let said = refused.to_string();
    assert!(said.contains("newer Fuelwright") && !said.contains('\n'), "{said}");
}

#[tokio::test]
async fn the_settings_that_keep_data_are_in_force() {
    let folder = TempDir::new().unwrap();
    let db = Database::open(&folder.path().join("f.db")).await.unwrap();
    let mut tx = db.write().await.unwrap();
    // 2 is FULL, in SQLite's own numbering.
    for (pragma, wanted) in [("pragma synchronous", 2_i64), ("pragma foreign_keys", 1), ("pragma trusted_schema", 0)] {
        let got: i64 = sqlx::query_scalar(pragma).fetch_one(&mut *tx).await.unwrap();
        assert_eq!(got, wanted, "{pragma}");
    }
    let mode: String = sqlx::query_scalar("pragma journal_mode").fetch_one(&mut *tx).await.unwrap();
    assert_eq!(mode, "wal");
    drop(tx);
    let mut con = db.read().await.unwrap();
    let refused = sqlx::query("delete from people").execute(&mut *con).await;
    assert!(refused.unwrap_err().to_string().contains("readonly"));
}

#[tokio::test]
async fn every_table_is_strict() {
    let open = TestShop::open().await;
    let mut con = open.shop.db.read().await.unwrap();
    let loose: Vec<String> = sqlx::query_scalar(
        "select name from pragma_table_list
         where schema = 'main' and type = 'table' and strict = 0 and name not like 'sqlite_%' and name not like '_sqlx%'",
    )
    .fetch_all(&mut *con)
    .await
    .unwrap();
    assert!(loose.is_empty(), "{loose:?}");
}

#[tokio::test(flavor = "multi_thread")]
async fn many_writers_at_once_all_get_through_and_the_chain_holds() {
    let open = TestShop::open().await;
    let who = open.actor(open.ilse).await;
    let writers: Vec<_> = (0..24)
        .map(|number| {
            let (shop, who) = (open.shop.clone(), who.clone());
            tokio::spawn(async move { shop.change_setting(&who, None, &format!("setting_{number}"), "1").await })
        })
        .collect();
    for writer in writers {
        writer.await.unwrap().unwrap();
    }
    let mut con = open.shop.db.read().await.unwrap();
    assert_eq!(db::settings::list(&mut con, open.branch).await.unwrap().len(), 24);
    assert_eq!(db::audit::check(&mut con).await.unwrap(), None);
}

#[tokio::test]
async fn keys_of_old_forms_are_forgotten() {
    let open = TestShop::open().await;
    let who = open.actor(open.ilse).await;
    let key = uuid::Uuid::now_v7();
    open.shop.change_setting(&who, Some(key), "a", "1").await.unwrap();
    let mut tx = open.shop.db.write().await.unwrap();
    assert_eq!(db::sends::forget(&mut tx, open.clock.now()).await.unwrap(), 0);
    assert!(db::sends::find(&mut tx, &open.ilse.to_string(), key).await.unwrap().is_some());
    let later = open.clock.now() + time::Duration::days(1);
    assert_eq!(db::sends::forget(&mut tx, later).await.unwrap(), 1);
}

#[tokio::test]
async fn before_an_older_file_is_changed_a_whole_copy_of_it_is_kept() {
    let open = TestShop::open().await;
    let file = open.folder.path().join("fuelwright.db");
    let mut tx = open.shop.db.write().await.unwrap();
    // The step that adds the branch's units.
    let last = 8_i64;
    // As if it and what follows had still to come. Its column is there already, so taking it again must fail.
    sqlx::query("delete from _sqlx_migrations where version >= $1").bind(last).execute(&mut *tx).await.unwrap();
    tx.commit().await.unwrap();
    open.shop.db.close().await;
    assert!(matches!(Database::open(&file).await.unwrap_err(), CannotOpen::Broken { .. }));
    let copy = file.with_extension(format!("before-step-{last}.db"));
    assert!(copy.exists());
    let mut con = <db::Con as sqlx::Connection>::connect(&format!("sqlite://{}", copy.display())).await.unwrap();
    let names: Vec<String> =
        sqlx::query_scalar("select name from people order by name").fetch_all(&mut con).await.unwrap();
    assert_eq!(names, ["Ilse Brandt", "Jon Aspen", "Mara Lind", "Odo Finch", "Vera Holm"]);
    let step: i64 = sqlx::query_scalar("select max(version) from _sqlx_migrations").fetch_one(&mut con).await.unwrap();
    assert!(step < last);
}
