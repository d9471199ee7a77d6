//! Papers forged in every way we could think of: each is refused, or marked, with a reason of its own in words.

use std::collections::BTreeMap;
use std::path::Path;
use std::process::Command;

use fuelwright::model::paper::PersonalPart;
use fuelwright::model::paper::certificate::CertificateContent;
use fuelwright::papers;
use fuelwright::papers::certificate::{Certificate, certificate};
use fuelwright::seal::{self, KeyRing, Sealed, Signer};
use fuelwright::shop::issue::pages::{Difference, KeeperPart, Pages, keeper_part, pages};
use fuelwright::shop::issue::{NewIssue, Verified, verify};
use fuelwright::words::{Language, Words};
use serde_json::Value;
use tempfile::TempDir;

use crate::every_paper::{self, Paper};
use crate::told;

/// Why these bytes are refused; `None` when they pass for genuine.
fn refusal(json: &[u8], ring: &KeyRing) -> Option<String> {
    let sealed = match Sealed::from_json(json) {
        Ok(sealed) => sealed,
        Err(refusal) => return Some(refusal.to_string()),
    };
    match verify(&sealed, ring) {
        Ok(Verified::Genuine(_)) => None,
        Ok(Verified::UnknownKey(_)) => Some("a key that is not known".into()),
        Err(refusal) => Some(refusal.to_string()),
    }
}

fn ring(paper: &Paper) -> KeyRing {
    let mut ring = KeyRing::new();
    ring.trust(&paper.shop.shop.issuer.public_key());
    ring
}

/// Where the value of a field of the envelope begins and ends.
fn span(json: &[u8], field: &str) -> std::ops::Range<usize> {
    let text = std::str::from_utf8(json).unwrap();
    let start = text.find(&format!("\"{field}\": \"")).unwrap() + field.len() + 5;
    start..start + text[start..].find("\",\n").or_else(|| text[start..].find("\"\n")).unwrap()
}

/// Reasons with how often each was given when every `step`th byte of a span is changed in several ways.
fn changed(paper: &Paper, span: std::ops::Range<usize>, step: usize) -> BTreeMap<String, usize> {
    let (json, ring) = (paper.json(), ring(paper));
    let mut reasons = BTreeMap::new();
    for at in span.step_by(step) {
        for mask in [0x01, 0x02, 0x20, 0x80] {
            let mut forged = json.clone();
            forged[at] ^= mask;
            let reason = refusal(&forged, &ring);
            let reason = reason.unwrap_or_else(|| panic!("{}: byte {at} changed by {mask:#x} is genuine", paper.name));
            // What a parser says names the place; the kind of reason is its beginning.
            *reasons.entry(reason.split(':').next().unwrap().to_owned()).or_default() += 1;
        }
    }
    reasons
}

#[tokio::test]
async fn a_changed_byte_anywhere_in_any_kind_of_paper_is_refused_with_its_reason() {
    for paper in every_paper::all().await {
        let json = paper.json();
        assert_eq!(refusal(&json, &ring(&paper)), None, "{}", paper.name);
        let everywhere = changed(&paper, 0..json.len(), 37);
        assert!(everywhere.values().sum::<usize>() > 400, "{}: {everywhere:?}", paper.name);
        assert!(everywhere.keys().any(|why| why.starts_with("the signature does not fit")), "{everywhere:?}");

        for (field, wanted) in [
            ("signature", "the signature does not fit the content"),
            ("key_id", "the key id does not belong to the public key"),
            ("public_key", "the key id does not belong to the public key"),
            ("algorithm", "the format tag is"),
            ("format", "the format tag is"),
        ] {
            let reasons = changed(&paper, span(&json, field), 1);
            assert!(reasons.keys().any(|why| why.starts_with(wanted)), "{} {field}: {reasons:?}", paper.name);
            // Beside the field's own reason only what is no JSON or no key any more.
            for why in reasons.keys() {
                let is_its_own = why.starts_with(wanted)
                    || why.starts_with("this is no signed content")
                    || (field == "public_key" && why.starts_with("the public key is not an Ed25519 key"));
                assert!(is_its_own, "{} {field}: {why}", paper.name);
            }
        }
    }
}

