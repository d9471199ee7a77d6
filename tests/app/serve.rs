//! The accept loop on a real socket: slow clients are let go, a stop lets running requests end.

use std::net::SocketAddr;
use std::time::{Duration, Instant};

use fuelwright::web::{routes, serve};
use tokio::io::{AsyncReadExt, AsyncWriteExt};
use tokio::net::{TcpListener, TcpStream};
use tokio::sync::oneshot;

use crate::support::TestShop;

async fn served(open: &TestShop) -> (SocketAddr, oneshot::Sender<()>, tokio::task::JoinHandle<()>) {
    let listener = TcpListener::bind("127.0.0.1:0").await.unwrap();
    let address = listener.local_addr().unwrap();
    let (stop, told) = oneshot::channel();
    let site = routes::router(&open.app);
    let running = tokio::spawn(serve::serve(listener, site, async {
        let _ = told.await;
    }));
    (address, stop, running)
}

async fn answer(stream: &mut TcpStream) -> String {
    let mut bytes = vec![];
    stream.read_to_end(&mut bytes).await.unwrap();
    String::from_utf8_lossy(&bytes).into_owned()
}

#[tokio::test]
async fn a_client_that_says_nothing_or_trickles_its_header_is_let_go() {
    let open = TestShop::open().await;
    let (address, _stop, _running) = served(&open).await;
    let begun = Instant::now();
    let mut silent = TcpStream::connect(address).await.unwrap();
    let mut slow = TcpStream::connect(address).await.unwrap();
    slow.write_all(b"GET /healthz HTTP/1.1\r\nHost: x\r\n").await.unwrap();
    let (mut half, mut rest) = slow.split();
    let trickle = async {
        loop {
            tokio::time::sleep(Duration::from_secs(2)).await;
            if rest.write_all(b"X-Slow: 1\r\n").await.is_err() {
                std::future::pending::<()>().await;
            }
        }
    };
    let closed = async {
        let mut bytes = vec![];
        // The far end may close with data unread, which shows as a reset: closed either way.
        let _ = half.read_to_end(&mut bytes).await;
    };
    tokio::select! { () = closed => {}, () = trickle => {} }
    let _ = answer(&mut silent).await;
    let took = begun.elapsed();
    assert!(took > Duration::from_secs(8) && took < Duration::from_secs(14), "{took:?}");
}

#[tokio::test]
async fn a_stop_closes_the_door_and_ends() {
    let open = TestShop::open().await;
    let (address, stop, running) = served(&open).await;
    let mut client = TcpStream::connect(address).await.unwrap();
    client.write_all(b"GET /healthz HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n").await.unwrap();
    assert!(answer(&mut client).await.starts_with("HTTP/1.1 200 OK"));
    stop.send(()).unwrap();
    tokio::time::timeout(Duration::from_secs(5), running).await.unwrap().unwrap();
    assert!(TcpStream::connect(address).await.is_err());
}

#[tokio::test]
async fn two_lengths_in_one_request_are_refused() {
    let open = TestShop::open().await;
    let (address, _stop, _running) = served(&open).await;
    let mut client = TcpStream::connect(address).await.unwrap();
    let request = b"POST /sign-in HTTP/1.1\r\nHost: x\r\nContent-Length: 4\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\nGET / HTTP/1.1\r\n\r\n";
    client.write_all(request).await.unwrap();
    let said = tokio::time::timeout(Duration::from_secs(15), answer(&mut client)).await.unwrap();
    assert!(!said.contains("200 OK"), "{said}");
    assert_eq!(said.matches("HTTP/1.1 ").count(), 1, "a second request was smuggled in: {said}");
}
