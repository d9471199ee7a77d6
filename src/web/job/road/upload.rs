//! A form whose files are larger than the memory should hold: each goes to the disk as it comes, summed on the way. What
//! stops half way leaves nothing.

use axum::extract::multipart::{Field, Multipart, MultipartError};
use axum::extract::{DefaultBodyLimit, FromRequest, Request};
use axum::http::header;

use crate::attachments::{Files, Incoming, MOST_LOG_BYTES, Received};
use crate::web::Error;
use crate::web::app::App;
use crate::web::form::{Typed, plain_name};

/// Largest body: two logs, and a third that is too large by a little, so that it can be named beside its field.
const MOST_BODY: usize = 640 * 1024 * 1024;
/// Most fields and files.
const MOST_PARTS: usize = 40;
/// Longest text of a field, in bytes.
const MOST_TEXT: usize = 16 * 1024;
/// What is handed to the disk at a time, in bytes.
const PIECE: usize = 1024 * 1024;

/// What came.
#[derive(Debug)]
pub(super) struct Uploaded {
    /// The fields.
    pub typed: Typed,
    /// The files, in the order sent.
    pub logs: Vec<Log>,
}

/// One file.
#[derive(Debug)]
pub(super) struct Log {
    /// Its field.
    pub field: String,
    /// The name it had.
    pub name: String,
    /// What became of it.
    pub came: Came,
}

/// What became of a file on its way.
#[derive(Debug)]
pub(super) enum Came {
    /// All of it is on the disk.
    Whole(Received),
    /// It has no bytes.
    Empty,
    /// Over [`MOST_LOG_BYTES`]; nothing of it is left.
    TooLarge,
}

/// Reads the form to its end.
pub(super) async fn read(mut request: Request, app: &App) -> Result<Uploaded, Error> {
    let kind = request.headers().get(header::CONTENT_TYPE).and_then(|kind| kind.to_str().ok()).unwrap_or_default();
    if !kind.starts_with("multipart/form-data") {
        let typed = Typed::from_request(request, app).await.map_err(|bad| Error::Unreadable(format!("{bad:?}")))?;
        return Ok(Uploaded { typed, logs: Vec::new() });
    }
    DefaultBodyLimit::max(MOST_BODY).apply(&mut request);
    let refused = |error: axum::extract::multipart::MultipartRejection| Error::Unreadable(error.to_string());
    let mut parts = Multipart::from_request(request, app).await.map_err(refused)?;
    let (mut pairs, mut logs) = (Vec::new(), Vec::new());
    while let Some(part) = parts.next_field().await.map_err(cut_off)? {
        if pairs.len() + logs.len() >= MOST_PARTS {
            return Err(Error::Unreadable("too many fields".to_owned()));
        }
        let field = part.name().unwrap_or_default().to_owned();
        match part.file_name().map(plain_name) {
            None => pairs.push((field, text(part).await?)),
            Some(name) => {
                let came = take(part, app.shop.files()).await?;
                // A file field left empty is sent as a nameless file of no bytes.
                if !(name.is_empty() && matches!(came, Came::Empty)) {
                    logs.push(Log { field, name, came });
                }
            }
        }
    }
    let typed = Typed::from_pairs(pairs.iter().map(|(name, text)| (name.as_str(), text.as_str())));
    Ok(Uploaded { typed, logs })
}

#[expect(clippy::needless_pass_by_value, reason = "it stands in for a closure")]
fn cut_off(error: MultipartError) -> Error {
    Error::Unreadable(error.body_text())
}

async fn text(mut part: Field<'_>) -> Result<String, Error> {
    let mut kept = Vec::new();
    while let Some(chunk) = part.chunk().await.map_err(cut_off)? {
        kept.extend_from_slice(&chunk);
        if kept.len() > MOST_TEXT {
            return Err(Error::Unreadable("a field is too long".to_owned()));
        }
    }
    Ok(String::from_utf8_lossy(&kept).into_owned())
}

async fn take(mut part: Field<'_>, files: Files) -> Result<Came, Error> {
    let (mut incoming, mut piece, mut bytes) = (None, Vec::with_capacity(PIECE), 0_u64);
    while let Some(chunk) = part.chunk().await.map_err(cut_off)? {
        bytes += chunk.len() as u64;
        if bytes > MOST_LOG_BYTES {
            // The rest is read and forgotten: a browser shows no answer before it has sent all.
            (incoming, piece) = (None, Vec::new());
            continue;
        }
        piece.extend_from_slice(&chunk);
        if piece.len() >= PIECE {
            let full = std::mem::replace(&mut piece, Vec::with_capacity(PIECE));
            incoming = Some(write(&files, incoming, full).await?);
        }
    }
    if bytes > MOST_LOG_BYTES {
        return Ok(Came::TooLarge);
    }
    if bytes == 0 {
        return Ok(Came::Empty);
    }
    let incoming = write(&files, incoming, piece).await?;
    let whole = tokio::task::spawn_blocking(move || incoming.finish()).await.map_err(broken)?;
    Ok(Came::Whole(whole.map_err(broken)?))
}

/// The disk is waited for beside the threads that answer.
async fn write(files: &Files, incoming: Option<Incoming>, piece: Vec<u8>) -> Result<Incoming, Error> {
    let files = files.clone();
    let written = tokio::task::spawn_blocking(move || {
        let mut incoming = incoming.map_or_else(|| files.incoming(), Ok)?;
        incoming.write(&piece).map(|()| incoming)
    });
    written.await.map_err(broken)?.map_err(broken)
}

fn broken(error: impl std::fmt::Display) -> Error {
    Error::Broken(format!("a log cannot be taken in: {error}"))
}