#[tokio::test]
async fn another_keys_signature_is_named_with_and_without_our_key_id() {
    for paper in [every_paper::conversion().await, every_paper::inspection("inspection-pass", &[]).await] {
        let sealed = Sealed::from_json(&paper.json()).unwrap();
        let stranger = Signer::from_random(&[9; 32]);
        let theirs = Sealed::seal_bytes(sealed.content().to_vec(), &stranger).unwrap();
        assert_eq!(refusal(&theirs.to_json(), &ring(&paper)).unwrap(), "a key that is not known");
        let signature = stranger.sign(sealed.content());
        let mixed = Sealed::from_kept(sealed.content().to_vec(), &paper.shop.shop.issuer.public_key(), &signature);
        let said = refusal(&mixed.unwrap().to_json(), &ring(&paper)).unwrap();
        assert!(said.starts_with("the signature does not fit the content"), "{said}");

        let room = Room::of(&paper);
        let (code, said) = room.verify("theirs.json", &theirs.to_json(), &[]);
        assert!(code == 1 && said.contains("signed by a key not known here"), "{code} {said}");
        assert!(said.contains(&stranger.fingerprint()), "the unknown key is shown: {said}");
    }
}

/// A folder to put forged files in, beside the shop they pretend to come from.
struct Room {
    folder: TempDir,
    data: String,
}

impl Room {
    fn of(paper: &Paper) -> Self {
        Self { folder: TempDir::new().unwrap(), data: paper.shop.folder.path().display().to_string() }
    }

    fn put(&self, name: &str, bytes: &[u8]) -> String {
        let path: &Path = self.folder.path();
        std::fs::write(path.join(name), bytes).unwrap();
        path.join(name).display().to_string()
    }

    /// `fuelwright verify` on this file, with the shop's folder.
    fn verify(&self, name: &str, bytes: &[u8], rest: &[&str]) -> (i32, String) {
        let file = self.put(name, bytes);
        let mut command = Command::new(env!("CARGO_BIN_EXE_fuelwright"));
        let output = command.args(["verify", &file, "--data", &self.data]).args(rest).env_clear().output().unwrap();
        let said = [output.stdout, output.stderr].concat();
        (output.status.code().unwrap(), String::from_utf8(said).unwrap())
    }
}

#[tokio::test]
async fn superseded_and_withdrawn_numbers_say_so_by_list_and_by_code() {
    for paper in every_paper::all().await {
        let (shop, stranger) = (&paper.shop.shop, paper.shop.stranger());
        let vera = paper.shop.actor(paper.shop.vera).await;
        let (room, first) = (Room::of(&paper), paper.found.paper.number.clone());
        let address = format!("/verify/{}", paper.found.paper.code);
        stranger.get(&address).await.is(200).says(&first).says("stands");

        let new = NewIssue { supersedes: Some((paper.id(), "odometer misread".into())), ..told::seen() };
        let second = shop.issue_certificate(&vera, None, paper.job, new).await.unwrap();
        let later = shop.find_paper(paper.shop.branch, second).await.unwrap().unwrap().paper;
        let list = room.put("list.json", &shop.standing_list(paper.shop.branch).await.unwrap().to_json());
        let (_, said) = room.verify("old.pdf", &paper.pdf, &["--standing", &list]);
        let wanted = format!("standing superseded since 2026-05-12, replaced by {}", later.number);
        assert!(said.contains("genuine as issued") && said.contains(&wanted), "{}: {said}", paper.name);
        stranger.get(&address).await.says("Superseded");

        shop.withdraw_certificate(&vera, None, second, "wrong vehicle".into()).await.unwrap();
        let list = room.put("list.json", &shop.standing_list(paper.shop.branch).await.unwrap().to_json());
        let pdf = shop.issued_pdf(&later).await.unwrap();
        let (_, said) = room.verify("new.pdf", &pdf, &["--standing", &list]);
        assert!(said.contains("standing withdrawn since 2026-05-12"), "{}: {said}", paper.name);
        stranger.get(&format!("/verify/{}", later.code)).await.says(&format!("The shop took {} back", later.number));

        // A list that was altered, or signed by another, says nothing of any paper.
        let altered = std::fs::read_to_string(&list).unwrap().replacen("withdrawn", "valid", 1);
        let altered = room.put("altered.json", altered.as_bytes());
        let (code, said) = room.verify("new.pdf", &pdf, &["--standing", &altered]);
        assert!(code == 1 && said.contains("the list of standings is not genuine"), "{said}");
        assert!(!said.contains("standing valid"), "{said}");
    }
}

fn words() -> Words {
    Words::new(Language::English)
}

/// A PDF that draws one content and carries another's signed JSON.
fn drawn(content: &CertificateContent, personal: Option<&PersonalPart>, sealed: &[u8]) -> Vec<u8> {
    certificate(&Certificate { content, personal, sealed: Some(sealed) }, &words()).unwrap()
}

fn personal(paper: &Paper) -> PersonalPart {
    serde_json::from_str(&paper.found.paper.personal).unwrap()
}

