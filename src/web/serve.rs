//! The accept loop: how many connections, how patient with slow ones, how to stop.
//!
//! The ready-made loop of the web library never closes a connection that sends nothing, or a header a minute; a few
//! hundred of those would keep everybody else out.

use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use axum::body::Body;
use axum::http::Request;
use hyper::body::Incoming;
use hyper::server::conn::http1;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::server::graceful::GracefulShutdown;
use hyper_util::service::TowerToHyperService;
use tokio::net::{TcpListener, TcpStream};
use tokio::sync::Semaphore;
use tower::ServiceExt;

use super::client::Peer;

const MOST_CONNECTIONS: usize = 512;
/// A request's head must be whole after this long; a connection without a request is closed.
const HEAD_WITHIN: Duration = Duration::from_secs(10);
/// What is running when the program is told to stop may take this long to end.
const STOP_WITHIN: Duration = Duration::from_secs(25);

/// Serves until `stop`, then lets running requests end.
pub async fn serve(listener: TcpListener, router: Router, stop: impl Future<Output = ()>) {
    let places = Arc::new(Semaphore::new(MOST_CONNECTIONS));
    let graceful = GracefulShutdown::new();
    let mut stop = std::pin::pin!(stop);
    loop {
        let place = tokio::select! {
            () = &mut stop => break,
            place = Arc::clone(&places).acquire_owned() => place,
        };
        let accepted = tokio::select! {
            () = &mut stop => break,
            accepted = listener.accept() => accepted,
        };
        match accepted {
            Ok((stream, address)) => {
                let connection = graceful.watch(talk(stream, Peer(address), router.clone()));
                tokio::spawn(async move {
                    // A client that goes away in the middle is everyday, and nobody is left to tell.
                    let _ = connection.await;
                    drop(place);
                });
            }
            Err(error) => {
                // Most often too many open files: a short rest lets some of them close.
                tracing::warn!(%error, "cannot accept a connection");
                tokio::time::sleep(Duration::from_millis(50)).await;
            }
        }
    }
    drop(listener);
    tracing::info!("stopping");
    if tokio::time::timeout(STOP_WITHIN, graceful.shutdown()).await.is_err() {
        tracing::warn!("some requests did not end in time");
    }
}

type Site = tower::util::BoxCloneService<Request<Incoming>, axum::response::Response, std::convert::Infallible>;

fn talk(
    stream: TcpStream,
    peer: Peer,
    router: Router,
) -> http1::Connection<TokioIo<TcpStream>, TowerToHyperService<Site>> {
    if let Err(error) = stream.set_nodelay(true) {
        tracing::debug!(%error, "cannot set TCP_NODELAY");
    }
    let site = router.map_request(move |mut request: Request<Incoming>| {
        request.extensions_mut().insert(peer);
        request.map(Body::new)
    });
    http1::Builder::new()
        .timer(TokioTimer::new())
        .header_read_timeout(HEAD_WITHIN)
        .serve_connection(TokioIo::new(stream), TowerToHyperService::new(site.boxed_clone()))
}
