//! Who works at the demonstration shop and who brings their vehicles. All names, makes and plates are invented.

use time::macros::date;

use crate::db;
use crate::model::branch::{Branch, PaperSize};
use crate::model::ids::{BranchId, PersonId};
use crate::model::person::{Actor, Person, Role};
use crate::shop::people::NewGrant;
use crate::shop::{Refusal, Shop};
use crate::unit::Units;

/// The shop's time zone.
pub const ZONE: &str = "Europe/London";
/// The password of everybody in the demonstration; printed when it starts.
pub const PASSWORD: &str = "a lantern over the quay";

/// The people, as deeds want to be told.
#[derive(Debug, Clone)]
pub struct Cast {
    pub manager: Actor,
    pub desk: Actor,
    pub technician: Actor,
    pub signatory: Actor,
}

/// Sign-in name, name, initials, roles.
pub const PEOPLE: [(&str, &str, &str, Role); 5] = [
    ("greta", "Greta Hollis", "GH", Role::Manager),
    ("mina", "Mina Lark", "ML", Role::Desk),
    ("oake", "Martin Oake", "MO", Role::Technician),
    ("tolland", "Rosa Tolland", "RT", Role::Technician),
    ("audit", "Piers Vane", "PV", Role::Auditor),
];

fn person(at: usize) -> Person {
    let (sign_in_name, name, initials, _) = PEOPLE[at];
    Person {
        id: PersonId::new(),
        name: name.to_owned(),
        initials: initials.to_owned(),
        sign_in_name: sign_in_name.to_owned(),
        mail: format!("{sign_in_name}@example.org"),
        language: String::new(),
        sees_contacts: false,
        ended_on: None,
        version: 1,
    }
}

fn branch() -> Branch {
    Branch {
        id: BranchId::new(),
        name: "Saltmarsh Autogas".to_owned(),
        address: "Quay Road 4\nNorthmere".to_owned(),
        phone: "0555 0100".to_owned(),
        mail: "desk@saltmarsh.example".to_owned(),
        licence_number: "N-2207".to_owned(),
        licence_expires_on: Some(date!(2099 - 12 - 31)),
        country: "GB".to_owned(),
        time_zone: ZONE.to_owned(),
        currency: "GBP".to_owned(),
        language: "en".to_owned(),
        paper_size: PaperSize::A4,
        units: Units::KEPT,
        version: 1,
    }
}

/// Sets the shop up and brings its people in.
pub async fn cast(shop: &Shop) -> Result<Cast, Refusal> {
    let code = shop.make_set_up_code().await?;
    let (home, first) = (branch(), person(0));
    let (branch, manager) = (home.id, first.id);
    shop.set_up(code.as_text(), home, first, PASSWORD).await?;
    let greta = actor(shop, branch, manager).await?;
    let mut ids = vec![manager];
    for (at, (.., role)) in PEOPLE.iter().enumerate().skip(1) {
        let added = shop.add_person(&greta, None, person(at), vec![*role]).await?;
        ids.push(shop.choose_password(&added.code, PASSWORD, "127.0.0.1").await?);
    }
    let grant = NewGrant { authorisation_number: "S-114".to_owned(), expires_on: date!(2099 - 06 - 30) };
    shop.change_signing(&greta, None, ids[3], Some(grant)).await?;
    Ok(Cast {
        desk: actor(shop, branch, ids[1]).await?,
        technician: actor(shop, branch, ids[2]).await?,
        signatory: actor(shop, branch, ids[3]).await?,
        manager: greta,
    })
}

async fn actor(shop: &Shop, branch: BranchId, id: PersonId) -> Result<Actor, Refusal> {
    let mut con = shop.db.read().await?;
    db::people::actor(&mut con, id, branch).await?.ok_or(Refusal::Gone)
}

/// A conversion of the past.
#[derive(Debug, Clone, Copy)]
pub struct Passed {
    pub days_before: i64,
    pub plate: &'static str,
    pub make: &'static str,
    pub model: &'static str,
    pub keeper: &'static str,
    pub odometer_km: i64,
    /// Days from today until its container's ten years are over; negative: overdue.
    pub container_ends_in: i64,
    /// Its certificate was replaced by a corrected one.
    pub is_replaced: bool,
}

/// A job of today.
#[derive(Debug, Clone, Copy)]
pub struct Standing {
    pub days_before: i64,
    pub plate: &'static str,
    pub make: &'static str,
    pub model: &'static str,
    pub keeper: &'static str,
    pub odometer_km: i64,
    pub bay: usize,
    /// How many stages are told: 0 just arrived; 5 half proved; 6 proved.
    pub reaches: u8,
    pub reported: &'static str,
    pub held_for: &'static str,
    /// Its engine needs a larger nozzle than there is.
    pub is_thirsty: bool,
}

