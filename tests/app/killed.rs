//! A server killed without warning, again and again, while people save: nothing that was answered is lost, nothing stands
//! twice, and the shop is whole.
//!
//! A kill does not show a missing `fsync` (the system keeps what the process wrote); that the store asks for one is kept by
//! `store::the_settings_that_keep_data_are_in_force`.

use std::collections::BTreeMap;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::process::{Child, Command, Stdio};
use std::sync::{Arc, Mutex};
use std::thread;
use std::time::Duration;

use fuelwright::clock::Clock;
use fuelwright::db::{Database, Db};
use fuelwright::shop::Shop;
use fuelwright::shop::sign_in::From;
use uuid::Uuid;

use crate::support::{PASSWORD, TestShop};

/// What one writer sent: the key and the name of each form, and whether an answer came.
#[derive(Debug, Default)]
struct Ledger {
    sent: Vec<(Uuid, String)>,
    answered: Vec<String>,
}

/// The real server on the data of a test; the port it chose.
pub fn start(open: &TestShop) -> (Child, u16) {
    let mut command = Command::new(env!("CARGO_BIN_EXE_fuelwright"));
    command.args(["serve", "--listen", "127.0.0.1:0", "--data"]).arg(open.folder.path()).env_clear();
    let mut child = command.stdout(Stdio::piped()).stderr(Stdio::null()).spawn().unwrap();
    let mut line = String::new();
    BufReader::new(child.stdout.as_mut().unwrap()).read_line(&mut line).unwrap();
    let port = line.trim().rsplit(':').next().and_then(|port| port.parse().ok());
    (child, port.unwrap_or_else(|| panic!("it did not start: {line:?}")))
}

fn send(port: u16, session: &str, key: Uuid, name: &str) -> Option<u16> {
    let form = [("name", name), ("language", "en"), ("reminder_basis", "none"), ("phone", "01632 960 143")];
    post(port, session, "/customers", key, &form)
}

/// Sends one form on a connection of its own; the status, when a whole answer's head came.
pub fn post(port: u16, session: &str, path: &str, key: Uuid, fields: &[(&str, &str)]) -> Option<u16> {
    let mut form = form_urlencoded::Serializer::new(String::new());
    form.extend_pairs(fields);
    let body = form.append_pair("key", &key.to_string()).finish();
    let mut stream = TcpStream::connect(("127.0.0.1", port)).ok()?;
    stream.set_read_timeout(Some(Duration::from_secs(10))).ok()?;
    let head = format!(
        "POST {path} HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\nCookie: sid={session}\r\nSec-Fetch-Site: same-origin\r\n\
         Content-Type: application/x-www-form-urlencoded\r\nContent-Length: {}\r\nConnection: close\r\n\r\n{body}",
        body.len()
    );
    stream.write_all(head.as_bytes()).ok()?;
    let mut answer = String::new();
    // A connection cut by the kill ends with an error or with nothing; neither is an answer.
    let _ = stream.read_to_string(&mut answer);
    let (head, _) = answer.split_once("\r\n\r\n")?;
    head.split(' ').nth(1)?.parse().ok()
}

fn write_until_killed(port: u16, session: &str, round: u32, writer: u32, ledger: &Mutex<Ledger>) {
    for number in 0.. {
        let (key, name) = (Uuid::now_v7(), format!("Round {round} writer {writer} form {number}"));
        ledger.lock().unwrap().sent.push((key, name.clone()));
        match send(port, session, key, &name) {
            Some(303) => ledger.lock().unwrap().answered.push(name),
            Some(status) => panic!("{name}: {status}"),
            None => return,
        }
    }
}

/// A session of today, written by a store of our own that is closed before the server opens the folder.
async fn sign_in(open: &TestShop) -> String {
    sign_in_as(open, "mara").await
}

/// The same for anybody of the cast.
pub async fn sign_in_as(open: &TestShop, name: &str) -> String {
    let db = Database::open(&open.folder.path().join("fuelwright.db")).await.unwrap();
    let shop = Shop { db: db.clone(), clock: Clock::system(), ..open.shop.clone() };
    let token = shop.sign_in(name, PASSWORD, &From::default()).await.unwrap();
    db.close().await;
    token.as_text().to_owned()
}

async fn names(open: &TestShop) -> BTreeMap<String, i64> {
    let db = Database::open_to_read(&open.folder.path().join("fuelwright.db")).await.unwrap();
    let rows = sqlx::query_as::<Db, (String, i64)>("select name, count(*) from customers group by name");
    let found = rows.fetch_all(&mut *db.read().await.unwrap()).await.unwrap();
    db.close().await;
    found.into_iter().collect()
}

/// `KILL_ROUNDS` says how often; eight unless told otherwise.
#[tokio::test(flavor = "multi_thread")]
async fn nothing_answered_is_lost_and_nothing_stands_twice() {
    let rounds: u32 = std::env::var("KILL_ROUNDS").ok().and_then(|rounds| rounds.parse().ok()).unwrap_or(8);
    let open = TestShop::open().await;
    open.shop.db.close().await;
    let ledger = Arc::new(Mutex::new(Ledger::default()));
    for round in 0..rounds {
        // A fresh session each time: a long run outlives one.
        let session = sign_in(&open).await;
        let (mut child, port) = start(&open);
        let writers: Vec<_> = (0..3)
            .map(|writer| {
                let (session, ledger) = (session.clone(), Arc::clone(&ledger));
                thread::spawn(move || write_until_killed(port, &session, round, writer, &ledger))
            })
            .collect();
        thread::sleep(Duration::from_millis(rand::random_range(50..600)));
        child.kill().unwrap();
        child.wait().unwrap();
        for writer in writers {
            writer.join().unwrap();
        }
    }
    let Ledger { sent, answered } = Arc::into_inner(ledger).unwrap().into_inner().unwrap();
    assert!(answered.len() >= rounds as usize, "only {} forms were answered in {rounds} rounds", answered.len());
    let found = names(&open).await;
    let lost: Vec<_> = answered.iter().filter(|name| !found.contains_key(*name)).collect();
    assert!(lost.is_empty(), "answered and lost: {lost:?}");
    let twice: Vec<_> = found.iter().filter(|(_, count)| **count > 1).collect();
    assert!(twice.is_empty(), "twice: {twice:?}");

    // Whoever got no answer sends the form again, under the key it had.
    let session = sign_in(&open).await;
    let (mut child, port) = start(&open);
    for (key, name) in sent.iter().filter(|(_, name)| !answered.contains(name)) {
        assert_eq!(send(port, &session, *key, name), Some(303), "{name} sent again");
    }
    child.kill().unwrap();
    child.wait().unwrap();
    let found = names(&open).await;
    for (_, name) in &sent {
        assert_eq!(found.get(name), Some(&1), "{name}");
    }
    let mut check = Command::new(env!("CARGO_BIN_EXE_fuelwright"));
    let said = check.arg("check").arg("--data").arg(open.folder.path()).env_clear().output().unwrap();
    assert!(said.status.success(), "{}", String::from_utf8_lossy(&said.stdout));
    println!("{rounds} kills, {} forms sent, {} answered before a kill", sent.len(), answered.len());
}
