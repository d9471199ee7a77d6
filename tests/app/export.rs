//! `fuelwright export` as it is started: what it writes is genuine by itself, it writes nowhere else, and it refuses aloud.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::process::Command;

use fuelwright::cli::folder::Folder;
use fuelwright::clock::Clock;
use fuelwright::config::Config;
use fuelwright::exchange::spreadsheet::{guarded, written};
use fuelwright::seal::key_file;
use fuelwright::shop::issue::NewIssue;
use tempfile::TempDir;

use crate::support::TestShop;

fn started(arguments: &[&str]) -> (i32, String) {
    let output = Command::new(env!("CARGO_BIN_EXE_fuelwright")).args(arguments).env_clear().output().unwrap();
    let said = [output.stdout, output.stderr].concat();
    (output.status.code().unwrap(), String::from_utf8(said).unwrap())
}

fn export(data: &Path, into: &Path) -> (i32, String) {
    started(&["export", &into.display().to_string(), "--data", &data.display().to_string()])
}

/// Every file under a folder, by its place in it.
fn files(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let mut found = BTreeMap::new();
    let mut open = vec![folder.to_owned()];
    while let Some(next) = open.pop() {
        for entry in std::fs::read_dir(next).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                open.push(path);
            } else if path.is_file() {
                let place = path.strip_prefix(folder).unwrap().display().to_string();
                found.insert(place, std::fs::read(&path).unwrap());
            }
        }
    }
    found
}

/// A shop with a certificate and the one that replaced it; its key lies in its folder, as with a shop that was served.
async fn two_papers() -> TestShop {
    let open = TestShop::open().await;
    let told = open.told().await;
    let vera = open.actor(open.vera).await;
    let first = Box::pin(open.shop.issue_certificate(&vera, None, told.job, crate::told::seen())).await.unwrap();
    let new = NewIssue { supersedes: Some((first, "=1+1".into())), ..crate::told::seen() };
    Box::pin(open.shop.issue_certificate(&vera, None, told.job, new)).await.unwrap();
    key_file::load_or_create(&open.folder.path().join("signing-key.pem"), &[7; 32]).unwrap();
    open
}

#[tokio::test]
async fn every_paper_comes_out_with_its_signed_content_and_is_genuine_without_the_shop() {
    let open = Box::pin(two_papers()).await;
    let room = TempDir::new().unwrap();
    let into = room.path().join("new").join("papers");
    let (code, said) = export(open.folder.path(), &into);
    assert_eq!(code, 0, "{said}");
    assert!(said.contains("2 papers") && said.contains("the rest of the export comes later"), "{said}");
    let out = files(&into);
    let wanted = [
        "conversion/C-2026-0001.json",
        "conversion/C-2026-0001.pdf",
        "conversion/C-2026-0002.json",
        "conversion/C-2026-0002.pdf",
        "index.csv",
        "keys.json",
        "standing.json",
    ];
    assert_eq!(out.keys().map(String::as_str).collect::<Vec<_>>(), wanted);
    // Checked on another machine: by the fingerprint alone, and by the shop's list.
    let keys: serde_json::Value = serde_json::from_slice(&out["keys.json"]).unwrap();
    let print = keys["keys"][0]["fingerprint"].as_str().unwrap();
    let standing = into.join("standing.json").display().to_string();
    let nowhere = room.path().join("nowhere").display().to_string();
    // The second stands; whether a duty that it names has passed depends on the day of this test.
    for (number, is_replaced) in [("C-2026-0001", true), ("C-2026-0002", false)] {
        for ending in ["pdf", "json"] {
            let file = into.join(format!("conversion/{number}.{ending}")).display().to_string();
            let by = ["verify", &file, "--fingerprint", print, "--standing", &standing, "--data", &nowhere];
            let (code, said) = started(&by);
            assert_eq!(code, 0, "{file}: {said}");
            assert!(said.contains("genuine as issued") && said.contains("\nstanding "), "{file}: {said}");
            assert_eq!(said.contains("standing superseded"), is_replaced, "{file}: {said}");
        }
    }
    let mut index = csv::Reader::from_reader(out["index.csv"].as_slice());
    let heads = index.headers().unwrap().clone();
    let rows: Vec<BTreeMap<String, String>> = index
        .records()
        .map(|row| heads.iter().map(str::to_owned).zip(row.unwrap().iter().map(str::to_owned)).collect())
        .collect();
    assert_eq!(rows.len(), 2);
    for row in &rows {
        let bytes = &out[&row["pdf"]];
        assert_eq!(fuelwright::seal::sha256_hex(bytes), row["pdf_sha256"]);
        assert!(out.contains_key(&row["signed"]));
        assert_eq!((row["branch"].as_str(), row["issued_on"].as_str()), ("Saltmarsh Autogas", "2026-05-12"));
    }
    assert_eq!((rows[0]["standing"].as_str(), rows[0]["replaced_by"].as_str()), ("superseded", "C-2026-0002"));
    let mut con = open.shop.db.read().await.unwrap();
    let lines = fuelwright::db::audit::list(&mut con, open.branch, None, 1).await.unwrap();
    assert_eq!(lines[0].deed, "papers-exported", "the log says that the papers were taken out");
}

