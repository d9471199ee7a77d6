//! Mail as it leaves: what stands in it, what a server can do to it, and what a person can do about it.

use std::time::Duration as Patience;

use fuelwright::mail::{Encryption, Server, Transport};
use fuelwright::model::duty::DutyKind;
use fuelwright::model::message::{Message, MessageState};
use time::Duration;
use time::macros::{date, datetime};
use tokio::io::{AsyncBufReadExt, AsyncWriteExt, BufReader};
use tokio::net::{TcpListener, TcpStream};
use tokio::sync::mpsc;

use crate::owed::{ANA, Keeper, PUBLIC_URL, header, parts};
use crate::support::TestShop;

/// What the server does to the next mail.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Fault {
    None,
    NoSuchUser,
    Later,
    BadSender,
    DropsAfterData,
    HangsAtGreeting,
    HangsAtData,
}

/// A mail server of sixty lines: it says what it must, plays one fault, and hands on what it took.
async fn sink(fault: Fault) -> (Server, mpsc::UnboundedReceiver<String>) {
    let listener = TcpListener::bind("127.0.0.1:0").await.unwrap();
    let port = listener.local_addr().unwrap().port();
    let (took, taken) = mpsc::unbounded_channel();
    tokio::spawn(async move {
        while let Ok((line, _)) = listener.accept().await {
            tokio::spawn(talk(line, fault, took.clone()));
        }
    });
    let mut server = Server::new("127.0.0.1", port, Encryption::None, None);
    server.patience = Patience::from_millis(400);
    (server, taken)
}

async fn talk(line: TcpStream, fault: Fault, took: mpsc::UnboundedSender<String>) {
    let (read, mut write) = line.into_split();
    let mut lines = BufReader::new(read);
    if fault == Fault::HangsAtGreeting {
        return std::future::pending().await;
    }
    let _ = write.write_all(b"220 sink\r\n").await;
    loop {
        let mut said = String::new();
        if lines.read_line(&mut said).await.unwrap_or(0) == 0 {
            return;
        }
        let answer = match said.get(..4).unwrap_or_default().to_ascii_uppercase().as_str() {
            "EHLO" => "250-sink\r\n250 8BITMIME\r\n",
            "MAIL" if fault == Fault::BadSender => "550 not from you\r\n",
            "RCPT" if fault == Fault::NoSuchUser => "550 5.1.1 no such user\r\n",
            "RCPT" if fault == Fault::Later => "451 4.7.1 try later\r\n",
            "DATA" => {
                let _ = write.write_all(b"354 go on\r\n").await;
                let mut mail = String::new();
                loop {
                    let mut text = String::new();
                    if lines.read_line(&mut text).await.unwrap_or(0) == 0 || text == ".\r\n" {
                        break;
                    }
                    mail.push_str(text.strip_prefix('.').unwrap_or(&text));
                }
                let _ = took.send(mail);
                match fault {
                    Fault::DropsAfterData => return,
                    Fault::HangsAtData => return std::future::pending().await,
                    _ => "250 taken\r\n",
                }
            }
            "QUIT" => "221 bye\r\n",
            _ => "250 ok\r\n",
        };
        let _ = write.write_all(answer.as_bytes()).await;
    }
}

/// A shop in which one filter falls due in 30 days, and what became of its reminder with this server.
async fn sent_with(fault: Fault, rounds: usize) -> (TestShop, Message, Vec<String>) {
    let open = TestShop::open().await;
    let vehicle = open.vehicle_of(open.keeper(&ANA).await, "NM 47 KTR").await;
    open.owes(vehicle, DutyKind::Filter, "shop.filter", date!(2026 - 06 - 11)).await;
    let (server, mut taken) = sink(fault).await;
    let by_smtp = open.rounds_by(Transport::Smtp(server));
    for round in 0..rounds {
        if round > 0 {
            open.clock.advance(Duration::minutes(2));
        }
        by_smtp.once(round == 0).await.unwrap();
    }
    let mut mails = vec![];
    while let Ok(mail) = taken.try_recv() {
        mails.push(mail);
    }
    let message = open.messages().await.remove(0);
    (open, message, mails)
}

#[tokio::test]
async fn a_mail_taken_is_sent() {
    let (_, message, mails) = sent_with(Fault::None, 3).await;
    assert_eq!((message.state, message.attempts, mails.len()), (MessageState::Sent, 1, 1));
    assert!(message.sent_at.is_some() && message.last_error.is_empty());
}

#[tokio::test]
async fn an_address_that_is_none_is_not_tried_again() {
    let (open, message, mails) = sent_with(Fault::NoSuchUser, 4).await;
    assert_eq!((message.state, message.attempts, mails.len()), (MessageState::Failed, 1, 0));
    open.desk().await.get("/outbox?state=failed").await.says("no such user");
}

