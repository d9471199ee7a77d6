//! Signatures against published vectors, and every kind of tampering that must be refused.

use serde::{Deserialize, Serialize};
use time::OffsetDateTime;
use time::macros::datetime;

use super::keys::read_public_key;
use super::*;

#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
struct Note {
    format: String,
    text: String,
    #[serde(with = "time::serde::rfc3339")]
    issued_at: OffsetDateTime,
}

impl Signed for Note {
    const FORMAT: &'static str = "fuelwright/test-note/1";
}

fn note() -> Note {
    Note {
        format: Note::FORMAT.into(),
        text: "Zażółć gęślą jaźń, 3 ± 16 cm³/h".into(),
        issued_at: datetime!(2026-11-25 09:30 UTC),
    }
}

fn from_hex(text: &str) -> Vec<u8> {
    (0..text.len()).step_by(2).map(|i| u8::from_str_radix(&text[i..i + 2], 16).unwrap()).collect()
}

fn ring(signer: &Signer) -> KeyRing {
    let mut ring = KeyRing::new();
    ring.trust(&signer.public_key());
    ring
}

#[test]
fn signatures_are_those_of_rfc_8032_section_7_1() {
    for (secret, public, message, signature) in [
        (
            "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
            "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a",
            "",
            "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595b\
             be24655141438e7a100b",
        ),
        (
            "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
            "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c",
            "72",
            "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c387b2eaeb430\
             2aeeb00d291612bb0c00",
        ),
        (
            "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
            "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025",
            "af82",
            "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290ae67f760984dc6594a7c15e9716e\
             d28dc027beceea1ec40a",
        ),
    ] {
        let signer = Signer::from_random(&from_hex(secret).try_into().unwrap());
        assert_eq!(hex(&signer.public_key()), public);
        assert_eq!(hex(&signer.sign(&from_hex(message))), signature);
    }
}

#[test]
fn sha_256_is_that_of_fips_180_4() {
    assert_eq!(sha256_hex(b"abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
}

#[test]
fn a_sealed_note_opens_and_survives_its_file() {
    let signer = Signer::from_random(&[1; 32]);
    let sealed = Sealed::seal(&note(), &signer).unwrap();
    let read = Sealed::from_json(&sealed.to_json()).unwrap();
    assert_eq!(read, sealed);
    assert_eq!(read.content(), freeze(&note()).unwrap());
    assert_eq!(read.open::<Note>(&ring(&signer)).unwrap(), Proven::Genuine(note()));
    assert_eq!(read.open::<Note>(&KeyRing::new()).unwrap(), Proven::SoundButUnknownKey(note()));
    assert_eq!(Sealed::from_kept(read.content().to_vec(), &signer.public_key(), &read.signature()).unwrap(), sealed);
}

#[test]
fn flipping_any_bit_of_content_signature_or_key_is_refused() {
    let signer = Signer::from_random(&[1; 32]);
    let sealed = Sealed::seal(&note(), &signer).unwrap();
    let ring = ring(&signer);
    for bit in 0..sealed.content().len() * 8 {
        let mut content = sealed.content().to_vec();
        content[bit / 8] ^= 1 << (bit % 8);
        if let Ok(altered) = Sealed::from_kept(content, &signer.public_key(), &sealed.signature()) {
            assert_eq!(altered.check(&ring), Err(Refusal::Signature), "bit {bit}");
        }
    }
    for bit in 0..512 {
        let mut signature = sealed.signature();
        signature[bit / 8] ^= 1 << (bit % 8);
        let altered = Sealed::from_kept(sealed.content().to_vec(), &signer.public_key(), &signature).unwrap();
        assert_eq!(altered.check(&ring), Err(Refusal::Signature), "bit {bit}");
    }
    for bit in 0..256 {
        let mut key = signer.public_key();
        key[bit / 8] ^= 1 << (bit % 8);
        let altered = Sealed::from_kept(sealed.content().to_vec(), &key, &sealed.signature()).unwrap();
        assert!(altered.check(&ring).is_err(), "bit {bit}");
    }
}

#[test]
fn a_signature_on_one_kind_never_serves_another() {
    let signer = Signer::from_random(&[1; 32]);
    let sealed = Sealed::seal(&note(), &signer).unwrap();
    assert_eq!(
        sealed.open::<standing::StandingList>(&ring(&signer)),
        Err(Refusal::Format("fuelwright/test-note/1".into()))
    );
}

#[test]
fn a_file_that_is_no_envelope_is_refused() {
    for wrong in ["", "{}", "[]", "%PDF-1.7", r#"{"format":"fuelwright/sealed/1"}"#] {
        assert!(matches!(Sealed::from_json(wrong.as_bytes()), Err(Refusal::NotSealed(_))), "{wrong}");
    }
}

#[test]
fn a_new_key_is_trusted_when_the_old_one_vouches_for_it() {
    let (old, new, stranger) =
        (Signer::from_random(&[1; 32]), Signer::from_random(&[2; 32]), Signer::from_random(&[3; 32]));
    let sealed = Sealed::seal(&note(), &new).unwrap();
    let mut ring = ring(&old);
    assert!(!sealed.check(&ring).unwrap());
    let by_stranger = stranger.introduce(&new, datetime!(2026-11-01 00:00 UTC)).unwrap();
    assert_eq!(ring.follow(&by_stranger), Err(Refusal::NotVouchedFor));
    let by_old = old.introduce(&new, datetime!(2026-11-01 00:00 UTC)).unwrap();
    assert_eq!(ring.follow(&by_old), Ok(new.key_id()));
    assert!(sealed.check(&ring).unwrap());
}

#[test]
fn a_leaked_key_is_good_only_for_what_it_signed_before() {
    let signer = Signer::from_random(&[1; 32]);
    let sealed = Sealed::seal(&note(), &signer).unwrap();
    let mut ring = ring(&signer);
    ring.distrust_after(&signer.key_id(), datetime!(2026-11-25 10:00 UTC));
    assert!(sealed.check(&ring).unwrap());
    ring.distrust_after(&signer.key_id(), datetime!(2026-11-25 09:00 UTC));
    ring.distrust_after(&signer.key_id(), datetime!(2026-11-26 09:00 UTC));
    assert_eq!(sealed.check(&ring), Err(Refusal::NotTrustedAfter(datetime!(2026-11-25 09:00 UTC))));
}

#[test]
fn the_salt_hides_the_name_and_the_digest_binds_it() {
    let person = serde_json::json!({"name": "A. Marsh", "salt": "00112233445566778899aabbccddeeff"});
    let salted = serde_json::json!({"name": "A. Marsh", "salt": "ff112233445566778899aabbccddeeff"});
    let digest = personal_digest(&person).unwrap();
    assert_eq!(digest.len(), 64);
    assert_ne!(digest, personal_digest(&salted).unwrap());
    assert_eq!(digest, sha256_hex(br#"{"name":"A. Marsh","salt":"00112233445566778899aabbccddeeff"}"#));
}

#[test]
fn a_fingerprint_is_the_head_of_the_key_id_in_groups() {
    assert_eq!(fingerprint("5f2a91c077de0123456789abcdef0123"), "5f2a 91c0 77de");
    assert!(read_public_key("AAAA").is_err());
    assert!(read_public_key("not base64").is_err());
}
