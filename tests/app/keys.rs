//! Signing keys over the years: a new one vouched for by the old, a leaked one not trusted after a day.

use std::path::Path;
use std::process::Command;

use fuelwright::papers;
use fuelwright::seal::standing::StandingList;
use fuelwright::seal::{KeyRing, Sealed};
use fuelwright::shop::issue::{Verified, verify};

use crate::support::{PASSWORD, TestShop};

fn ask(arguments: &[&str]) -> (i32, String) {
    let done =
        Command::new(env!("CARGO_BIN_EXE_fuelwright")).arg("verify").args(arguments).env_clear().output().unwrap();
    let said = String::from_utf8_lossy(&[done.stdout, done.stderr].concat()).into_owned();
    (done.status.code().unwrap(), said)
}

fn put(room: &Path, name: &str, bytes: &[u8]) -> String {
    std::fs::write(room.join(name), bytes).unwrap();
    room.join(name).display().to_string()
}

#[tokio::test]
async fn a_new_key_is_vouched_for_and_a_leaked_one_is_refused_after_its_day() {
    let open = TestShop::open().await;
    let (told, vera) = (open.told().await, open.actor(open.vera).await);
    let manager = open.manager().await;
    let id = open.shop.issue_certificate(&vera, None, told.job, crate::told::seen()).await.unwrap();
    let found = open.shop.find_paper(open.branch, id).await.unwrap().unwrap();
    let json = papers::embedded(&open.shop.issued_pdf(&found.paper).await.unwrap()).unwrap().unwrap();
    let old = open.shop.issuer.signer().fingerprint();

    // Only a manager, and only with the password.
    open.technician().await.get("/office/keys").await.is(403);
    open.signatory().await.post("/office/keys", &[("begin_password", PASSWORD)]).await.is(403);
    manager.get("/office/keys").await.says("Signs now").says(&old).hides("A key has leaked");
    manager.post("/office/keys", &[("begin_password", "not mine")]).await.is(422);
    assert_eq!(open.shop.issuer.signer().fingerprint(), old, "a wrong password changes nothing");
    let key = "01900000-0000-7000-8000-00000000abcd";
    let form = [("begin_password", PASSWORD), ("key", key)];
    manager.post("/office/keys", &form).await.is(303);
    let new = open.shop.issuer.signer().fingerprint();
    assert_ne!(new, old);
    manager.post("/office/keys", &form).await.is(303);
    assert_eq!(open.shop.issuer.signer().fingerprint(), new, "a form sent twice begins one key");
    manager.get("/office/keys").await.says(&new).says("Signed before").says("A key has leaked");

    // Papers of before are genuine; the list, signed by the new key, is followed by who knows the old one alone.
    let sealed = Sealed::from_json(&json).unwrap();
    let mut con = open.shop.db.read().await.unwrap();
    let ring = open.shop.key_ring(&mut con).await.unwrap();
    assert!(matches!(verify(&sealed, &ring), Ok(Verified::Genuine(_))));
    let list = open.shop.standing_list(open.branch).await.unwrap();
    assert_eq!(list.key_id(), open.shop.issuer.signer().key_id());
    let said: StandingList = serde_json::from_slice(list.content()).unwrap();
    let mut outsider = KeyRing::new();
    outsider.trust(&sealed.public_key().unwrap());
    assert!(!list.check(&outsider).unwrap(), "the new key is unknown until it is followed");
    outsider.follow(&said.introductions[0]).unwrap();
    assert!(list.check(&outsider).unwrap());
    let mut stranger = KeyRing::new();
    stranger.trust(&[7; 32]);
    assert!(stranger.follow(&said.introductions[0]).is_err(), "nobody vouches for it to a stranger");

    let room = tempfile::TempDir::new().unwrap();
    let (file, listed) = (put(room.path(), "paper.json", &json), put(room.path(), "list.json", &list.to_json()));
    let (code, told) = ask(&[&file, "--fingerprint", &old, "--standing", &listed]);
    assert!(code == 0 && told.contains("standing valid"), "{code} {told}");

    // The key that signs now is not given up before another is begun; the old one is, for a day before the paper.
    let distrust = |key: String, after: &'static str| {
        vec![
            ("distrusted_key", key),
            ("after", after.to_owned()),
            ("reason", "the office was broken into".to_owned()),
            ("distrust_password", PASSWORD.to_owned()),
        ]
    };
    let send = async |fields: Vec<(&'static str, String)>| {
        let fields: Vec<(&str, &str)> = fields.iter().map(|(name, text)| (*name, text.as_str())).collect();
        manager.post("/office/keys/distrust", &fields).await
    };
    let current = open.shop.issuer.signer().key_id();
    send(distrust(current, "2026-05-11T12:00")).await.is(422).says("begin a new one first");
    send(distrust(sealed.key_id().to_owned(), "2031-05-11T12:00")).await.is(422).says("in the future");
    send(distrust(sealed.key_id().to_owned(), "2026-05-11T12:00")).await.is(303);
    manager.get("/office/keys").await.says("Not trusted after");
    let ring = open.shop.key_ring(&mut con).await.unwrap();
    assert!(verify(&sealed, &ring).is_err());
    let list = open.shop.standing_list(open.branch).await.unwrap();
    let listed = put(room.path(), "later.json", &list.to_json());
    let (code, told) = ask(&[&file, "--fingerprint", &old, "--standing", &listed]);
    assert!(code == 1 && told.contains("not trusted after"), "{code} {told}");
    let data = open.folder.path().display().to_string();
    let (code, told) = ask(&[&file, "--data", &data]);
    assert!(code == 1 && told.contains("not trusted after"), "{code} {told}");
    open.auditor()
        .await
        .get("/office/log")
        .await
        .says("Began a new signing key")
        .says("Trusts a signing key no longer");
}