#[tokio::test]
async fn a_server_that_says_later_is_asked_again_and_keeps_the_message() {
    let (_, message, mails) = sent_with(Fault::Later, 2).await;
    assert_eq!((message.state, message.attempts, mails.len()), (MessageState::Waiting, 2, 0));
    assert!(message.last_error.contains("451"), "{}", message.last_error);
    // A refusal of the sender is about the server, never about the keeper's address.
    let (_, message, _) = sent_with(Fault::BadSender, 1).await;
    assert_eq!(message.state, MessageState::Waiting);
}

#[tokio::test]
async fn a_line_that_drops_or_hangs_after_the_text_leaves_it_unknown_and_the_copy_is_the_same() {
    for fault in [Fault::DropsAfterData, Fault::HangsAtData] {
        let (_, message, mails) = sent_with(fault, 6).await;
        assert_eq!((message.state, mails.len()), (MessageState::Failed, 2), "{fault:?}: {}", message.last_error);
        assert_eq!(header(&mails[0], "Message-ID"), header(&mails[1], "Message-ID"));
    }
}

#[tokio::test]
async fn a_server_that_hangs_or_is_not_there_holds_nothing_up() {
    let (_, message, _) = sent_with(Fault::HangsAtGreeting, 1).await;
    assert_eq!(message.state, MessageState::Waiting, "{}", message.last_error);
    let open = TestShop::open().await;
    let vehicle = open.vehicle_of(open.keeper(&ANA).await, "NM 47 KTR").await;
    open.owes(vehicle, DutyKind::Filter, "shop.filter", date!(2026 - 06 - 11)).await;
    let closed = TcpListener::bind("127.0.0.1:0").await.unwrap().local_addr().unwrap().port();
    let server = Server::new("127.0.0.1", closed, Encryption::None, None);
    open.rounds_by(Transport::Smtp(server)).once(true).await.unwrap();
    let message = open.messages().await.remove(0);
    assert_eq!(message.state, MessageState::Waiting, "{}", message.last_error);
    assert!(message.last_error.starts_with("connecting"), "{}", message.last_error);
}

#[tokio::test]
async fn a_mail_in_the_folder_reads_back_whole() {
    let open = TestShop::open().await;
    let keeper = open.keeper(&Keeper { name: "Zoë Łęcka <b>", ..ANA }).await;
    let vehicle = open.vehicle_of(keeper, "NM 47 KTR").await;
    let id = open.owes(vehicle, DutyKind::Filter, "shop.filter", date!(2026 - 06 - 11)).await;
    let folder = open.folder.path().join("mail");
    open.rounds_by(Transport::Folder(folder.clone())).once(true).await.unwrap();
    let message = open.messages().await.remove(0);
    let raw = std::fs::read_to_string(folder.join(format!("{}.eml", message.id))).unwrap();
    let head = |name| header(&raw, name).unwrap_or_else(|| panic!("no {name} in {raw}"));
    assert_eq!(head("Message-ID"), format!("<{}@fuelwright.invalid>", message.id));
    assert_eq!(head("Auto-Submitted"), "auto-generated");
    assert_eq!(head("List-Unsubscribe-Post"), "List-Unsubscribe=One-Click");
    let stop = head("List-Unsubscribe");
    assert!(stop.starts_with(&format!("<{PUBLIC_URL}/unsubscribe/")) && stop.ends_with('>'), "{stop}");
    assert!(head("Subject").contains("NM 47 KTR: Filter"), "{}", head("Subject"));
    let parts = parts(&raw);
    let kinds: Vec<&str> = parts.iter().map(|(kind, _)| kind.split(';').next().unwrap()).collect();
    assert_eq!(kinds, ["text/plain", "text/html", "text/calendar"]);
    assert!(parts[0].1.contains("Dear Zoë Łęcka <b>,") && parts[0].1.contains(&format!("{PUBLIC_URL}/own/")));
    assert!(parts[1].1.contains("Zoë Łęcka &#60;b&#62;"), "a name is text, never markup: {}", parts[1].1);
    let calendar = &parts[2].1;
    for line in ["BEGIN:VCALENDAR\r\n", "METHOD:PUBLISH\r\n", "DTSTAMP:20260512T090000Z\r\n", "END:VCALENDAR"] {
        assert!(calendar.contains(line), "{line:?} in {calendar}");
    }
    assert!(calendar.contains("DTSTART;VALUE=DATE:20260611\r\n"), "{calendar}");
    assert!(calendar.contains(&format!("UID:{id}@fuelwright.invalid")), "{calendar}");
    assert!(calendar.split("\r\n").all(|line| line.len() <= 75), "RFC 5545, 3.1: {calendar}");
    // What the store keeps opens nothing.
    assert!(!message.body_text.contains("/own/") && !message.body_html.contains("/own/"));
}

