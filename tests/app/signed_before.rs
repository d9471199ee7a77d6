//! Papers signed by earlier builds: whatever changes in the program, they verify, can be drawn, and say what they said.
//!
//! `tests/reference/signed/` holds a folder for each build that left some. `SIGN_INTO=FOLDER` makes this build leave its own
//! there; a folder that was committed is never made again.

use std::fmt::Write;
use std::fs;
use std::path::{Path, PathBuf};

use fuelwright::model::paper::PersonalPart;
use fuelwright::model::paper::certificate::CertificateContent;
use fuelwright::papers::certificate::{Certificate, certificate};
use fuelwright::papers::{self};
use fuelwright::seal::keys::read_public_key;
use fuelwright::seal::standing::StandingList;
use fuelwright::seal::{self, KeyRing, Proven, Sealed};
use fuelwright::shop::issue::pages::{KeeperPart, keeper_part};
use fuelwright::shop::issue::{Verified, verify};
use fuelwright::words::{Language, Words};

use crate::every_paper;

fn folders() -> Vec<PathBuf> {
    let all = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/reference/signed");
    fs::read_dir(all).unwrap().map(|one| one.unwrap().path()).filter(|path| path.is_dir()).collect()
}

/// Name, number, plate and SHA-256 of the signed content, as they were written down on the day.
fn expected(folder: &Path) -> Vec<[String; 4]> {
    let text = fs::read_to_string(folder.join("expected.csv")).unwrap();
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes());
    let row = |row: csv::StringRecord| [0, 1, 2, 3].map(|at| row[at].to_owned());
    reader.records().map(|one| row(one.unwrap())).collect()
}

fn ring(folder: &Path) -> KeyRing {
    let mut ring = KeyRing::new();
    ring.trust(&read_public_key(&fs::read_to_string(folder.join("public-key.txt")).unwrap()).unwrap());
    ring
}

#[test]
fn papers_of_earlier_builds_verify_and_say_what_they_said() {
    let folders = folders();
    assert!(!folders.is_empty());
    for folder in folders {
        let (ring, expected) = (ring(&folder), expected(&folder));
        assert!(expected.len() >= 6, "{}", folder.display());
        for [name, number, plate, sha256] in expected {
            let json = fs::read(folder.join(format!("{name}.json"))).unwrap();
            let sealed = Sealed::from_json(&json).unwrap();
            assert_eq!(seal::sha256_hex(sealed.content()), sha256, "{name}");
            let Ok(Verified::Genuine(content)) = verify(&sealed, &ring) else {
                panic!("{name} is not genuine any more")
            };
            assert_eq!((&content.number, &content.vehicle.plate), (&number, &plate), "{name}");
            assert!(matches!(verify(&sealed, &KeyRing::new()), Ok(Verified::UnknownKey(_))), "{name}");
            let altered = String::from_utf8(json).unwrap().replacen(&number, &number.replace("-2026-", "-2025-"), 1);
            assert!(verify(&Sealed::from_json(altered.as_bytes()).unwrap(), &ring).is_err(), "{name}");

            // The keeper's part still belongs to it, and the paper can still be drawn with everything inside.
            let keeper = fs::read(folder.join(format!("{name}-keeper.json"))).unwrap();
            assert_eq!(keeper_part(Some(&keeper), &content), KeeperPart::Certified, "{name}");
            let personal: PersonalPart = serde_json::from_slice(&keeper).unwrap();
            let envelope = sealed.to_json();
            let paper = Certificate { content: &content, personal: Some(&personal), sealed: Some(&envelope) };
            let pdf = certificate(&paper, &Words::new(Language::English)).unwrap();
            assert_eq!(papers::embedded(&pdf).unwrap().unwrap(), envelope, "{name}");
            let text: String = papers::text(&pdf).unwrap().split_whitespace().collect();
            assert!(text.contains(&number), "{name}: {text}");
        }
        let list = Sealed::from_json(&fs::read(folder.join("standing.json")).unwrap()).unwrap();
        let Ok(Proven::Genuine(list)) = list.open::<StandingList>(&ring) else { panic!("the list is not genuine") };
        assert!(list.find(&seal::sha256_hex(b"another")).is_none() && !list.papers.is_empty());
    }
}

/// What this build signs is what the next must verify: the same files, made afresh, and left where `SIGN_INTO` says.
#[tokio::test]
async fn papers_of_this_build_are_fit_to_be_kept() {
    let room = tempfile::TempDir::new().unwrap();
    let folder = std::env::var_os("SIGN_INTO").map_or_else(|| room.path().to_owned(), PathBuf::from);
    fs::create_dir_all(&folder).unwrap();
    assert!(!folder.join("expected.csv").exists(), "{} was made before", folder.display());
    let mut rows = String::from(
        "# Signed by the build named by this folder, with the key of the tests on the day of the tests.\nname,number,plate,content_sha256\n",
    );
    for paper in every_paper::all().await {
        let (sealed, name) = (Sealed::from_json(&paper.json()).unwrap(), paper.name);
        let sha256 = seal::sha256_hex(sealed.content());
        let (number, plate) = (&paper.found.paper.number, &paper.found.content.vehicle.plate);
        writeln!(rows, "{name},{number},{plate},{sha256}").unwrap();
        fs::write(folder.join(format!("{name}.json")), paper.json()).unwrap();
        let keeper = papers::embedded_personal(&paper.pdf).unwrap().unwrap();
        fs::write(folder.join(format!("{name}-keeper.json")), keeper).unwrap();
        fs::write(folder.join("public-key.txt"), paper.shop.shop.issuer.signer().public_key_base64() + "\n").unwrap();
        let list = paper.shop.shop.standing_list(paper.shop.branch).await.unwrap();
        fs::write(folder.join("standing.json"), list.to_json()).unwrap();
        // What is read back is what was written, to the byte: nothing of the content is lost on the way.
        let content: CertificateContent = serde_json::from_slice(sealed.content()).unwrap();
        assert_eq!(seal::freeze(&content).unwrap(), sealed.content(), "{name}");
    }
    fs::write(folder.join("expected.csv"), rows).unwrap();
    assert_eq!(expected(&folder).len(), 6);
}
