//! Keeps the worst deviation of each quantity against its tolerance.

use finrun_engine::numeric::log10;

/// What a deviation is measured in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Tolerance {
    /// A share of the expected value.
    Share(f64),
    /// Kelvin.
    Kelvin(f64),
}

impl Tolerance {
    fn limit(self) -> f64 {
        match self {
            Tolerance::Share(limit) | Tolerance::Kelvin(limit) => limit,
        }
    }

    fn deviation(self, found: f64, expected: f64) -> f64 {
        let difference = (found - expected).abs();
        match self {
            Tolerance::Share(_) if difference == 0.0 => 0.0,
            Tolerance::Share(_) => difference / expected.abs(),
            Tolerance::Kelvin(_) => difference,
        }
    }

    fn text(self, value: f64) -> String {
        match self {
            Tolerance::Share(_) => format!("{} %", short(value * 100.0)),
            Tolerance::Kelvin(_) => format!("{} K", short(value)),
        }
    }
}

/// Two figures, and an exponent where zeros would fill the line.
fn short(value: f64) -> String {
    if value == 0.0 {
        "0".into()
    } else if (0.001..1000.0).contains(&value) {
        let places = (1.0 - log10(value).floor()).clamp(0.0, 4.0) as usize;
        let text = format!("{value:.places$}");
        if text.contains('.') {
            text.trim_end_matches('0').trim_end_matches('.').to_string()
        } else {
            text
        }
    } else {
        format!("{value:.1e}")
    }
}

/// One quantity's worst.
#[derive(Debug, Clone)]
struct Measure {
    what: &'static str,
    tolerance: Tolerance,
    worst: f64,
    case: String,
}

impl Measure {
    fn used(&self) -> f64 {
        self.worst / self.tolerance.limit()
    }
}

/// The comparison of one file.
#[derive(Debug, Clone, Default)]
pub(crate) struct Tally {
    cases: usize,
    measures: Vec<Measure>,
}

impl Tally {
    /// Counts one case more.
    pub(crate) fn case(&mut self) {
        self.cases += 1;
    }

    /// Compares a number with the one expected.
    pub(crate) fn compare(
        &mut self,
        what: &'static str,
        tolerance: Tolerance,
        case: &str,
        found: f64,
        expected: f64,
    ) {
        self.keep(what, tolerance, case, tolerance.deviation(found, expected));
    }

    /// Compares a number with the band expected; inside it deviates by nothing.
    pub(crate) fn compare_band(
        &mut self,
        what: &'static str,
        tolerance: Tolerance,
        case: &str,
        found: f64,
        (low, high): (f64, f64),
    ) {
        // `clamp` keeps NaN, so it comes out as a deviation of NaN.
        let nearest = if low <= high { found.clamp(low, high) } else { f64::NAN };
        self.keep(what, tolerance, case, tolerance.deviation(found, nearest));
    }

    fn keep(&mut self, what: &'static str, tolerance: Tolerance, case: &str, deviation: f64) {
        // Not a number is further off than any number.
        let deviation = if deviation.is_nan() { f64::INFINITY } else { deviation };
        match self.measures.iter_mut().find(|measure| measure.what == what) {
            Some(measure) if deviation > measure.worst => {
                measure.worst = deviation;
                measure.case = case.to_string();
            }
            Some(_) => {}
            None => {
                let case = case.to_string();
                self.measures.push(Measure { what, tolerance, worst: deviation, case });
            }
        }
    }

    pub(crate) fn cases(&self) -> usize {
        self.cases
    }

    pub(crate) fn within(&self) -> bool {
        self.measures.iter().all(|measure| measure.used() <= 1.0)
    }

    /// The measure that takes most of its tolerance.
    pub(crate) fn worst(&self) -> String {
        let worst = self.measures.iter().max_by(|a, b| a.used().total_cmp(&b.used()));
        worst.map_or_else(String::new, |measure| {
            let deviation = measure.tolerance.text(measure.worst);
            format!("worst {} {deviation} at {}", measure.what, measure.case)
        })
    }

    /// Every measure: its tolerance and the part of it that is taken.
    pub(crate) fn tolerances(&self) -> String {
        let each = self.measures.iter().map(|measure| {
            let limit = measure.tolerance.text(measure.tolerance.limit());
            format!("{} {} of {limit}", measure.what, short(measure.used()))
        });
        format!("used {}", each.collect::<Vec<_>>().join(", "))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const PERCENT: Tolerance = Tolerance::Share(0.01);

    #[test]
    fn keeps_the_worst_and_its_case() {
        let mut tally = Tally::default();
        tally.compare("heat", PERCENT, "one", 100.5, 100.0);
        tally.compare("heat", PERCENT, "two", 99.2, 100.0);
        assert!(tally.within());
        assert_eq!(tally.worst(), "worst heat 0.8 % at two");
        assert_eq!(tally.tolerances(), "used heat 0.8 of 1 %");
        tally.compare("heat", PERCENT, "three", 102.0, 100.0);
        assert!(!tally.within());
    }

    #[test]
    fn not_a_number_is_out() {
        for (found, expected) in [(f64::NAN, 1.0), (1.0, f64::NAN)] {
            let mut tally = Tally::default();
            tally.compare("heat", PERCENT, "one", found, expected);
            assert!(!tally.within());
        }
        let mut tally = Tally::default();
        tally.compare_band("factor", PERCENT, "one", f64::NAN, (1.0, 2.0));
        assert!(!tally.within());
    }

    #[test]
    fn inside_a_band_nothing_deviates() {
        let mut tally = Tally::default();
        tally.compare_band("factor", PERCENT, "in", 1.5, (1.0, 2.0));
        tally.compare_band("factor", PERCENT, "just out", 2.01, (1.0, 2.0));
        assert!(tally.within());
        tally.compare_band("factor", PERCENT, "out", 0.98, (1.0, 2.0));
        assert!(!tally.within());
    }

    #[test]
    fn something_where_nothing_is_expected_is_out() {
        let mut tally = Tally::default();
        tally.compare("heat", PERCENT, "nothing", 0.0, 0.0);
        assert!(tally.within());
        tally.compare("heat", PERCENT, "something", 1e-9, 0.0);
        assert!(!tally.within());
    }
}
