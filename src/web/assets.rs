//! Style sheets, scripts and pictures, from inside the binary.
//!
//! Each address carries the start of its content's SHA-256, so that a browser may keep it for ever and still sees a
//! change at once. In a debug build the folder is read live.

use std::fmt::Write;

use axum::extract::Path;
use axum::http::{HeaderMap, HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Response};
use rust_embed::{EmbeddedFile, RustEmbed};

#[derive(RustEmbed)]
#[folder = "static/"]
struct Static;

/// The address of the file at `path` under `static/`; a name that does not exist stays as it is, and is logged.
pub fn href(path: &str) -> String {
    let Some(file) = Static::get(path) else {
        tracing::error!(path, "no such asset");
        return format!("/assets/none/{path}");
    };
    format!("/assets/{}/{path}", tag(&file))
}

/// `GET /assets/{hash}/{*path}`.
pub async fn show(Path((hash, path)): Path<(String, String)>, headers: HeaderMap) -> Response {
    let Some(file) = Static::get(&path) else { return StatusCode::NOT_FOUND.into_response() };
    let tag = tag(&file);
    let etag = format!("\"{tag}\"");
    let kind = HeaderValue::from_str(file.metadata.mimetype()).unwrap_or(HeaderValue::from_static("text/plain"));
    // An old address still gets the file, but nobody may keep it under that name.
    let keep = if hash == tag { "public, max-age=31536000, immutable" } else { "no-store" };
    let mut answer = HeaderMap::new();
    answer.insert(header::CACHE_CONTROL, HeaderValue::from_static(keep));
    answer.insert(header::X_CONTENT_TYPE_OPTIONS, HeaderValue::from_static("nosniff"));
    if let Ok(etag) = HeaderValue::from_str(&etag) {
        answer.insert(header::ETAG, etag);
    }
    let known = headers.get(header::IF_NONE_MATCH).and_then(|known| known.to_str().ok()).unwrap_or("");
    if known.split(',').any(|one| one.trim().trim_start_matches("W/") == etag) {
        return (StatusCode::NOT_MODIFIED, answer).into_response();
    }
    answer.insert(header::CONTENT_TYPE, kind);
    (answer, file.data).into_response()
}

/// Twelve hex digits of the content's SHA-256.
fn tag(file: &EmbeddedFile) -> String {
    file.metadata.sha256_hash().iter().take(6).fold(String::new(), |mut tag, byte| {
        let _ = write!(tag, "{byte:02x}");
        tag
    })
}

#[cfg(test)]
mod tests {
    use axum::body::to_bytes;

    use super::*;

    async fn get(address: &str, known: Option<&str>) -> Response {
        let (hash, path) = address.trim_start_matches("/assets/").split_once('/').expect("hash and path");
        let mut headers = HeaderMap::new();
        if let Some(known) = known {
            headers.insert(header::IF_NONE_MATCH, known.parse().expect("a tag"));
        }
        show(Path((hash.into(), path.into())), headers).await
    }

    #[tokio::test]
    async fn a_sheet_is_kept_for_ever_under_its_own_hash_only() {
        let answer = get(&href("css/tokens.css"), None).await;
        assert_eq!(answer.status(), StatusCode::OK);
        assert_eq!(answer.headers()[header::CONTENT_TYPE], "text/css");
        assert!(answer.headers()[header::CACHE_CONTROL].to_str().expect("text").contains("immutable"));
        let etag = answer.headers()[header::ETAG].to_str().expect("text").to_owned();
        assert!(!to_bytes(answer.into_body(), 1 << 20).await.expect("read").is_empty());

        let again = get(&href("css/tokens.css"), Some(&etag)).await;
        assert_eq!(again.status(), StatusCode::NOT_MODIFIED);
        assert!(to_bytes(again.into_body(), 1 << 20).await.expect("read").is_empty());

        let old = get("/assets/000000000000/css/tokens.css", None).await;
        assert_eq!(old.headers()[header::CACHE_CONTROL], "no-store");
    }

    #[tokio::test]
    async fn what_is_not_there_is_not_found() {
        for path in ["css/none.css", "../Cargo.toml", ""] {
            assert_eq!(get(&format!("/assets/x/{path}"), None).await.status(), StatusCode::NOT_FOUND, "{path}");
        }
    }
}
