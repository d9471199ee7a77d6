//! Kept files: taken for what their bytes are, drawn anew, handed out to their own branch alone.

use std::io::Cursor;

use axum::body::Body;
use axum::http::{Request, header};
use fuelwright::attachments::{Kept, Kind, MOST_BYTES, Sent, Takes, Unfit, prepare};
use fuelwright::db;
use image::{DynamicImage, ImageFormat, Rgb, RgbImage};
use time::macros::datetime;

use crate::job_support::Bay;
use crate::support::{Browser, Page};

/// A picture whose left half is red and right half blue.
fn picture(width: u32, height: u32, format: ImageFormat) -> Vec<u8> {
    let side = |x| if x < width / 2 { Rgb([200, 20, 20]) } else { Rgb([20, 20, 200]) };
    let picture = DynamicImage::from(RgbImage::from_fn(width, height, |x, _| side(x)));
    let mut out = Cursor::new(Vec::new());
    picture.write_to(&mut out, format).unwrap();
    out.into_inner()
}

/// A TIFF block by the layout of TIFF 6.0, section 2: orientation 6, a place, and a moment with its offset.
fn tiff() -> Vec<u8> {
    let entry = |tag: u16, kind: u16, count: u32, value: u32| {
        [
            tag.to_le_bytes().to_vec(),
            kind.to_le_bytes().to_vec(),
            count.to_le_bytes().to_vec(),
            value.to_le_bytes().to_vec(),
        ]
        .concat()
    };
    let directory = |entries: &[Vec<u8>]| {
        let count = u16::try_from(entries.len()).unwrap().to_le_bytes().to_vec();
        [count, entries.concat(), vec![0; 4]].concat()
    };
    // Head 8, first directory of three 42, Exif of two 30, GPS of one 18, then the values.
    let (exif_at, gps_at, date_at, offset_at, place_at) = (50, 80, 98, 118, 125);
    let mut block = b"II*\0\x08\0\0\0".to_vec();
    block.extend(directory(&[entry(0x0112, 3, 1, 6), entry(0x8769, 4, 1, exif_at), entry(0x8825, 4, 1, gps_at)]));
    block.extend(directory(&[entry(0x9003, 2, 20, date_at), entry(0x9011, 2, 7, offset_at)]));
    block.extend(directory(&[entry(0x0002, 5, 3, place_at)]));
    block.extend(b"2026:05:12 08:30:00\0+02:00\0");
    block.extend(b"PLACEPLACEPLACEPLACEPLAC");
    block
}

/// A JPEG with that block in a segment APP1, as cameras write it.
fn photo_with_place() -> Vec<u8> {
    let plain = picture(40, 20, ImageFormat::Jpeg);
    let block = [b"Exif\0\0".to_vec(), tiff()].concat();
    let length = u16::try_from(block.len() + 2).unwrap().to_be_bytes();
    [&plain[..2], &[0xff, 0xe1], &length, &block, &plain[2..]].concat()
}

fn sent(name: &str, content: &[u8]) -> Sent {
    Sent { name: name.into(), content: content.to_vec(), taken_at: String::new() }
}

fn unfit(content: &[u8]) -> Unfit {
    prepare(sent("x.jpg", content), Takes::Photos).unwrap_err()
}

#[test]
fn a_photo_is_turned_upright_loses_its_place_and_keeps_its_time() {
    let photo = photo_with_place();
    assert!(photo.windows(5).any(|five| five == b"PLACE"));
    let ready = prepare(sent("plate.jpg", &photo), Takes::Photos).unwrap();
    assert_eq!((ready.kind, ready.size), (Kind::Jpeg, Some((20, 40))), "orientation 6 is a quarter turn");
    let upright = image::load_from_memory(&ready.content).unwrap().to_rgb8();
    let (top, bottom) = (upright.get_pixel(10, 5), upright.get_pixel(10, 35));
    assert!(top[0] > top[2] && bottom[2] > bottom[0], "what was left is on top: {top:?} {bottom:?}");
    for hidden in [&b"PLACE"[..], b"Exif", b"2026:05"] {
        assert!(!ready.content.windows(hidden.len()).any(|part| part == hidden));
    }
    let captured = ready.captured.unwrap();
    assert_eq!(captured.local.assume_offset(captured.offset.unwrap()), datetime!(2026-05-12 08:30 +2));
}

#[test]
fn a_heic_file_is_kept_but_for_its_place() {
    let boxed = |name: &[u8], content: &[u8]| {
        [&u32::try_from(content.len() + 8).unwrap().to_be_bytes(), name, content].concat()
    };
    let head = boxed(b"ftyp", b"heic\0\0\0\0mif1heic");
    let file = [head.clone(), boxed(b"meta", b"...."), boxed(b"mdat", &tiff())].concat();
    let ready = prepare(sent("shot.heic", &file), Takes::Photos).unwrap();
    assert_eq!((ready.kind, ready.content.len()), (Kind::Heic, file.len()));
    assert!(ready.captured.is_some() && !ready.content.windows(5).any(|five| five == b"PLACE"));
    assert_eq!(unfit(&file[..file.len() - 9]), Unfit::CutOff);
    assert_eq!(unfit(&head), Unfit::CutOff);
}