#[tokio::test]
async fn a_line_break_in_an_address_sends_nothing() {
    let open = TestShop::open().await;
    let keeper = open.keeper(&Keeper { mail: "ana@example.org\r\nBcc: everybody@example.org", ..ANA }).await;
    let vehicle = open.vehicle_of(keeper, "NM 47\r\nBcc: x@example.org").await;
    open.owes(vehicle, DutyKind::Filter, "shop.filter", date!(2026 - 06 - 11)).await;
    let (rounds, memory) = open.rounds();
    rounds.once(true).await.unwrap();
    assert!(memory.sent().is_empty());
    let message = open.messages().await.remove(0);
    assert_eq!(message.state, MessageState::Failed);
    assert!(!message.subject.contains(['\r', '\n']), "{:?}", message.subject);
}

#[tokio::test]
async fn the_desk_holds_releases_prints_and_sets_aside() {
    let open = TestShop::open().await;
    let vehicle = open.vehicle_of(open.keeper(&ANA).await, "NM 47 KTR").await;
    open.owes(vehicle, DutyKind::Filter, "shop.filter", date!(2026 - 06 - 11)).await;
    open.until(datetime!(2026-05-15 22:00 UTC));
    let (rounds, memory) = open.rounds();
    rounds.once(true).await.unwrap();
    let id = open.messages().await[0].id;
    let (desk, address) = (open.desk().await, format!("/outbox/{id}"));
    desk.get("/outbox").await.is(200).links_to(&address).says("ana@example.org");
    desk.get(&address).await.is(200).says("Dear Ana Reyes").says("[the link is made when the message goes out]");
    assert_eq!(desk.post(&address, &[("act", "hold")]).await.goes_to(), address);
    open.until(datetime!(2026-05-18 09:00 UTC));
    rounds.once(false).await.unwrap();
    assert!(memory.sent().is_empty());
    let desk = open.desk().await; // the session of Friday is over
    desk.post(&address, &[("act", "release")]).await.goes_to();
    desk.post(&address, &[("act", "letter")]).await.goes_to();
    desk.get(&format!("{address}/letter")).await.is(200).says("Ropewalk").says("I want no more reminders.").hides("{{");
    let posted = desk.get(&format!("{address}/letter/pdf")).await;
    posted.is(200);
    let posted = crate::papers::reading::Paper::new("outbox-letter", &posted.bytes);
    posted.is_sound();
    posted.stays_inside_its_margins();
    posted.says("Ropewalk");
    posted.says("I want no more reminders.");
    desk.post(&address, &[("act", "posted")]).await.goes_to();
    desk.post(&address, &[("act", "drop")]).await.is(409);
    desk.post(&address, &[("act", "explode")]).await.is(400);
    desk.get("/outbox?state=letter").await.says("Posted");
    let auditor = open.auditor().await;
    auditor.get("/outbox?state=letter").await.is(200).hides("ana@example.org");
    auditor.get(&address).await.is(200).hides("ana@example.org").hides("It is posted");
}

#[tokio::test]
async fn lead_times_are_the_managers_and_sending_can_be_stopped() {
    let open = TestShop::open().await;
    let vehicle = open.vehicle_of(open.keeper(&ANA).await, "NM 47 KTR").await;
    open.owes(vehicle, DutyKind::Filter, "shop.filter", date!(2026 - 06 - 11)).await;
    let manager = open.manager().await;
    let wrong = manager.post("/outbox/settings", &[("reminder_leads", "60, soon")]).await;
    wrong.is(422).says("Takes whole days");
    assert_eq!(wrong.field("reminder_leads").as_deref(), Some("60, soon"));
    let (rounds, memory) = open.rounds();
    manager.post("/outbox/settings", &[("reminder_leads", "20, -14"), ("sending_paused", "yes")]).await.goes_to();
    rounds.once(true).await.unwrap();
    assert!(open.messages().await.is_empty(), "30 days before is no lead time any more");
    open.until(datetime!(2026-05-22 09:00 UTC));
    rounds.once(true).await.unwrap();
    assert_eq!((open.messages().await.len(), memory.sent().len()), (1, 0));
    let manager = open.manager().await; // the session of last week is over
    manager.get("/outbox").await.says("Sending is stopped");
    manager.post("/outbox/settings", &[("reminder_leads", "20, -14")]).await.goes_to();
    rounds.once(false).await.unwrap();
    assert_eq!(memory.sent().len(), 1);
}