#[tokio::test]
async fn pages_that_are_not_those_of_the_signed_content_are_named_with_what_each_says() {
    let paper = every_paper::conversion().await;
    let room = Room::of(&paper);
    let (keeper, json) = (personal(&paper), paper.json());
    let (code, said) = room.verify("issued.pdf", &paper.pdf, &[]);
    assert!(code == 0 && said.contains("the file is the issued one, byte for byte"), "{said}");
    assert!(said.contains("name and address are those that were certified"), "{said}");

    // The genuine content of a second paper, put into the pages of the first.
    let vera = paper.shop.actor(paper.shop.vera).await;
    let new = NewIssue { supersedes: Some((paper.id(), "odometer misread".into())), ..told::seen() };
    let second = paper.shop.shop.issue_certificate(&vera, None, paper.job, new).await.unwrap();
    let second = paper.shop.shop.find_paper(paper.shop.branch, second).await.unwrap().unwrap();
    let pdf = paper.shop.shop.issued_pdf(&second.paper).await.unwrap();
    let others = papers::embedded(&pdf).unwrap().unwrap();
    let exchanged = drawn(&paper.found.content, Some(&keeper), &others);
    let (code, said) = room.verify("exchanged.pdf", &exchanged, &[]);
    assert!(code == 1 && said.contains("pages    NOT those of the signed content"), "{code} {said}");
    assert!(!said.contains("genuine as issued"), "{said}");
    for wanted in ["C-2026-0002", "2026-05-12", "plate NM 47 KTR", "VIN ends in", "go by the lines above"] {
        assert!(said.contains(wanted), "{wanted}: {said}");
    }
    assert!(said.contains("C-2026-0001"), "what the pages say is shown: {said}");

    // One figure altered on the pages, the signed content left alone.
    let mut content = paper.found.content.clone();
    content.vehicle.plate = "NM 48 KTR".into();
    let (code, said) = room.verify("plate.pdf", &drawn(&content, Some(&keeper), &json), &[]);
    assert!(code == 1 && said.contains("48 KTR") && said.contains("47 KTR"), "{said}");

    // Nothing but an unseen byte.
    let mut longer = paper.pdf.clone();
    longer.push(b'\n');
    assert_eq!(pages(&longer, &paper.found.content, None), Ok(Pages::Other(Difference::default())));
    let (code, said) = room.verify("longer.pdf", &longer, &[]);
    assert!(code == 1 && said.contains("their words agree; something else in the file was changed"), "{said}");

    // What an earlier version drew is known by its check sum.
    let sum = seal::sha256_hex(&longer);
    assert_eq!(pages(&longer, &paper.found.content, Some(&sum)), Ok(Pages::AsIssued));
    // Whoever has only the key draws the content again.
    let print = paper.shop.shop.issuer.signer().fingerprint();
    let (code, said) = room.verify("issued.pdf", &paper.pdf, &["--fingerprint", &print]);
    assert!(code == 0 && said.contains("the file is what the signed content gives, byte for byte"), "{said}");
}

#[tokio::test]
async fn another_keepers_part_is_named_by_its_digest() {
    let paper = every_paper::conversion().await;
    let (room, json, own) = (Room::of(&paper), paper.json(), personal(&paper));
    let other = PersonalPart { name: "Ana Fenwick".into(), ..own.clone() };
    let swapped = drawn(&paper.found.content, Some(&other), &json);
    let (code, said) = room.verify("swapped.pdf", &swapped, &[]);
    assert!(code == 1 && said.contains("keeper   NOT the one certified: the digest"), "{code} {said}");
    assert!(!said.contains("genuine as issued"), "{said}");

    // Detached, beside the bare JSON.
    let as_file = |part: &PersonalPart| room.put("keeper.json", &serde_json::to_vec_pretty(part).unwrap());
    let (code, said) = room.verify("paper.json", &json, &["--keeper", &as_file(&own)]);
    assert!(code == 0 && said.contains("name and address are those that were certified"), "{said}");
    for wrong in [
        other,
        PersonalPart { address: "Elsewhere 1".into(), ..own.clone() },
        PersonalPart { salt: own.salt.replace(|_: char| true, "0"), ..own.clone() },
        PersonalPart { phone: String::new(), ..own.clone() },
    ] {
        let (code, said) = room.verify("paper.json", &json, &["--keeper", &as_file(&wrong)]);
        assert!(code == 1 && said.contains("NOT the one certified"), "{wrong:?}: {said}");
    }
    let mut more: Value = serde_json::to_value(&own).unwrap();
    more["note"] = "added".into();
    let more = serde_json::to_vec(&more).unwrap();
    assert_eq!(keeper_part(Some(&more), &paper.found.content), KeeperPart::Another);
    assert_eq!(keeper_part(Some(b"no JSON"), &paper.found.content), KeeperPart::Another);

    // A copy without the keeper's part is still the paper.
    let bare = drawn(&paper.found.content, None, &json);
    let (code, said) = room.verify("bare.pdf", &bare, &[]);
    assert!(code == 0 && !said.contains("keeper"), "{said}");
}
