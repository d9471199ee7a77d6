//! From a message of the outbox to an envelope, and out of the house: by SMTP, into a folder, or into memory.
//!
//! The same message gives the same bytes whenever it is sent: the Message-ID, the boundaries and the date come from the
//! message itself, so that a second copy, sent because nobody knows whether the first arrived, is recognised as one.

pub mod calendar;
pub mod reminder;
mod smtp;
mod transport;

use std::time::{Duration, SystemTime};

use lettre::message::header::{ContentType, Header, HeaderName, HeaderValue};
use lettre::message::{Attachment, Mailbox, MultiPart, SinglePart};
use lettre::{Address, Message as Mail};

use crate::model::message::Message;

pub use smtp::{Encryption, Server};
pub use transport::{Memory, Post, Transport};

/// Who sends.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sender {
    /// The shop, as the reader sees it.
    pub name: String,
    /// The address that the mail server lets us send from.
    pub from: String,
    /// Where an answer goes; empty: to the sender.
    pub reply_to: String,
}

/// A message that cannot become a mail; what is wrong with it, for the one who looks into it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NoMail {
    /// The recipient is no mail address.
    BadRecipient(String),
    /// The sender, or where answers go, is no mail address: a matter of settings.
    BadSender(String),
    /// A line break where none may be: somebody tries to add headers.
    LineBreak(&'static str),
    /// Anything else.
    Other(String),
}

impl std::fmt::Display for NoMail {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::BadRecipient(got) => write!(f, "{got:?} is no mail address"),
            Self::BadSender(got) => write!(f, "{got:?} is no mail address to send from"),
            Self::LineBreak(field) => write!(f, "a line break in the {field}"),
            Self::Other(said) => f.write_str(said),
        }
    }
}

impl std::error::Error for NoMail {}

macro_rules! header {
    ($(#[$doc:meta])* $name:ident = $text:literal) => {
        $(#[$doc])*
        #[derive(Debug, Clone)]
        struct $name(String);

        impl Header for $name {
            fn name() -> HeaderName {
                HeaderName::new_from_ascii_str($text)
            }

            fn parse(text: &str) -> Result<Self, Box<dyn std::error::Error + Send + Sync>> {
                Ok(Self(text.to_owned()))
            }

            fn display(&self) -> HeaderValue {
                HeaderValue::new(Self::name(), self.0.clone())
            }
        }
    };
}

header! {
    /// RFC 3834, 5: nobody wrote this by hand, no robot shall answer it.
    AutoSubmitted = "Auto-Submitted"
}
header! {
    /// RFC 2369, 3.2.
    ListUnsubscribe = "List-Unsubscribe"
}
header! {
    /// RFC 8058, 3.1.
    ListUnsubscribePost = "List-Unsubscribe-Post"
}

/// The Message-ID: made from the row's id, so that every copy of one message carries the same.
pub fn message_id(message: &Message) -> String {
    format!("<{}@fuelwright.invalid>", message.id)
}

/// The mail of a message. `stop_url`: the address that ends reminders, an https address that the shop serves itself.
///
/// # Errors
/// [`NoMail`] for an address that is none, and for a line break in what becomes a header.
pub fn mail(message: &Message, sender: &Sender, stop_url: Option<&str>) -> Result<Mail, NoMail> {
    for (field, text) in [("subject", &message.subject), ("recipient", &message.recipient), ("name", &sender.name)] {
        if text.contains(['\r', '\n', '\0']) {
            return Err(NoMail::LineBreak(field));
        }
    }
    let address = |text: &str| text.trim().parse::<Address>().map_err(|_| text.to_owned());
    let to = address(&message.recipient).map_err(NoMail::BadRecipient)?;
    let from = address(&sender.from).map_err(NoMail::BadSender)?;
    let mut builder = Mail::builder()
        .from(Mailbox::new(Some(sender.name.clone()), from))
        .to(Mailbox::new(None, to))
        .subject(message.subject.clone())
        .date(moment(message))
        .message_id(Some(message_id(message)))
        .header(AutoSubmitted("auto-generated".to_owned()));
    if !sender.reply_to.is_empty() {
        let reply_to = address(&sender.reply_to).map_err(NoMail::BadSender)?;
        builder = builder.reply_to(Mailbox::new(Some(sender.name.clone()), reply_to));
    }
    // One click works by https alone (RFC 8058, 3.1); without it there is no header rather than a broken one.
    if let Some(url) = stop_url.filter(|url| url.starts_with("https://")) {
        builder = builder
            .header(ListUnsubscribe(format!("<{url}>")))
            .header(ListUnsubscribePost("List-Unsubscribe=One-Click".to_owned()));
    }
    builder.multipart(parts(message)?).map_err(|error| NoMail::Other(error.to_string()))
}

fn parts(message: &Message) -> Result<MultiPart, NoMail> {
    let boundary = |part: &str| format!("{part}-{}", message.id.uuid().simple());
    let mut texts =
        MultiPart::alternative().boundary(boundary("text")).singlepart(SinglePart::plain(message.body_text.clone()));
    if !message.body_html.is_empty() {
        texts = texts.singlepart(SinglePart::html(message.body_html.clone()));
    }
    let mut whole = MultiPart::mixed().boundary(boundary("whole")).multipart(texts);
    if !message.calendar.is_empty() {
        let kind = ContentType::parse("text/calendar; charset=utf-8; method=PUBLISH")
            .map_err(|error| NoMail::Other(error.to_string()))?;
        let part = Attachment::new("due.ics".to_owned()).body(message.calendar.clone(), kind);
        whole = whole.singlepart(part);
    }
    Ok(whole)
}

/// When the message was written; a copy sent later is still that message.
fn moment(message: &Message) -> SystemTime {
    let seconds = u64::try_from(message.made_at.unix_timestamp()).unwrap_or(0);
    SystemTime::UNIX_EPOCH + Duration::from_secs(seconds)
}
