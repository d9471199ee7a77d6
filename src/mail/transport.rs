//! Where mail goes: to a mail server, into a folder of `.eml` files, or into memory for tests.

use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};

use super::smtp::{self, Server};
use super::{NoMail, Sender, mail};
use crate::model::message::{Delivery, Message};

/// One way out of the house.
#[derive(Debug, Clone)]
pub enum Transport {
    /// A mail server.
    Smtp(Server),
    /// A folder; each mail is a file named by its message.
    Folder(PathBuf),
    /// A list, with what to answer to the next ones (nothing left: taken).
    Memory(Memory),
}

/// Mail that stays here, and the faults to play.
#[derive(Debug, Clone, Default)]
pub struct Memory {
    sent: Arc<Mutex<Vec<String>>>,
    faults: Arc<Mutex<Vec<Delivery>>>,
}

/// A transport with the name to send under.
#[derive(Debug, Clone)]
pub struct Post {
    pub transport: Transport,
    /// The address to send from, where a setting names one; else the branch's own.
    pub from: Option<String>,
}

impl Memory {
    /// What was sent, as it would go over the wire.
    pub fn sent(&self) -> Vec<String> {
        self.sent.lock().unwrap_or_else(PoisonError::into_inner).clone()
    }

    /// Answers the next attempts like this, the first first.
    pub fn answer(&self, faults: impl IntoIterator<Item = Delivery>) {
        self.faults.lock().unwrap_or_else(PoisonError::into_inner).extend(faults);
    }

    fn take(&self, raw: &[u8]) -> Delivery {
        let mut faults = self.faults.lock().unwrap_or_else(PoisonError::into_inner);
        let answer = if faults.is_empty() { Delivery::Sent } else { faults.remove(0) };
        // What is unknown did arrive here: the harder case of the two.
        if matches!(answer, Delivery::Sent | Delivery::Unknown(_)) {
            let mut sent = self.sent.lock().unwrap_or_else(PoisonError::into_inner);
            sent.push(String::from_utf8_lossy(raw).into_owned());
        }
        answer
    }
}

impl Post {
    /// Sends one message for a shop of this name and mail address.
    pub async fn send(&self, message: &Message, name: &str, branch_mail: &str, stop_url: Option<&str>) -> Delivery {
        let from = self.from.clone().unwrap_or_else(|| branch_mail.to_owned());
        let reply_to = if from == branch_mail { String::new() } else { branch_mail.to_owned() };
        let sender = Sender { name: name.to_owned(), from, reply_to };
        let mail = match mail(message, &sender, stop_url) {
            Ok(mail) => mail,
            Err(no @ NoMail::BadRecipient(_)) => return Delivery::Refused(no.to_string()),
            Err(no) => return Delivery::Failed(no.to_string()),
        };
        match &self.transport {
            Transport::Smtp(server) => smtp::send(server, mail.envelope(), &mail.formatted()).await,
            Transport::Folder(folder) => to_folder(folder, message, mail.formatted()).await,
            Transport::Memory(memory) => memory.take(&mail.formatted()),
        }
    }
}

/// Written aside and moved into place: a file that is there is whole, and a second copy takes the place of the first.
async fn to_folder(folder: &Path, message: &Message, raw: Vec<u8>) -> Delivery {
    let write = async {
        tokio::fs::create_dir_all(folder).await?;
        let aside = folder.join(format!(".{}.part", message.id));
        tokio::fs::write(&aside, raw).await?;
        tokio::fs::rename(aside, folder.join(format!("{}.eml", message.id))).await
    };
    match write.await {
        Ok(()) => Delivery::Sent,
        Err(error) => Delivery::NotNow(format!("{}: {error}", folder.display())),
    }
}