#[test]
fn what_is_cut_off_is_refused_at_every_length() {
    for format in [ImageFormat::Jpeg, ImageFormat::Png, ImageFormat::WebP] {
        let whole = picture(64, 48, format);
        assert!(prepare(sent("a", &whole), Takes::Photos).is_ok(), "{format:?}");
        for length in (20..whole.len() - 1).step_by(7) {
            let said = unfit(&whole[..length]);
            assert!(matches!(said, Unfit::CutOff | Unfit::Broken), "{format:?} at {length}: {said:?}");
        }
    }
    // The picture inside the segment has its own end, the picture around it none.
    let photo = photo_with_place();
    assert_eq!(unfit(&photo[..photo.len() - 2]), Unfit::CutOff);
    let pdf = b"%PDF-1.7\n1 0 obj\n<<>>\nendobj\n";
    assert_eq!(prepare(sent("a.pdf", pdf), Takes::Papers).unwrap_err(), Unfit::CutOff);
    assert!(prepare(sent("a.pdf", &[&pdf[..], b"%%EOF\n"].concat()), Takes::Papers).is_ok());
}

#[test]
fn what_is_no_photo_is_refused_whatever_its_name() {
    let svg = b"<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>";
    for other in [&svg[..], b"<!doctype html><p>", b"MZ\x90\0\x03", b"PK\x03\x04", b"GIF89a......", b"\xff\xd8"] {
        assert_eq!(unfit(other), Unfit::OtherKind);
    }
    assert_eq!(unfit(b""), Unfit::Empty);
    assert_eq!(unfit(&vec![0xff; MOST_BYTES + 1]), Unfit::TooLarge);
    assert_eq!(unfit(b"%PDF-1.7\n%%EOF"), Unfit::OtherKind, "a photo slot takes no paper");
    // A page behind a whole picture is not kept with it.
    let both = [picture(30, 30, ImageFormat::Jpeg), b"<html><script>".to_vec()].concat();
    let ready = prepare(sent("both.jpg", &both), Takes::Photos).unwrap();
    assert!(!ready.content.windows(6).any(|six| six == b"<html>"));
}

#[test]
fn a_bomb_is_refused_by_its_head() {
    let mut png = picture(2, 2, ImageFormat::Png);
    png[16..20].copy_from_slice(&30_000_u32.to_be_bytes());
    png[20..24].copy_from_slice(&30_000_u32.to_be_bytes());
    let sum = crc(&png[12..29]);
    png[29..33].copy_from_slice(&sum.to_be_bytes());
    assert_eq!(unfit(&png), Unfit::TooManyPixels);
}

/// The check sum of a chunk (PNG, third edition, annex D).
fn crc(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(u32::MAX, |sum, byte| {
        (0..8).fold(sum ^ u32::from(*byte), |sum, _| if sum & 1 == 1 { 0xedb8_8320 ^ (sum >> 1) } else { sum >> 1 })
    })
}

async fn send(browser: &Browser, path: &str, field: &str, files: &[(&str, &[u8])]) -> Page {
    let mut body = Vec::new();
    for (name, content) in files {
        let head = format!("--edge\r\nContent-Disposition: form-data; name=\"{field}\"; filename=\"{name}\"\r\n\r\n");
        body.extend_from_slice(&[head.as_bytes(), content, b"\r\n"].concat());
    }
    body.extend_from_slice(b"--edge--\r\n");
    let request = Request::post(path)
        .header(header::CONTENT_TYPE, "multipart/form-data; boundary=edge")
        .header("sec-fetch-site", "same-origin");
    browser.send(request.body(Body::from(body)).unwrap()).await
}

#[tokio::test]
async fn good_files_are_kept_and_each_bad_one_is_named_beside_the_field() {
    let job = Bay::lpg().await;
    let jon = job.shop.technician().await;
    let good = picture(40, 30, ImageFormat::Png);
    let files: [(&str, &[u8]); 4] =
        [("good.png", &good), ("page.jpg", b"<html>"), ("half.png", &good[..good.len() / 2]), ("empty.jpg", b"")];
    let page = send(&jon, &job.at("photos/vin-plate"), "file_vin_plate", &files).await;
    page.is(422).says("empty.jpg");
    let page = send(&jon, &job.at("photos/vin-plate"), "file_vin_plate", &files[1..3]).await;
    page.is(422).says("“page.jpg” is not of a kind taken here").says("“half.png” is cut off");
    let mut con = job.shop.shop.db.read().await.unwrap();
    let kept = db::attachments::list(&mut con, job.job).await.unwrap();
    assert_eq!(kept.iter().map(|one| one.name.as_str()).collect::<Vec<_>>(), ["good.png"]);
    assert_eq!(job.shop.shop.files().state(&kept[0].sha256).unwrap(), Kept::Sound);
    jon.get(&job.at("photos")).await.is(200).links_to(&format!("/attachments/{}", kept[0].id));
}

