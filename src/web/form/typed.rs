//! What came with a request, as it was typed: names and texts in order, and files.
//!
//! Nothing is judged here but size. Limits keep one request from filling the memory; a single file over its limit is
//! dropped alone and named, so that the good ones beside it are kept.

use axum::body::Bytes;
use axum::extract::multipart::{Field, Multipart};
use axum::extract::{DefaultBodyLimit, FromRequest, Request};
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};

/// Largest body without files, in bytes.
const MOST_TEXT: usize = 1024 * 1024;
/// Largest body with files, in bytes: eight photographs of the size a tablet takes.
const MOST_BODY: usize = 96 * 1024 * 1024;
/// Largest file kept, in bytes.
pub const MOST_FILE: usize = 25 * 1024 * 1024;
/// Most fields and files in one request.
const MOST_FIELDS: usize = 4_000;
const MOST_FILES: usize = 40;

/// Everything typed, in the order of the page.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Typed {
    pub(super) pairs: Vec<(String, String)>,
    pub(super) files: Vec<TypedFile>,
}

/// One file as it was sent.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TypedFile {
    /// The name of its field.
    pub field: String,
    /// The name it had on the device, without folders; for people only, never a path.
    pub name: String,
    /// Its bytes; empty when it was too large.
    pub content: Vec<u8>,
    /// It was over [`MOST_FILE`] and is not kept.
    pub is_too_large: bool,
}

/// A body that cannot be read as a form.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unreadable {
    /// Over the size or the number of fields that one request may have.
    TooLarge,
    /// Cut off, or not in the form it says.
    Broken,
    /// Neither of the two encodings a form is sent in.
    WrongKind,
}

impl IntoResponse for Unreadable {
    fn into_response(self) -> Response {
        match self {
            Self::TooLarge => StatusCode::PAYLOAD_TOO_LARGE,
            Self::Broken => StatusCode::BAD_REQUEST,
            Self::WrongKind => StatusCode::UNSUPPORTED_MEDIA_TYPE,
        }
        .into_response()
    }
}

impl Typed {
    /// The same from an address's query, for search forms.
    pub fn from_query(query: &str) -> Self {
        let pairs = form_urlencoded::parse(query.as_bytes()).into_owned().take(MOST_FIELDS).collect();
        Self { pairs, files: Vec::new() }
    }

    /// Fields alone, for tests and for what is not a page.
    pub fn from_pairs<'a>(pairs: impl IntoIterator<Item = (&'a str, &'a str)>) -> Self {
        let pairs = pairs.into_iter().map(|(name, text)| (name.to_owned(), text.to_owned())).collect();
        Self { pairs, files: Vec::new() }
    }

    /// The same with one more file.
    #[must_use]
    pub fn with_file(mut self, field: &str, name: &str, content: Vec<u8>) -> Self {
        self.files.push(TypedFile { field: field.into(), name: name.into(), content, is_too_large: false });
        self
    }
}

impl<S: Send + Sync> FromRequest<S> for Typed {
    type Rejection = Unreadable;

    async fn from_request(mut request: Request, state: &S) -> Result<Self, Unreadable> {
        let kind = request.headers().get(header::CONTENT_TYPE).and_then(|kind| kind.to_str().ok()).unwrap_or("");
        let kind = kind.split(';').next().unwrap_or("").trim().to_ascii_lowercase();
        match kind.as_str() {
            "application/x-www-form-urlencoded" | "" => {
                DefaultBodyLimit::max(MOST_TEXT).apply(&mut request);
                let body = Bytes::from_request(request, state).await.map_err(|refused| sized(refused.status()))?;
                if kind.is_empty() && !body.is_empty() {
                    return Err(Unreadable::WrongKind);
                }
                urlencoded(&body)
            }
            "multipart/form-data" => {
                DefaultBodyLimit::max(MOST_BODY).apply(&mut request);
                let parts = Multipart::from_request(request, state).await.map_err(|_| Unreadable::Broken)?;
                multipart(parts).await
            }
            _ => Err(Unreadable::WrongKind),
        }
    }
}

fn sized(status: StatusCode) -> Unreadable {
    if status == StatusCode::PAYLOAD_TOO_LARGE { Unreadable::TooLarge } else { Unreadable::Broken }
}

fn urlencoded(body: &[u8]) -> Result<Typed, Unreadable> {
    let pairs: Vec<_> = form_urlencoded::parse(body).into_owned().take(MOST_FIELDS + 1).collect();
    if pairs.len() > MOST_FIELDS {
        return Err(Unreadable::TooLarge);
    }
    Ok(Typed { pairs, files: Vec::new() })
}

