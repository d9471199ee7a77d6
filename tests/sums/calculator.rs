//! A pocket calculator: + - · / ^ √ lg and brackets, as the worked steps are written. Shared with the application's tests.

/// An expression being worked off.
pub struct Calculator {
    keys: Vec<char>,
    at: usize,
}

impl Calculator {
    /// Whether an expression is arithmetic: the state of a gas names its quantities, and is taken as printed.
    pub fn knows(expression: &str) -> bool {
        !expression.replace("lg(", "(").contains(char::is_alphabetic)
    }

    /// Value of an expression; stops the test at whatever a pocket calculator has no key for.
    pub fn value_of(expression: &str) -> f64 {
        let keys = expression.chars().filter(|c| !c.is_whitespace() && *c != '\u{202f}').collect();
        let mut calculator = Self { keys, at: 0 };
        let value = calculator.sum();
        assert_eq!(calculator.at, calculator.keys.len(), "all of {expression:?}");
        value
    }

    fn takes(&mut self, key: char) -> bool {
        let is_next = self.keys.get(self.at) == Some(&key);
        self.at += usize::from(is_next);
        is_next
    }

    fn takes_minus(&mut self) -> bool {
        self.takes('-') || self.takes('\u{2212}')
    }

    fn sum(&mut self) -> f64 {
        let mut value = self.product();
        loop {
            if self.takes('+') {
                value += self.product();
            } else if self.takes_minus() {
                value -= self.product();
            } else {
                return value;
            }
        }
    }

    fn product(&mut self) -> f64 {
        let mut value = self.power();
        loop {
            if self.takes('·') {
                value *= self.power();
            } else if self.takes('/') {
                value /= self.power();
            } else {
                return value;
            }
        }
    }

    fn power(&mut self) -> f64 {
        let base = self.single();
        if self.takes('^') { base.powf(self.power()) } else { base }
    }

    fn single(&mut self) -> f64 {
        if self.takes('√') {
            return self.single().sqrt();
        }
        if self.takes('l') {
            assert!(self.takes('g'), "lg is the only word");
            return self.single().log10();
        }
        if self.takes_minus() {
            return -self.single();
        }
        if self.takes('(') {
            let value = self.sum();
            assert!(self.takes(')'), "a bracket stays open");
            return value;
        }
        let start = self.at;
        while self.keys.get(self.at).is_some_and(|c| c.is_ascii_digit() || *c == '.') {
            self.at += 1;
        }
        let number: String = self.keys[start..self.at].iter().collect();
        number.parse().unwrap_or_else(|_| panic!("no number at {start} of {}", self.keys.iter().collect::<String>()))
    }
}

#[test]
fn the_calculator_knows_what_binds_tighter() {
    for (expression, value) in [
        ("1 + 2 · 3 ^ 2", 19.0),
        ("2 ^ 3 ^ 2", 512.0),
        ("√(9 · 4) / 2 - (-1)", 4.0),
        ("8 ^ (1/3)", 2.0),
        ("10 - 4 - 3", 3.0),
        ("16 / 4 / 2", 2.0),
        ("2\u{202f}000 · 0.5", 1000.0),
        ("2 · lg(10 · 100) ^ 2", 18.0),
    ] {
        assert!((Calculator::value_of(expression) - value).abs() < 1e-12, "{expression}");
    }
}