#[tokio::test]
async fn a_folder_that_holds_something_is_refused_and_nothing_is_written() {
    let open = TestShop::open().await;
    let (data, room) = (open.folder.path(), TempDir::new().unwrap());
    let full = room.path().join("full");
    std::fs::create_dir(&full).unwrap();
    std::fs::write(full.join("kept"), "mine").unwrap();
    let file = room.path().join("file");
    std::fs::write(&file, "mine").unwrap();
    let inside = data.join("papers-out");
    let astray = room.path().join("astray");
    std::os::unix::fs::symlink(room.path().join("gone"), &astray).unwrap();
    let cases: [(&Path, &str); 4] = [
        (&full, "is not empty"),
        (&file, "is no folder"),
        (&inside, "lies in the shop's own folder"),
        (&astray, "points to a place that is not there"),
    ];
    let before = files(room.path());
    for (into, wanted) in cases {
        let (code, said) = export(data, into);
        assert!(code == 2 && said.contains(wanted), "{}: {code} {said}", into.display());
    }
    assert_eq!(files(room.path()), before);
    assert!(!inside.exists());
    let (code, said) = export(&room.path().join("no-shop"), &room.path().join("out"));
    assert!(code == 2 && said.contains("there is no shop in"), "{said}");
    assert!(!room.path().join("out").exists() && !room.path().join("no-shop").exists());
    assert_eq!(started(&["export"]).0, 2, "without a folder");
}

#[tokio::test]
async fn while_the_server_runs_it_is_refused() {
    let open = TestShop::open().await;
    let room = TempDir::new().unwrap();
    let served = Folder::open(&Config::of_folder(open.folder.path()), Clock::system()).await.unwrap();
    let (code, said) = export(open.folder.path(), &room.path().join("out"));
    assert!(code == 2 && said.contains("another Fuelwright is running"), "{code} {said}");
    assert!(!room.path().join("out").exists());
    drop(served);
    assert_eq!(export(open.folder.path(), &room.path().join("out")).0, 0, "an empty register is exported too");
}

#[tokio::test]
async fn a_paper_whose_pdf_was_altered_on_the_disk_is_named_and_the_exit_code_says_so() {
    let open = Box::pin(two_papers()).await;
    let pdf = one_file(&open.folder.path().join("papers"));
    std::fs::write(&pdf, b"%PDF-1.7 not the paper").unwrap();
    let room = TempDir::new().unwrap();
    let (code, said) = export(open.folder.path(), &room.path().join("out"));
    assert!(code == 1 && said.contains("NOT AS ISSUED: C-2026-000"), "{code} {said}");
    let out = files(&room.path().join("out"));
    assert!(out.contains_key("index.csv"), "the others are written all the same");
    for number in ["C-2026-0001", "C-2026-0002"] {
        for ending in ["pdf", "json"] {
            assert!(out.contains_key(&format!("conversion/{number}.{ending}")), "{number}.{ending}");
        }
    }
}

#[tokio::test]
async fn a_file_changed_on_the_disk_is_handed_to_nobody() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let vera = open.actor(open.vera).await;
    let id = open.shop.issue_certificate(&vera, None, told.job, crate::told::seen()).await.unwrap();
    let paper = open.shop.find_paper(open.branch, id).await.unwrap().unwrap().paper;
    let kept = one_file(&open.folder.path().join("papers"));
    for done in ["changed", "gone"] {
        if done == "gone" {
            std::fs::remove_file(&kept).unwrap();
        } else {
            std::fs::write(&kept, b"%PDF-1.7 not the paper").unwrap();
        }
        let page = open.signatory().await.get(&format!("/papers/{id}/pdf")).await;
        assert_eq!(fuelwright::seal::sha256_hex(&page.bytes), paper.pdf_sha256, "{done}");
    }
}

fn one_file(folder: &Path) -> PathBuf {
    let group = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).find(|path| path.is_dir());
    std::fs::read_dir(group.unwrap()).unwrap().next().unwrap().unwrap().path()
}

#[test]
fn no_cell_of_the_index_is_taken_for_a_formula() {
    for begins in ["=1+1", "+44", "-2", "@SUM(A1)", "\t=1", "\0=1", "\r=1", "\n=1", "＝1"] {
        assert_eq!(guarded(begins), format!("'{begins}"));
    }
    for plain in ["", "C-2026-0001", "a=b", "2026-05-12", " x"] {
        assert_eq!(guarded(plain), plain);
    }
    // RFC 4180: a comma, a quotation mark, a line break; read back by a reader that is not ours.
    let row: Vec<String> = ["=a", "b,\"c\"", "d\ne", ""].map(str::to_owned).to_vec();
    let text = written([row.as_slice()]);
    let mut read = csv::ReaderBuilder::new().has_headers(false).from_reader(text.as_bytes());
    let read: Vec<String> = read.records().next().unwrap().unwrap().iter().map(str::to_owned).collect();
    assert_eq!(read, ["'=a", "b,\"c\"", "d\ne", ""]);
}
