//! One mail to one mail server, step by step, because what a failure means depends on the step.
//!
//! A refusal at RCPT is about the address, one at the end of DATA about the message, all before is about the server. A
//! line that drops after the text was given leaves it unknown whether the mail went out. No fall-back to plain text.

use std::fmt::Display;
use std::future::Future;
use std::time::Duration;

use lettre::address::Envelope;
use lettre::transport::smtp::Error;
use lettre::transport::smtp::authentication::{Credentials, DEFAULT_MECHANISMS};
use lettre::transport::smtp::client::{AsyncSmtpConnection, TlsParameters};
use lettre::transport::smtp::commands::{Data, Mail, Rcpt};
use lettre::transport::smtp::extension::{ClientId, Extension, MailBodyParameter, MailParameter};

use crate::model::message::Delivery;

/// How the line to the server is kept secret.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Encryption {
    /// From the first byte.
    Tls,
    /// After a greeting; a server that does not offer it is refused.
    StartTls,
    /// Not at all; for a server on this machine.
    None,
}

/// A mail server.
#[derive(Clone, PartialEq, Eq)]
pub struct Server {
    pub host: String,
    pub port: u16,
    pub encryption: Encryption,
    /// Name and password, where it wants them.
    pub login: Option<(String, String)>,
    /// How long one step may take.
    pub patience: Duration,
}

impl std::fmt::Debug for Server {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "Server({}:{}, {:?})", self.host, self.port, self.encryption)
    }
}

impl Server {
    /// A server with the usual patience of 30 s a step.
    pub fn new(host: &str, port: u16, encryption: Encryption, login: Option<(String, String)>) -> Self {
        Self { host: host.to_owned(), port, encryption, login, patience: Duration::from_secs(30) }
    }
}

/// What went wrong in one step.
enum Fault {
    Late,
    Said(Error),
}

impl Display for Fault {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Late => f.write_str("no answer in time"),
            Self::Said(error) => {
                write!(f, "{error}")?;
                let mut cause = std::error::Error::source(error);
                while let Some(inner) = cause {
                    write!(f, ": {inner}")?;
                    cause = inner.source();
                }
                Ok(())
            }
        }
    }
}

async fn step<T>(server: &Server, work: impl Future<Output = Result<T, Error>>) -> Result<T, Fault> {
    match tokio::time::timeout(server.patience, work).await {
        Ok(done) => done.map_err(Fault::Said),
        Err(_) => Err(Fault::Late),
    }
}

/// Hands one mail to the server.
pub(super) async fn send(server: &Server, envelope: &Envelope, raw: &[u8]) -> Delivery {
    let mut line = match open(server).await {
        Ok(line) => line,
        Err((at, fault)) => return Delivery::NotNow(format!("{at}: {fault}")),
    };
    let delivery = converse(server, &mut line, envelope, raw).await;
    // Whatever the server says to a good-bye changes nothing, but it may take its time.
    let _ = tokio::time::timeout(Duration::from_secs(2).min(server.patience), line.abort()).await;
    delivery
}

async fn open(server: &Server) -> Result<AsyncSmtpConnection, (&'static str, Fault)> {
    let hello = ClientId::default();
    let tls = || TlsParameters::new(server.host.clone()).map_err(|error| ("certificate store", Fault::Said(error)));
    let at_once = if server.encryption == Encryption::Tls { Some(tls()?) } else { None };
    let address = (server.host.as_str(), server.port);
    let connect = AsyncSmtpConnection::connect_tokio1(address, Some(server.patience), &hello, at_once, None);
    let mut line = step(server, connect).await.map_err(|fault| ("connecting", fault))?;
    if server.encryption == Encryption::StartTls {
        step(server, line.starttls(tls()?, &hello)).await.map_err(|fault| ("STARTTLS", fault))?;
    }
    if let Some((name, password)) = &server.login {
        let credentials = Credentials::new(name.clone(), password.clone());
        step(server, line.auth(DEFAULT_MECHANISMS, &credentials)).await.map_err(|fault| ("signing in", fault))?;
    }
    Ok(line)
}

async fn converse(server: &Server, line: &mut AsyncSmtpConnection, envelope: &Envelope, raw: &[u8]) -> Delivery {
    let mut options = Vec::new();
    if !raw.is_ascii() && line.server_info().supports_feature(Extension::EightBitMime) {
        options.push(MailParameter::Body(MailBodyParameter::EightBitMime));
    }
    if envelope.to().iter().any(|to| !to.to_string().is_ascii()) {
        if !line.server_info().supports_feature(Extension::SmtpUtfEight) {
            return Delivery::Refused("the server takes no address beyond ASCII".to_owned());
        }
        options.push(MailParameter::SmtpUtfEight);
    }
    if let Err(fault) = step(server, line.command(Mail::new(envelope.from().cloned(), options))).await {
        return Delivery::NotNow(format!("MAIL: {fault}"));
    }
    for to in envelope.to() {
        match step(server, line.command(Rcpt::new(to.clone(), vec![]))).await {
            Ok(_) => {}
            Err(Fault::Said(error)) if error.is_permanent() => {
                return Delivery::Refused(format!("RCPT: {}", Fault::Said(error)));
            }
            Err(fault) => return Delivery::NotNow(format!("RCPT: {fault}")),
        }
    }
    match step(server, line.command(Data)).await {
        Ok(_) => {}
        Err(Fault::Said(error)) if error.is_permanent() => {
            return Delivery::Failed(format!("DATA: {}", Fault::Said(error)));
        }
        Err(fault) => return Delivery::NotNow(format!("DATA: {fault}")),
    }
    match step(server, line.message(raw)).await {
        Ok(_) => Delivery::Sent,
        Err(Fault::Said(error)) if error.is_permanent() => Delivery::Failed(Fault::Said(error).to_string()),
        Err(Fault::Said(error)) if error.is_transient() => Delivery::NotNow(Fault::Said(error).to_string()),
        Err(fault) => Delivery::Unknown(fault.to_string()),
    }
}
