//! `fuelwright verify` as it is started: JSON and PDF, altered, unknown, with a list of standings.

use std::path::Path;
use std::process::Command;

use fuelwright::papers;
use tempfile::TempDir;

use crate::support::TestShop;

fn verify(arguments: &[&str]) -> (i32, String) {
    let output =
        Command::new(env!("CARGO_BIN_EXE_fuelwright")).arg("verify").args(arguments).env_clear().output().unwrap();
    let said = [output.stdout, output.stderr].concat();
    (output.status.code().unwrap(), String::from_utf8(said).unwrap())
}

fn put(room: &Path, name: &str, bytes: &[u8]) -> String {
    std::fs::write(room.join(name), bytes).unwrap();
    room.join(name).display().to_string()
}

#[tokio::test]
async fn a_paper_is_genuine_altered_unknown_or_unreadable_and_stands_only_by_a_list() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let vera = open.actor(open.vera).await;
    let id = open.shop.issue_certificate(&vera, None, told.job, crate::told::seen()).await.unwrap();
    let found = open.shop.find_paper(open.branch, id).await.unwrap().unwrap();
    let pdf = open.shop.issued_pdf(&found.paper).await.unwrap();
    let json = papers::embedded(&pdf).unwrap().unwrap();
    let room = TempDir::new().unwrap();
    let data = open.folder.path().display().to_string();
    let nowhere = room.path().join("nowhere").display().to_string();
    let (pdf, file) = (put(room.path(), "paper.pdf", &pdf), put(room.path(), "paper.json", &json));
    for one in [&pdf, &file] {
        let (code, said) = verify(&[one, "--data", &data]);
        assert_eq!(code, 0, "{said}");
        for wanted in ["C-2026-0001", "conversion", "2026-05-12", "Saltmarsh Autogas", "Corvane", "genuine as issued"] {
            assert!(said.contains(wanted), "{wanted}: {said}");
        }
        assert!(!said.contains("standing"), "{said}");
    }
    let altered = String::from_utf8(json).unwrap().replacen("NM 47 KTR", "NM 48 KTR", 1);
    let altered = put(room.path(), "altered.json", altered.as_bytes());
    let (code, said) = verify(&[&altered, "--data", &data]);
    assert!(code == 1 && said.contains("the signature does not fit"), "{code} {said}");
    let (code, said) = verify(&[&file, "--data", &nowhere]);
    assert!(code == 1 && said.contains("sound, but signed by a key not known here"), "{code} {said}");
    let print = open.shop.issuer.signer().fingerprint();
    let (code, said) = verify(&[&file, "--fingerprint", &print]);
    assert!(code == 0 && said.contains("genuine as issued"), "{code} {said}");
    assert_eq!(verify(&[&file, "--fingerprint", "0000 0000 0000"]).0, 1);
    assert_eq!(verify(&[&file, "--fingerprint", "5f"]).0, 2);
    assert_eq!(verify(&[&put(room.path(), "empty.pdf", b"%PDF-1.7"), "--data", &data]).0, 2);
    assert_eq!(verify(&[&put(room.path(), "text", b"hello"), "--data", &data]).0, 2);

    let list = put(room.path(), "valid.json", &open.shop.standing_list(open.branch).await.unwrap().to_json());
    let (code, said) = verify(&[&file, "--data", &data, "--standing", &list]);
    assert!(code == 0 && said.contains("standing valid"), "{code} {said}");
    open.shop.withdraw_certificate(&vera, None, id, "wrong vehicle".into()).await.unwrap();
    let list = put(room.path(), "withdrawn.json", &open.shop.standing_list(open.branch).await.unwrap().to_json());
    let (_, said) = verify(&[&file, "--data", &data, "--standing", &list]);
    assert!(said.contains("genuine as issued") && said.contains("standing withdrawn since 2026-05-12"), "{said}");
}
