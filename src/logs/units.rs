//! Units that columns are written in, and the way from each to the quantity's own.

use crate::calc::road::Quantity;

/// A unit's spellings (compared without blanks and small; the first is the one that is shown), factor and what is added.
type Unit = (&'static [&'static str], f64, f64);

// Pressures by definition: 1 bar is 100 kPa; pound-force per square inch 6.894757 kPa, inch and millimetre of mercury
// 3.386389 and 0.1333224 kPa (ISO 80000-4 and NIST SP 811, appendix B).
const PRESSURE: &[Unit] = &[
    (&["kPa", "kpaa", "kpaabs", "кпа"], 1.0, 0.0),
    (&["bar", "bara", "barabs", "бар"], 100.0, 0.0),
    (&["mbar", "hpa", "mbarabs", "мбар"], 0.1, 0.0),
    (&["Pa", "па"], 0.001, 0.0),
    (&["MPa", "мпа"], 1000.0, 0.0),
    (&["psi", "psia"], 6.894_757, 0.0),
    (&["inHg"], 3.386_389, 0.0),
    (&["mmHg", "torr"], 0.133_322_4, 0.0),
];
const TIME: &[Unit] = &[
    (&["s", "sec", "secs", "seconds", "second", "sek", "с", "сек"], 1.0, 0.0),
    (&["ms", "msec", "milliseconds", "мс"], 0.001, 0.0),
    (&["µs", "us", "μs", "мкс"], 1e-6, 0.0),
    (&["min"], 60.0, 0.0),
    (&["h"], 3600.0, 0.0),
    // Clock times are seconds whatever stands over them.
    (&["hh:mm:ss", "hh:mm:ss.ms", "hh:mm:ss.fff", "hh:mm:ss.sss", "hh:mm:ss,ms"], 1.0, 0.0),
];
const PULSE: &[Unit] =
    &[(&["ms", "msec", "мс"], 1.0, 0.0), (&["µs", "us", "μs", "мкс"], 0.001, 0.0), (&["s", "sec"], 1000.0, 0.0)];
const SPEED: &[Unit] = &[
    (
        &[
            "rpm",
            "1/min",
            "/min",
            "min-1",
            "min^-1",
            "min⁻¹",
            "r/min",
            "rev/min",
            "u/min",
            "obr/min",
            "ot/min",
            "tr/min",
            "giri/min",
            "g/min",
            "rot/min",
            "dev/dak",
            "d/dk",
            "ford/min",
            "об/мин",
            "об/хв",
        ],
        1.0,
        0.0,
    ),
    (&["1/s", "s-1", "hz", "rps"], 60.0, 0.0),
];
const TEMPERATURE: &[Unit] = &[
    (&["°C", "c", "℃", "degc", "ºc", "celsius", "°с", "с"], 1.0, 0.0),
    (&["°F", "f", "℉", "degf", "ºf"], 5.0 / 9.0, -160.0 / 9.0),
    (&["K"], 1.0, -273.15),
];
const SHARE: &[Unit] = &[(&["%", "percent", "pct", "proc"], 1.0, 0.0)];

fn units_of(quantity: Quantity) -> &'static [Unit] {
    match quantity {
        Quantity::TimeS => TIME,
        Quantity::Rpm => SPEED,
        Quantity::ManifoldKpa | Quantity::GasKpa => PRESSURE,
        Quantity::PetrolMs | Quantity::GasMs => PULSE,
        Quantity::CoolantC => TEMPERATURE,
        Quantity::ShortTrim | Quantity::LongTrim => SHARE,
        Quantity::Fuel | Quantity::ClosedLoop => &[],
    }
}

/// Whether a folded unit is among the spellings.
fn has(spellings: &[&str], folded: &str) -> bool {
    spellings.iter().any(|spelling| *spelling == folded || spelling.to_lowercase() == folded)
}

fn folded(unit: &str) -> String {
    let bare: String = unit.chars().filter(|c| !c.is_whitespace() && !"[]()".contains(*c)).collect();
    bare.to_lowercase()
}

/// Factor and addition from `unit` to the quantity's own unit; `None` where the quantity is not measured in it.
///
/// Small and capital letters are one (`mPa` is taken as megapascal: nobody logs millipascals).
pub fn in_own_unit(quantity: Quantity, unit: &str) -> Option<(f64, f64)> {
    let unit = folded(unit);
    let known = units_of(quantity).iter().find(|(spellings, ..)| has(spellings, &unit))?;
    Some((known.1, known.2))
}

/// The units that a quantity is read in, a spelling of each.
pub fn units_taken(quantity: Quantity) -> Vec<&'static str> {
    units_of(quantity).iter().map(|(spellings, ..)| spellings[0]).collect()
}

/// Whether a column may be written in it, whatever the column holds.
pub fn is_unit(text: &str) -> bool {
    const OTHERS: [&str; 22] = [
        "v", "mv", "a", "ma", "km/h", "mph", "g/s", "kg/h", "l/h", "°", "deg", "°ca", "°kw", "lambda", "λ", "-",
        "bool", "0/1", "nm", "km", "l", "g",
    ];
    let text = folded(text);
    OTHERS.contains(&text.as_str())
        || [PRESSURE, TIME, PULSE, SPEED, TEMPERATURE, SHARE]
            .iter()
            .any(|units| units.iter().any(|(spellings, ..)| has(spellings, &text)))
}
