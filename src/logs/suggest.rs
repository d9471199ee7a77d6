//! Which columns are probably what: by units and by plain words of several languages, never by a tool's names.
//!
//! A suggestion is shown beside the first rows and confirmed by a person. A column whose unit speaks against a quantity
//! is never suggested for it; of two that fit alike the first is.

use unicode_normalization::UnicodeNormalization;

use super::units::{in_own_unit, is_unit};
use super::{Column, Layout, Match, Matched, cell};
use crate::calc::road::Quantity;

/// Words that say a quantity. A name fits when every group of one line has a word that begins a word of the name, or
/// equals it where the word ends with a full stop.
type Line = &'static [&'static [&'static str]];

const PETROL: &[&str] =
    &["petrol", "benz", "gasolin", "essence", "gasolina", "nafta", "bensin", "бензин", "pb.", "oryg"];
const GAS: &[&str] = &[
    "gas.", "lpg.", "cng.", "gpl.", "glp.", "gnc.", "gnv.", "autogas", "gaz", "metan", "methan", "plyn.", "газ",
    "kaasu", "gass.",
];
const INJECTION: &[&str] = &[
    "inj",
    "einspritz",
    "wtrysk",
    "iniez",
    "inyec",
    "injec",
    "vstrik",
    "befecskend",
    "puskur",
    "puskurt",
    "inspuit",
    "впрыск",
    "tinj",
    "ti.",
];
const TRIM: &[&str] = &["trim", "korekt", "korrekt", "correct", "correz", "correc", "коррекц"];

fn lines(quantity: Quantity) -> &'static [Line] {
    match quantity {
        Quantity::TimeS => &[&[&[
            "time.",
            "timestamp",
            "zeit.",
            "zeitstempel",
            "czas.",
            "cas.",
            "temps.",
            "tempo.",
            "tiempo.",
            "tid.",
            "tijd.",
            "ido.",
            "zaman.",
            "timp.",
            "t.",
            "время",
            "час.",
            "clock.",
            "uhrzeit",
            "elapsed",
        ]]],
        Quantity::Rpm => &[
            &[&[
                "rpm.",
                "drehzahl",
                "motordrehzahl",
                "obroty",
                "otacky",
                "giri.",
                "toerental",
                "varvtal",
                "fordulatszam",
                "обороты",
                "turatie",
            ]],
            &[&["engine.", "motor", "moteur", "silnik"], &["speed.", "regim", "predkosc", "revol", "devir", "rota"]],
        ],
        Quantity::ManifoldKpa => &[
            &[&["map."]],
            &[&[
                "manifold",
                "saugrohr",
                "kolektor",
                "collecteur",
                "collettore",
                "admision",
                "admission",
                "sani.",
                "intake",
                "впуск",
                "inlet",
            ]],
        ],
        Quantity::PetrolMs => &[&[INJECTION, PETROL], &[INJECTION], &[&["pulse"], PETROL]],
        Quantity::GasMs => &[&[INJECTION, GAS], &[&["pulse"], GAS]],
        Quantity::Fuel => &[&[&[
            "fuel.",
            "kraftstoff",
            "treibstoff",
            "paliwo",
            "carburant",
            "combustible",
            "combustivel",
            "palivo",
            "uzemanyag",
            "yakit",
            "brandstof",
            "топливо",
        ]]],
        Quantity::CoolantC => &[
            &[&["coolant", "ect.", "kuhlmittel", "kuhlwasser", "wassertemp", "hutoviz", "охлажд"]],
            &[
                &["temp", "teplot"],
                &["plyn", "ciecz", "liquide", "acqua", "refriger", "chlad", "water", "agua", "sogut", "koel"],
            ],
        ],
        Quantity::ClosedLoop => &[
            &[&["closed.", "geschlossen", "zamknieta", "fermee", "chiuso", "cerrado"]],
            &[&["lambda"], &["control", "regelung", "loop", "regul"]],
            &[&["fuel."], &["system."], &["status."]],
        ],
        Quantity::ShortTrim => &[
            &[&["stft"]],
            &[&["short", "kurz", "krotko", "court", "breve", "corto", "kratko", "rovid"], TRIM],
            &[&["short."], &["term."]],
        ],
        Quantity::LongTrim => &[
            &[&["ltft"]],
            &[&["long", "lang", "dlug", "lungo", "largo", "dlouh", "hosszu"], TRIM],
            &[&["long."], &["term."]],
        ],
        Quantity::GasKpa => &[
            &[GAS, &["press", "druck", "cisnien", "presi", "tlak", "nyomas", "basinc", "давлен", "p."]],
            &[&["gasdruck"]],
        ],
    }
}