const MAKES: [(&str, &str); 7] = [
    ("Corvane", "Pilot 1.6"),
    ("Halmer", "Courier 2.0"),
    ("Tarn", "Delta 1.4"),
    ("Corvane", "Estate 1.8"),
    ("Brisk", "Kestrel 1.2"),
    ("Halmer", "Minster 1.6"),
    ("Tarn", "Sound 2.0"),
];

const KEEPERS: [&str; 28] = [
    "Ilse Marrow",
    "Dora Finn",
    "Bo Ferris",
    "Cy Holt",
    "Ana Reyes",
    "Hugh Sorrel",
    "Wren Abbott",
    "Luca Stell",
    "Mara Quill",
    "Ned Farrow",
    "Ada Penn",
    "Ivo Crane",
    "Tess Harrow",
    "Jory Blythe",
    "Nell Winter",
    "Saul Greave",
    "Orla Dunn",
    "Pia Lindqvist",
    "Karol Zięba",
    "Eleni Pappa",
    "Deniz Çelik",
    "Vera Holt",
    "Rolf Amsel",
    "Maud Teale",
    "Gus Fenner",
    "Lena Brook",
    "Otto Marsh",
    "Fay Rook",
];

/// The conversions of the last three years, oldest first.
pub fn passed() -> Vec<Passed> {
    let mut all: Vec<Passed> = (0..28_usize)
        .map(|n| {
            let (make, model) = MAKES[n % MAKES.len()];
            let step = i64::try_from(n).unwrap_or(0);
            Passed {
                days_before: 1_060 - 37 * step,
                plate: PLATES[n],
                make,
                model,
                keeper: KEEPERS[n],
                odometer_km: 61_400 + 5_310 * step,
                container_ends_in: match n {
                    4 => 27,
                    9 => -45,
                    _ => 1_500 + 70 * step,
                },
                is_replaced: n == 17,
            }
        })
        .collect();
    all.sort_by_key(|one| -one.days_before);
    all
}

const PLATES: [&str; 40] = [
    "NM 03 SEA",
    "NM 12 VAN",
    "NM 88 FEN",
    "NM 21 TRN",
    "NM 40 QUY",
    "NM 55 MAR",
    "NM 07 OAR",
    "NM 19 RSH",
    "NM 62 TID",
    "NM 71 HRN",
    "NM 28 COV",
    "NM 33 REE",
    "NM 90 SLT",
    "NM 14 DUN",
    "NM 67 KEL",
    "NM 26 PIR",
    "NM 81 GUL",
    "NM 09 BAY",
    "NM 38 ROP",
    "NM 52 NET",
    "NM 75 BUO",
    "NM 44 SHL",
    "NM 16 EBB",
    "NM 99 FLO",
    "NM 60 WRK",
    "NM 31 HUL",
    "NM 84 MST",
    "NM 22 KNO",
    "NM 47 KTR",
    "NM 58 CAB",
    "NM 11 LAN",
    "NM 36 GAF",
    "NM 70 BRG",
    "NM 29 SPA",
    "NM 93 TAR",
    "NM 05 LUG",
    "NM 64 JIB",
    "NM 18 YAW",
    "NM 77 HEL",
    "NM 42 OKE",
];

/// The jobs of today, by the day they began.
pub fn open_jobs() -> Vec<Standing> {
    let reaches = [6_u8, 6, 5, 5, 4, 4, 3, 3, 2, 2, 1, 0];
    let days = [9_i64, 8, 7, 6, 6, 5, 4, 4, 3, 2, 1, 0];
    let names = [
        "Ilse Varnham",
        "Joss Whitby",
        "Cora Lund",
        "Abel Stroud",
        "Mira Kessel",
        "Tom Barrow",
        "Ruth Ayling",
        "Eli Cope",
        "Nora Vance",
        "Sid Marlow",
        "Jana Novák",
        "Peg Alder",
    ];
    (0..12)
        .map(|n| {
            let (make, model) = MAKES[(n + 3) % MAKES.len()];
            Standing {
                days_before: days[n],
                plate: PLATES[28 + n],
                make,
                model,
                keeper: names[n],
                odometer_km: 88_200 + 7_430 * i64::try_from(n).unwrap_or(0),
                bay: n % 3,
                reaches: reaches[n],
                reported: if n == 9 { "hesitates when cold" } else { "" },
                held_for: if n == 5 { "waits for a vaporiser bracket" } else { "" },
                is_thirsty: n == 8,
            }
        })
        .collect()
}
