//! The value of a formula's text.

use crate::numeric::{exp, ln, log10, pow};
use std::f64::consts::PI;

/// The value of `text`, whose symbols take `numbers` in the order in which it first names them,
/// with those symbols; NaN for a wrong count of numbers.
pub(super) fn evaluate<'a>(text: &'a str, numbers: &[f64]) -> (f64, Vec<&'a str>) {
    let mut reader = Reader { rest: text, names: Vec::new(), numbers };
    let value = reader.sum();
    let value = if reader.names.len() == numbers.len() { value } else { f64::NAN };
    (value, reader.names)
}

struct Reader<'a, 'n> {
    rest: &'a str,
    names: Vec<&'a str>,
    numbers: &'n [f64],
}

impl<'a> Reader<'a, '_> {
    fn sum(&mut self) -> f64 {
        let mut value = self.product();
        loop {
            if self.takes('+') {
                value += self.product();
            } else if self.takes('-') {
                value -= self.product();
            } else {
                return value;
            }
        }
    }

    fn product(&mut self) -> f64 {
        let mut value = self.power();
        loop {
            if self.takes('*') {
                value *= self.power();
            } else if self.takes('/') {
                value /= self.power();
            } else {
                return value;
            }
        }
    }

    fn power(&mut self) -> f64 {
        if self.takes('-') {
            return -self.power();
        }
        let base = self.atom();
        match self.takes('^') {
            true => pow(base, self.atom()),
            false => base,
        }
    }

    fn atom(&mut self) -> f64 {
        if self.takes('(') {
            let value = self.sum();
            self.takes(')');
            return value;
        }
        let word = self.word();
        if word.starts_with(|c: char| c.is_ascii_digit()) {
            return decimal(word);
        }
        match word {
            "pi" => PI,
            "exp" => exp(self.atom()),
            "ln" => ln(self.atom()),
            "log10" => log10(self.atom()),
            name => self.number(name),
        }
    }

    fn number(&mut self, name: &'a str) -> f64 {
        let known = self.names.iter().position(|known| *known == name);
        let index = known.unwrap_or_else(|| {
            self.names.push(name);
            self.names.len() - 1
        });
        self.numbers.get(index).copied().unwrap_or(f64::NAN)
    }

    fn takes(&mut self, sign: char) -> bool {
        self.rest = self.rest.trim_start();
        let after = self.rest.strip_prefix(sign);
        self.rest = after.unwrap_or(self.rest);
        after.is_some()
    }

    /// A number or a name.
    fn word(&mut self) -> &'a str {
        let belongs = |c: char| c.is_ascii_alphanumeric() || c == '_' || c == '.';
        let end = self.rest.find(|c| !belongs(c)).unwrap_or(self.rest.len());
        let (word, rest) = self.rest.split_at(end);
        self.rest = rest;
        word
    }
}

/// A number of a few digits, with a point or without: one division of whole numbers, and so exact.
fn decimal(text: &str) -> f64 {
    let (mut value, mut scale) = (0.0, 1.0);
    let mut behind_point = false;
    for digit in text.bytes() {
        if digit == b'.' {
            behind_point = true;
            continue;
        }
        value = value * 10.0 + f64::from(digit - b'0');
        if behind_point {
            scale *= 10.0;
        }
    }
    value / scale
}