#[tokio::test]
async fn a_file_is_handed_out_harmless_and_to_its_branch_alone() {
    let job = Bay::lpg().await;
    let jon = job.shop.technician().await;
    let photo = picture(40, 30, ImageFormat::Jpeg);
    let name = "Plåt <1>.png";
    send(&jon, &job.at("photos/photo"), "file_photo", &[(name, &photo)]).await.goes_to();
    let mut con = job.shop.shop.db.read().await.unwrap();
    let kept = db::attachments::list(&mut con, job.job).await.unwrap().remove(0);
    let page = jon.get(&format!("/attachments/{}", kept.id)).await;
    page.is(200);
    let header = |name: &str| page.headers[name].to_str().unwrap().to_owned();
    assert_eq!(header("content-type"), "image/jpeg");
    assert_eq!(header("x-content-type-options"), "nosniff");
    assert!(header("content-security-policy").contains("sandbox"));
    assert_eq!(
        header("content-disposition"),
        "inline; filename=\"Pl_t _1_.jpg\"; filename*=UTF-8''Pl%C3%A5t%20%3C1%3E.jpg"
    );
    let mut tx = job.shop.shop.db.write().await.unwrap();
    sqlx::query("insert into branches (id, name, country, time_zone, currency, language, paper_size) select '01900000-0000-7000-8000-0000000000bb', 'Other', country, time_zone, currency, language, paper_size from branches limit 1")
        .execute(&mut *tx).await.ok();
    sqlx::query("update attachments set branch_id = '01900000-0000-7000-8000-0000000000bb'")
        .execute(&mut *tx)
        .await
        .unwrap();
    tx.commit().await.unwrap();
    let hidden = jon.get(&format!("/attachments/{}", kept.id)).await;
    let unknown = jon.get("/attachments/01900000-0000-7000-8000-000000000000").await;
    let nonsense = jon.get("/attachments/..%2f..%2fetc%2fpasswd").await;
    assert_eq!([hidden.status, unknown.status, nonsense.status], [404_u16; 3]);
    assert_eq!(hidden.bytes.len(), unknown.bytes.len());
}

#[tokio::test]
async fn a_signature_comes_as_a_drawing_in_a_text() {
    use base64::Engine as _;
    let job = Bay::lpg().await;
    let jon = job.shop.technician().await;
    let drawn = base64::engine::general_purpose::STANDARD.encode(picture(60, 20, ImageFormat::Png));
    let text = format!("data:image/png;base64,{drawn}");
    jon.post(&job.at("photos/signature"), &[("file_signature", &text)]).await.goes_to();
    jon.post(&job.at("photos/signature"), &[("file_signature", "data:text/html;base64,AAAA")]).await.is(422);
    let mut con = job.shop.shop.db.read().await.unwrap();
    let kept = db::attachments::list_in_slot(&mut con, job.job, "signature").await.unwrap();
    assert_eq!((kept.len(), kept[0].media_type.as_str(), kept[0].width), (1, "image/png", Some(60)));
}

#[tokio::test]
async fn a_control_units_file_is_kept_byte_for_byte_and_never_shown() {
    let job = Bay::lpg().await;
    let jon = job.shop.technician().await;
    // Script and picture alike stay what they are: bytes of somebody's tool.
    let bytes = b"<script>alert(1)</script>\0\xff\xd8\xff map 7".as_slice();
    let slot = job.at("photos/control-unit-file");
    send(&jon, &slot, "file_control_unit_file", &[("pilot-47.map", bytes)]).await.goes_to();
    let mut con = job.shop.shop.db.read().await.unwrap();
    let kept = db::attachments::list(&mut con, job.job).await.unwrap().remove(0);
    assert_eq!(kept.media_type, "application/octet-stream");
    let sha256 = fuelwright::attachments::sha256_of(bytes);
    assert_eq!(kept.sha256, sha256);
    jon.get(&job.at("photos")).await.says("pilot-47.map").says(&sha256).hides("<img");
    let page = jon.get(&format!("/attachments/{}", kept.id)).await;
    assert_eq!(page.bytes, bytes);
    let header = |name: &str| page.headers[name].to_str().unwrap().to_owned();
    assert_eq!(header("content-type"), "application/octet-stream");
    assert!(header("content-disposition").starts_with("attachment; filename=\"pilot-47.map\""));
    assert!(header("content-security-policy").contains("sandbox") && header("x-content-type-options") == "nosniff");
    // The same file is no photo.
    let page = send(&jon, &job.at("photos/photo"), "file_photo", &[("pilot-47.map", bytes)]).await;
    page.is(422).says("is not of a kind taken here");
}
