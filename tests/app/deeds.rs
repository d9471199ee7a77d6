//! What every deed promises: all or nothing, once, and written down in a chain that shows tampering.

use fuelwright::db;
use fuelwright::model::person::Role;
use fuelwright::shop::Refusal;
use uuid::Uuid;

use crate::support::{TestShop, person};

#[tokio::test]
async fn a_form_sent_twice_makes_one_person() {
    let open = TestShop::open().await;
    let (who, key) = (open.actor(open.ilse).await, Some(Uuid::now_v7()));
    let first = open.shop.add_person(&who, key, person("Nils Tarn", "NT", "nils"), vec![Role::Desk]).await.unwrap();
    let again = open.shop.add_person(&who, key, person("Nils Tarn", "NT", "nils"), vec![Role::Desk]).await.unwrap();
    assert_eq!(first.person, again.person);
    assert!(!first.code.is_empty() && again.code.is_empty());
    let mut con = open.shop.db.read().await.unwrap();
    assert_eq!(db::people::count(&mut con).await.unwrap(), 6);
}

#[tokio::test]
async fn a_refused_deed_leaves_nothing_behind() {
    let open = TestShop::open().await;
    let who = open.actor(open.ilse).await;
    let mut con = open.shop.db.read().await.unwrap();
    let before = db::audit::head(&mut con).await.unwrap();
    let key = Some(Uuid::now_v7());
    let refused = open.shop.add_person(&who, key, person("Jon Again", "JX", "jon"), vec![Role::Desk]).await;
    assert!(matches!(refused, Err(Refusal::Taken { field }) if field == "sign_in_name"));
    assert_eq!(db::audit::head(&mut con).await.unwrap(), before);
    // The key is still free: the mended form goes through.
    open.shop.add_person(&who, key, person("Jon Again", "JX", "jon2"), vec![Role::Desk]).await.unwrap();
}

#[tokio::test]
async fn the_chain_holds_and_names_what_was_altered() {
    let open = TestShop::open().await;
    let mut con = open.shop.db.read().await.unwrap();
    assert_eq!(db::audit::check(&mut con).await.unwrap(), None);
    let lines = db::audit::list(&mut con, open.branch, None, 100).await.unwrap();
    assert!(lines.len() > 5 && lines.iter().all(|line| line.deed().is_some()));
    let altered = lines[2].sequence;
    // Somebody with the file in hand can drop the trigger; the chain still tells.
    let mut tx = open.shop.db.write().await.unwrap();
    let refused = sqlx::query("update audit set actor = 'x' where sequence = $1").bind(altered).execute(&mut *tx).await;
    assert!(refused.unwrap_err().to_string().contains("never changed"));
    sqlx::query("drop trigger audit_is_never_changed").execute(&mut *tx).await.unwrap();
    sqlx::query("update audit set actor = 'x' where sequence = $1").bind(altered).execute(&mut *tx).await.unwrap();
    tx.commit().await.unwrap();
    assert_eq!(db::audit::check(&mut con).await.unwrap(), Some(db::audit::Break::Altered(altered)));
}

#[tokio::test]
async fn a_line_taken_out_of_the_chain_is_missed() {
    let open = TestShop::open().await;
    let mut tx = open.shop.db.write().await.unwrap();
    assert!(sqlx::query("delete from audit where sequence = 2").execute(&mut *tx).await.is_err());
    sqlx::query("drop trigger audit_is_never_dropped").execute(&mut *tx).await.unwrap();
    sqlx::query("delete from audit where sequence = 2").execute(&mut *tx).await.unwrap();
    tx.commit().await.unwrap();
    let mut con = open.shop.db.read().await.unwrap();
    assert_eq!(db::audit::check(&mut con).await.unwrap(), Some(db::audit::Break::Missing(2)));
}

#[tokio::test]
async fn the_program_lives_and_is_ready() {
    let open = TestShop::open().await;
    open.stranger().get("/healthz").await.is(200);
    open.stranger().get("/readyz").await.is(200).says("ready");
    open.stranger().get("/nowhere").await.is(404);
}

#[tokio::test]
async fn every_deed_leaves_its_line() {
    let open = TestShop::open().await;
    let who = open.actor(open.ilse).await;
    let mut con = open.shop.db.read().await.unwrap();
    let before = db::audit::list(&mut con, open.branch, None, 100).await.unwrap().len();
    open.shop.add_person(&who, None, person("Nils Tarn", "NT", "nils"), vec![Role::Desk]).await.unwrap();
    let lines = db::audit::list(&mut con, open.branch, None, 100).await.unwrap();
    assert_eq!(lines.len(), before + 1);
    let newest = lines.iter().max_by_key(|line| line.sequence).unwrap();
    assert_eq!(newest.deed().unwrap().tag(), "person-added");
}
