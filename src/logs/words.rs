//! What the words of a fuel column and of a closed-loop column mean.

use std::collections::BTreeSet;

use super::cell;

/// Plain words for gas in the languages of the trade.
pub const GAS_WORDS: [&str; 21] = [
    "gas",
    "lpg",
    "cng",
    "lng",
    "gpl",
    "gnc",
    "gnv",
    "glp",
    "autogas",
    "gaz",
    "metan",
    "metano",
    "methane",
    "méthane",
    "propane",
    "propan",
    "plyn",
    "g",
    "газ",
    "метан",
    "пропан",
];
/// Plain words for a sensor that steers.
pub const CLOSED_WORDS: [&str; 15] = [
    "closed",
    "closed loop",
    "closed-loop",
    "closed_loop",
    "cl",
    "true",
    "yes",
    "on",
    "active",
    "ein",
    "geschlossen",
    "zamknięta",
    "fermée",
    "chiuso",
    "cerrado",
];

/// Words of a column, compared as numbers where both are numbers, and but for small and capital letters.
#[derive(Debug, Clone, Default)]
pub(super) struct Words {
    texts: Vec<String>,
    numbers: Vec<f64>,
    decimal: char,
    /// The last word and what was said of it: a column says the same thousands of times.
    last: (String, bool),
}

impl Words {
    pub(super) fn new<S: AsRef<str>>(words: impl IntoIterator<Item = S>, decimal: char) -> Self {
        let texts: Vec<String> = words.into_iter().map(|word| word.as_ref().trim().to_lowercase()).collect();
        let numbers = texts.iter().filter_map(|word| cell::number(word, '.')).collect();
        let last = (String::new(), texts.iter().any(String::is_empty));
        Self { texts, numbers, decimal, last }
    }

    /// Whether the cell says one of the words.
    pub(super) fn have(&mut self, said: &str) -> bool {
        if self.last.0 != said {
            let is_number = cell::number(said, self.decimal).is_some_and(|number| self.numbers.contains(&number));
            let is_word = self.texts.contains(&said.to_lowercase());
            self.last = (said.to_owned(), is_number || is_word);
        }
        self.last.1
    }
}

/// What means gas where nobody said: the plain words, and 1 where the column holds no other numbers than 0 and 1.
pub(super) fn gas(said: &BTreeSet<String>, decimal: char) -> Vec<String> {
    let mut words: Vec<String> = GAS_WORDS.iter().map(|word| (*word).to_owned()).collect();
    if numbers(said, decimal).iter().all(|number| [0.0, 1.0].contains(number)) {
        words.push("1".to_owned());
    }
    words
}

/// What means closed loop where nobody said: the plain words and a number.
///
/// SAE J1979 gives the fuel system's status in a byte of which one bit is set: 1 open (cold), 2 closed, 4 open (load or
/// overrun), 8 open (a fault), 16 closed (a fault of one sensor). Where any of 2, 4, 8, 16 occurs the column is read so;
/// else 1 is yes: a log with nothing but 1 is a warm drive in closed loop far more often than one that never warmed up,
/// whose rows are set aside as cold anyway.
pub(super) fn closed(said: &BTreeSet<String>, decimal: char) -> Vec<String> {
    let mut words: Vec<String> = CLOSED_WORDS.iter().map(|word| (*word).to_owned()).collect();
    let numbers = numbers(said, decimal);
    if [2.0, 4.0, 8.0, 16.0].iter().any(|status| numbers.contains(status)) {
        words.push("2".to_owned());
    } else {
        words.push("1".to_owned());
    }
    words
}

fn numbers(said: &BTreeSet<String>, decimal: char) -> Vec<f64> {
    said.iter().filter_map(|word| cell::number(word, decimal)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(words: &[&str]) -> BTreeSet<String> {
        words.iter().map(|word| (*word).to_owned()).collect()
    }

    #[test]
    fn a_number_in_a_fuel_column_is_gas_only_where_there_are_two() {
        assert!(Words::new(gas(&said(&["0", "1"]), '.'), '.').have("1.0"));
        assert!(!Words::new(gas(&said(&["1", "9", "12"]), '.'), '.').have("1"));
        assert!(Words::new(gas(&said(&["P", "G"]), '.'), '.').have("G"));
        assert!(Words::new(gas(&said(&[]), '.'), '.').have("LPG"));
        assert!(!Words::new(gas(&said(&[]), '.'), '.').have("gasoline"));
    }

    #[test]
    fn a_status_of_the_fuel_system_is_read_by_its_standard() {
        let is_closed = |column: &[&str], word: &str| Words::new(closed(&said(column), '.'), '.').have(word);
        assert!(is_closed(&["0", "1"], "1"));
        assert!(is_closed(&["1", "2", "4"], "2"));
        assert!(!is_closed(&["1", "2", "4"], "1"));
        assert!(is_closed(&["1"], "1"));
        assert!(is_closed(&["Open", "Closed"], "CLOSED"));
        assert!(!is_closed(&["Open", "Closed"], "Open"));
    }

    #[test]
    fn nothing_said_is_not_the_last_word() {
        let mut words = Words::new(["gas"], '.');
        assert!(words.have("Gas") && words.have("Gas"));
        assert!(!words.have(""));
        assert!(!words.have("petrol") && words.have("GAS"));
    }
}
