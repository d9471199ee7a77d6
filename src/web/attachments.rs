//! Kept files: handed out to whoever may see them, and taken in from the fields of a form.

use std::fmt::Write as _;

use axum::body::Body;
use axum::extract::{Path, State};
use axum::http::{HeaderMap, HeaderName, HeaderValue, header};
use axum::response::IntoResponse;

use super::app::App;
use super::form::{Form, MOST_FILE, Wrong};
use super::visitor::Visitor;
use super::{Answer, Error, file_body};
use crate::attachments::{Kind, MOST_PIXELS, Sent, Takes, Unfit, from_data_url};
use crate::db;
use crate::model::ids::AttachmentId;
use crate::shop::attachments::Sorted;
use crate::words::Words;

/// A file does nothing of its own, wherever it is opened.
const POLICY: &str = "default-src 'none'; sandbox; frame-ancestors 'none'";

/// `GET /attachments/{id}`. A file of another branch is as absent as one that never was.
pub async fn show(State(app): State<App>, who: Visitor, Path(id): Path<String>) -> Answer {
    let id: AttachmentId = id.parse().map_err(|_| Error::NotFound)?;
    let one = db::attachments::find(&mut *app.read().await?, who.branch.id, id).await?.ok_or(Error::NotFound)?;
    let kind = Kind::from_media_type(&one.media_type);
    let media_type = kind.map_or("application/octet-stream", Kind::media_type);
    let body = match kind {
        // A log may be larger than the memory should hold.
        Some(Kind::Log | Kind::Workbook) => {
            let path = app.shop.files().path(&one.sha256).ok_or(Error::NotFound)?;
            file_body::of(tokio::fs::File::open(path).await.map_err(broken)?)
        }
        _ => Body::from(app.shop.read_file(&one).await?),
    };
    let mut headers = HeaderMap::new();
    headers.insert(header::CONTENT_TYPE, HeaderValue::from_static(media_type));
    headers.insert(header::CONTENT_SECURITY_POLICY, HeaderValue::from_static(POLICY));
    headers.insert(HeaderName::from_static("x-content-type-options"), HeaderValue::from_static("nosniff"));
    let disposition = disposition(&one.name, kind);
    headers.insert(header::CONTENT_DISPOSITION, HeaderValue::from_str(&disposition).map_err(broken)?);
    // The bytes under an id never change; who may see them can, so the browser asks again after a while.
    headers.insert(header::CACHE_CONTROL, HeaderValue::from_static("private, max-age=300"));
    Ok((headers, body).into_response())
}

fn broken(error: impl std::fmt::Display) -> Error {
    Error::Broken(error.to_string())
}

/// RFC 6266: shown in the page where that is safe, else saved; the name in ASCII, and whole by RFC 8187. The name's end
/// follows what the bytes are.
fn disposition(name: &str, kind: Option<Kind>) -> String {
    let stem = name.rsplit_once('.').map_or(name, |(stem, _)| stem);
    let stem = if stem.trim().is_empty() { "file" } else { stem };
    let name = match kind {
        Some(Kind::Opaque) => name.to_owned(),
        Some(kind) => format!("{stem}.{}", kind.extension()),
        None => stem.to_owned(),
    };
    let plain: String =
        name.chars().map(|c| if c.is_ascii_alphanumeric() || " .-_()".contains(c) { c } else { '_' }).collect();
    let whole: String = name.bytes().fold(String::new(), |mut out, byte| {
        if byte.is_ascii_alphanumeric() || b"-._~".contains(&byte) {
            out.push(char::from(byte));
        } else {
            // Writing into a String cannot fail.
            let _ = write!(out, "%{byte:02X}");
        }
        out
    });
    let how = if kind.is_some_and(Kind::is_shown_by_browsers) { "inline" } else { "attachment" };
    format!("{how}; filename=\"{plain}\"; filename*=UTF-8''{whole}")
}

/// The files of a field as they were sent; what is too large or empty is noted beside the field.
pub fn sent(form: &mut Form, name: &str, most: usize) -> Vec<Sent> {
    let files = form.files(name, most);
    let taken_name = format!("{name}_taken_at");
    let taken: Vec<String> = form.values(&taken_name).map(str::to_owned).collect();
    // The page says one time a file; after one was dropped nobody knows which is whose.
    let matches = taken.len() == files.len();
    let taken_at = |at: usize| if matches { taken[at].clone() } else { String::new() };
    let with_time = files.into_iter().enumerate();
    with_time.map(|(at, file)| Sent { name: file.name, content: file.content, taken_at: taken_at(at) }).collect()
}

/// A signature: drawn and handed over as a PNG in a text, or as a file in the same field.
pub fn sent_signature(form: &mut Form, name: &str) -> Option<Sent> {
    let text = form.value(name).trim().to_owned();
    if text.is_empty() {
        return sent(form, name, 1).into_iter().next();
    }
    let drawn = from_data_url(&text);
    if drawn.is_none() {
        form.fail(name, Wrong::Rule("wrong-signature", vec![]));
    }
    drawn.map(|content| Sent { name: "signature.png".to_owned(), content, taken_at: String::new() })
}

/// Notes beside the field what was not kept, and why: a sentence for each file.
pub fn note_unfit(form: &mut Form, w: &Words, name: &str, takes: Takes, sorted: &Sorted) {
    let mut sentences = sorted.unfit.iter().map(|(file, unfit)| wrong(file, *unfit, takes));
    let Some(first) = sentences.next() else { return };
    if sorted.unfit.len() == 1 {
        return form.fail(name, first);
    }
    let all: Vec<String> = std::iter::once(first).chain(sentences).map(|wrong| wrong.say(w)).collect();
    form.fail(name, Wrong::Rule("wrong-files", vec![("sentences", all.join(". ").into())]));
}

fn wrong(file: &str, unfit: Unfit, takes: Takes) -> Wrong {
    let file = file.to_owned();
    match unfit {
        Unfit::Empty => Wrong::FileEmpty { file },
        Unfit::TooLarge => Wrong::FileTooLarge { file, most_mb: MOST_FILE / (1024 * 1024) },
        Unfit::OtherKind => Wrong::FileKind { file, takes: takes.names().to_owned() },
        Unfit::CutOff => Wrong::Rule("wrong-file-cut-off", vec![("file", file.into())]),
        Unfit::Broken => Wrong::FileBroken { file },
        Unfit::TooManyPixels => Wrong::Rule(
            "wrong-file-too-many-pixels",
            vec![("file", file.into()), ("most", i64::try_from(MOST_PIXELS / 1_000_000).unwrap_or(50).into())],
        ),
    }
}