async fn multipart(mut parts: Multipart) -> Result<Typed, Unreadable> {
    let mut typed = Typed::default();
    let mut text_left = MOST_TEXT;
    while let Some(part) = parts.next_field().await.map_err(|error| sized(error.status()))? {
        let field = part.name().unwrap_or("").to_owned();
        let Some(name) = part.file_name().map(plain_name) else {
            let (bytes, is_whole) = take(part, text_left).await?;
            if !is_whole || typed.pairs.len() >= MOST_FIELDS {
                return Err(Unreadable::TooLarge);
            }
            text_left -= bytes.len();
            typed.pairs.push((field, String::from_utf8_lossy(&bytes).into_owned()));
            continue;
        };
        let (content, is_whole) = take(part, MOST_FILE).await?;
        // A file field left empty is sent as a nameless file of no bytes.
        if name.is_empty() && content.is_empty() {
            continue;
        }
        if typed.files.len() >= MOST_FILES {
            return Err(Unreadable::TooLarge);
        }
        let content = if is_whole { content } else { Vec::new() };
        typed.files.push(TypedFile { field, name, content, is_too_large: !is_whole });
    }
    Ok(typed)
}

/// Reads a part to its end and keeps at most `most` bytes; the second value tells whether that was all.
async fn take(mut part: Field<'_>, most: usize) -> Result<(Vec<u8>, bool), Unreadable> {
    let mut kept = Vec::new();
    let mut is_whole = true;
    while let Some(chunk) = part.chunk().await.map_err(|error| sized(error.status()))? {
        if kept.len() + chunk.len() > most {
            is_whole = false;
            kept = Vec::new();
        }
        if is_whole {
            kept.extend_from_slice(&chunk);
        }
    }
    Ok((kept, is_whole))
}

/// The last part of a name, without control characters and at most 120 characters long.
pub fn plain_name(name: &str) -> String {
    let last = name.rsplit(['/', '\\']).next().unwrap_or("");
    last.chars().filter(|c| !c.is_control()).take(120).collect()
}

#[cfg(test)]
mod tests {
    use axum::body::Body;

    use super::*;

    async fn read(kind: &str, body: impl Into<Body>) -> Result<Typed, Unreadable> {
        let request = Request::post("/").header(header::CONTENT_TYPE, kind).body(body.into()).expect("a request");
        Typed::from_request(request, &()).await
    }

    fn part(head: &str, content: &[u8]) -> Vec<u8> {
        let mut out = format!("--edge\r\nContent-Disposition: form-data; {head}\r\n\r\n").into_bytes();
        out.extend_from_slice(content);
        out.extend_from_slice(b"\r\n");
        out
    }

    const MULTIPART: &str = "multipart/form-data; boundary=edge";

    #[tokio::test]
    async fn a_plain_form_keeps_order_repeats_and_odd_bytes() {
        let typed = read("application/x-www-form-urlencoded", "b=2&a=1&b=%FF&c=").await.expect("read");
        let pairs: Vec<_> = typed.pairs.iter().map(|(n, v)| (n.as_str(), v.as_str())).collect();
        assert_eq!(pairs, [("b", "2"), ("a", "1"), ("b", "\u{fffd}"), ("c", "")]);
    }

    #[tokio::test]
    async fn a_file_too_large_is_dropped_alone() {
        let mut body = part("name=\"note\"", b"kept");
        body.extend(part("name=\"photo\"; filename=\"big.jpg\"", &vec![7; MOST_FILE + 1]));
        body.extend(part("name=\"photo\"; filename=\"C:\\shots\\good.jpg\"", b"jpeg"));
        body.extend(part("name=\"photo\"; filename=\"\"", b""));
        body.extend_from_slice(b"--edge--\r\n");
        let typed = read(MULTIPART, body).await.expect("read");
        assert_eq!(typed.pairs, [("note".to_owned(), "kept".to_owned())]);
        assert_eq!(typed.files.len(), 2, "an empty file field is no file");
        assert!(typed.files[0].is_too_large && typed.files[0].content.is_empty());
        assert_eq!((typed.files[1].name.as_str(), typed.files[1].content.as_slice()), ("good.jpg", &b"jpeg"[..]));
    }

    #[tokio::test]
    async fn bodies_that_are_no_form_are_refused_by_kind() {
        assert_eq!(read("application/json", "{}").await, Err(Unreadable::WrongKind));
        assert_eq!(read(MULTIPART, part("name=\"a\"", b"cut off")).await, Err(Unreadable::Broken));
        let long = format!("a={}", "x".repeat(MOST_TEXT));
        assert_eq!(read("application/x-www-form-urlencoded", long).await, Err(Unreadable::TooLarge));
        let many = "a=1&".repeat(MOST_FIELDS + 1);
        assert_eq!(read("application/x-www-form-urlencoded", many).await, Err(Unreadable::TooLarge));
    }
}