/// Words that speak against a quantity although others speak for it.
fn against(quantity: Quantity) -> &'static [&'static str] {
    match quantity {
        Quantity::PetrolMs => GAS,
        Quantity::GasMs => &["petrol", "benz", "gasolin", "essence", "бензин"],
        Quantity::TimeS => &["inj", "einspritz", "wtrysk", "iniez", "inyec"],
        Quantity::ManifoldKpa => &["temp", "gas.", "lpg.", "cng."],
        Quantity::Fuel => {
            &["trim", "press", "level", "rate.", "consum", "temp", "rail", "system", "druck", "verbrauch"]
        }
        Quantity::Rpm => &["vehicle", "fahrzeug", "pojazd", "gas."],
        Quantity::GasKpa => &["temp", "teplot"],
        _ => &[],
    }
}

/// Which columns are probably what.
pub fn suggest(layout: &Layout) -> Match {
    let mut found = Match::default();
    let mut taken = vec![false; layout.columns.len()];
    for quantity in Quantity::ALL {
        let best = (0..layout.columns.len())
            .filter(|at| !taken[*at])
            .filter_map(|at| Some((fits(quantity, &layout.columns[at])?, at)))
            // The first of those that fit alike.
            .max_by_key(|(worth, at)| (*worth, usize::MAX - *at));
        if let Some((_, at)) = best {
            taken[at] = true;
            let column = &layout.columns[at];
            let (scale, offset) =
                scale_of(quantity, column).unwrap_or_else(|| (guessed_scale(quantity, layout, at), 0.0));
            found.columns.insert(quantity, Matched { column: column.name.clone(), scale, offset });
        }
    }
    found
}

/// How well a column fits: the earlier the line that fits, and a unit that speaks for it.
fn fits(quantity: Quantity, column: &Column) -> Option<usize> {
    let words = words(&column.name);
    let (scale, unit) = (scale_of(quantity, column), unit_of(column));
    let measures = !matches!(quantity, Quantity::Fuel | Quantity::ClosedLoop);
    // A unit of something else.
    if !unit.is_empty()
        && scale.is_none()
        && (measures || is_unit(&unit) && !matches!(unit.as_str(), "-" | "0/1" | "bool"))
    {
        return None;
    }
    let has = |word: &str| {
        words.iter().any(|one| word.strip_suffix('.').map_or_else(|| one.starts_with(word), |whole| one == whole))
    };
    if column.name.eq_ignore_ascii_case(quantity.code()) {
        return Some(100);
    }
    let lines = lines(quantity);
    let line = lines.iter().position(|line| line.iter().all(|group| group.iter().any(|word| has(word))));
    let is_spoken_against = against(quantity).iter().any(|word| has(word));
    match line {
        Some(at) if !is_spoken_against => Some(20 + 2 * (lines.len() - at) + usize::from(scale.is_some())),
        // Revolutions a minute are the engine's unless a word says otherwise.
        None if quantity == Quantity::Rpm && scale.is_some() && !is_spoken_against => Some(1),
        _ => None,
    }
}

/// Words of a name, small, without marks and letters' accents.
fn words(name: &str) -> Vec<String> {
    // Letters that are no letter with a mark.
    let plain = name.to_lowercase().replace('ł', "l").replace('ß', "ss").replace('ı', "i").replace('ø', "o");
    let bare: String = plain.nfd().filter(|c| !('\u{300}'..='\u{36f}').contains(c)).collect();
    bare.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()).map(str::to_owned).collect()
}

/// The unit of a column, or the one that its name ends with ("map_kpa").
fn unit_of(column: &Column) -> String {
    if !column.unit.is_empty() {
        return column.unit.trim().to_lowercase();
    }
    let last = column.name.rsplit(['_', ' ', ',']).next().unwrap_or_default();
    if last.len() < column.name.len() && is_unit(last) { last.to_lowercase() } else { String::new() }
}

fn scale_of(quantity: Quantity, column: &Column) -> Option<(f64, f64)> {
    in_own_unit(quantity, &unit_of(column))
}

/// The factor of a column that says no unit. A time that goes on by more than ten a row is one in milliseconds: a log of a
/// row each ten seconds would be of no use here.
fn guessed_scale(quantity: Quantity, layout: &Layout, at: usize) -> f64 {
    if quantity != Quantity::TimeS {
        return 1.0;
    }
    let times: Vec<f64> = layout.preview.iter().filter_map(|row| cell::number(row.get(at)?, layout.decimal)).collect();
    let mut steps: Vec<f64> = times.windows(2).map(|pair| pair[1] - pair[0]).collect();
    steps.sort_by(f64::total_cmp);
    if steps.get(steps.len() / 2).is_some_and(|step| *step > 10.0) { 0.001 } else { 1.0 }
}
