//! People, vehicles and duties for the tests of what falls due; and the rounds with a post that stays here.

use fuelwright::db;
use fuelwright::mail::{Memory, Post, Transport};
use fuelwright::model::duty::{DueBy, DutyKind, NewDuty};
use fuelwright::model::ids::{CustomerId, DutyId, VehicleId};
use fuelwright::model::message::{Message, MessageState};
use fuelwright::rounds::Rounds;
use time::{Date, Duration, OffsetDateTime};

use crate::support::TestShop;

pub const PUBLIC_URL: &str = "https://gas.example.org";

pub struct Keeper<'a> {
    pub name: &'a str,
    pub mail: &'a str,
    pub address: &'a str,
    pub basis: &'a str,
}

/// Agreed to be reminded, by mail.
pub const ANA: Keeper<'static> =
    Keeper { name: "Ana Reyes", mail: "ana@example.org", address: "7 Ropewalk\nNorthmere", basis: "consent" };

impl TestShop {
    pub async fn keeper(&self, keeper: &Keeper<'_>) -> CustomerId {
        let id = CustomerId::new();
        let mut tx = self.shop.db.write().await.unwrap();
        sqlx::query(
            "insert into customers (id, branch_id, name, address, phone, mail, reminder_basis, search, created_at)
             values ($1, $2, $3, $4, '+44 1632 960177', $5, $6, $3, '2026-01-02T00:00:00Z')",
        )
        .bind(id)
        .bind(self.branch)
        .bind(keeper.name)
        .bind(keeper.address)
        .bind(keeper.mail)
        .bind(keeper.basis)
        .execute(&mut *tx)
        .await
        .unwrap();
        tx.commit().await.unwrap();
        id
    }

    pub async fn vehicle_of(&self, keeper: CustomerId, plate: &str) -> VehicleId {
        let id = VehicleId::new();
        let mut tx = self.shop.db.write().await.unwrap();
        sqlx::query(
            "insert into vehicles (id, branch_id, plate, make, model, search, created_at)
             values ($1, $2, $3, 'Corvane', 'Pilot 1.6', $3, '2026-01-02T00:00:00Z')",
        )
        .bind(id)
        .bind(self.branch)
        .bind(plate)
        .execute(&mut *tx)
        .await
        .unwrap();
        tx.commit().await.unwrap();
        self.keeps(keeper, id, "2020-01-01", None).await;
        id
    }

    pub async fn keeps(&self, keeper: CustomerId, vehicle: VehicleId, from: &str, to: Option<&str>) {
        let mut tx = self.shop.db.write().await.unwrap();
        sqlx::query(
            "insert into vehicle_people (id, vehicle_id, customer_id, role, from_on, to_on)
             values ($1, $2, $3, 'keeper', $4, $5)",
        )
        .bind(VehicleId::new())
        .bind(vehicle)
        .bind(keeper)
        .bind(from)
        .bind(to)
        .execute(&mut *tx)
        .await
        .unwrap();
        tx.commit().await.unwrap();
    }

    pub async fn owes(&self, vehicle: VehicleId, kind: DutyKind, line: &str, due_on: Date) -> DutyId {
        let duty = NewDuty {
            part_id: None,
            line: line.into(),
            kind,
            due_on,
            due_km: None,
            decided_by: DueBy::Date,
            source: "the shop's own interval; common practice".into(),
            is_checked: false,
        };
        let mut tx = self.shop.db.write().await.unwrap();
        let now = self.clock.now();
        let id = db::duties::insert(&mut tx, self.branch, vehicle, None, &duty, now).await.unwrap().expect("is new");
        tx.commit().await.unwrap();
        id
    }

    /// The rounds with a post that stays here.
    pub fn rounds(&self) -> (Rounds, Memory) {
        let memory = Memory::default();
        (self.rounds_by(Transport::Memory(memory.clone())), memory)
    }

    pub fn rounds_by(&self, transport: Transport) -> Rounds {
        Rounds {
            shop: self.shop.clone(),
            post: Some(Post { transport, from: None }),
            public_url: Some(PUBLIC_URL.into()),
            is_demo: false,
        }
    }

    /// Everything in the outbox.
    pub async fn messages(&self) -> Vec<Message> {
        let mut con = self.shop.db.read().await.unwrap();
        let mut all = vec![];
        for state in <MessageState as fuelwright::model::Coded>::ALL {
            all.extend(db::outbox::list(&mut con, self.branch, *state, 1000).await.unwrap());
        }
        all.sort_by_key(|message| (message.made_at, message.id));
        all
    }

    /// Lets time pass until this moment.
    pub fn until(&self, at: OffsetDateTime) {
        let by: Duration = at - self.clock.now();
        self.clock.advance(by);
    }
}

/// The value of a header of a mail, unfolded.
pub fn header(mail: &str, name: &str) -> Option<String> {
    let head = mail.split("\r\n\r\n").next().unwrap_or_default().replace("\r\n ", " ").replace("\r\n\t", " ");
    let lines: Vec<&str> = head.split("\r\n").collect();
    let found = lines.iter().find_map(|line| line.strip_prefix(&format!("{name}: ")));
    found.map(str::to_owned)
}

/// The leaves of a multipart mail: content type and decoded text.
pub fn parts(mail: &str) -> Vec<(String, String)> {
    let (_, body) = mail.split_once("\r\n\r\n").unwrap();
    let kind = header(mail, "Content-Type").unwrap_or_default();
    let Some((_, boundary)) = kind.split_once("boundary=\"") else {
        return vec![(kind, decoded(body, &header(mail, "Content-Transfer-Encoding").unwrap_or_default()))];
    };
    let line = format!("--{}", boundary.split('"').next().unwrap());
    let inner = body.split(&line).skip(1).filter(|part| !part.starts_with("--"));
    inner.flat_map(|part| parts(part.trim_start_matches("\r\n"))).collect()
}

fn decoded(body: &str, encoding: &str) -> String {
    use base64::Engine;
    match encoding {
        "base64" => {
            let text: String = body.split_whitespace().collect();
            String::from_utf8(base64::engine::general_purpose::STANDARD.decode(text).unwrap()).unwrap()
        }
        "quoted-printable" => {
            let text = body.replace("=\r\n", "");
            let mut bytes = vec![];
            let mut rest = text.as_bytes();
            while let Some((&first, after)) = rest.split_first() {
                if first == b'=' {
                    bytes.push(u8::from_str_radix(std::str::from_utf8(&after[..2]).unwrap(), 16).unwrap());
                    rest = &after[2..];
                } else {
                    bytes.push(first);
                    rest = after;
                }
            }
            String::from_utf8(bytes).unwrap()
        }
        _ => body.to_owned(),
    }
}
