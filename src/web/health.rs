//! Whether the program lives, and whether it can work. Neither answer tells anything else.

use axum::extract::State;
use axum::http::StatusCode;
use axum::response::IntoResponse;

use super::Answer;
use super::app::App;

/// `GET /healthz`: the program answers.
pub async fn alive() -> &'static str {
    "ok\n"
}

/// `GET /readyz`: the store can be read and written.
pub async fn ready(State(app): State<App>) -> Answer {
    if let Err(error) = app.shop.db.is_ready().await {
        tracing::error!(%error, "not ready");
        return Ok((StatusCode::SERVICE_UNAVAILABLE, "not ready\n").into_response());
    }
    Ok("ready\n".into_response())
}
