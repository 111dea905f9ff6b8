//! Where to read next: where the likeliest explanations expect the most different things.

use super::Next;
use super::fit::{Fitted, Weigher, shown};
use crate::numeric::exp_m1;

/// Explanations less likely are not told apart; nor more than so many, the likeliest.
const LEAST_SHARE: f64 = 0.02;
const MOST: usize = 8;

/// Places that are named.
const NAMED: usize = 3;

/// A place where no two of them lie this many standard errors apart tells nothing: judgement.
const TELLS: f64 = 1.0;

/// The best first; none where one explanation stands alone.
pub(super) fn next(weigher: &Weigher<'_, '_>, fitted: &[Fitted], shares: &[f64]) -> Vec<Next> {
    let leading = fitted.iter().zip(shares).take(MOST).filter(|(_, share)| **share >= LEAST_SHARE);
    let leading: Vec<(&Fitted, f64)> = leading.map(|(of, share)| (of, *share)).collect();
    if leading.len() < 2 {
        return Vec::new();
    }
    let mut all = Vec::new();
    for (place, &at) in weigher.model.places.iter().enumerate() {
        // The supply is the same whatever is the matter.
        if weigher.was_read(place) || at.is_supply() || !weigher.tells(at) {
            continue;
        }
        let expected: Option<Vec<(f64, f64)>> =
            leading.iter().map(|(of, _)| weigher.expects(of, place)).collect();
        let Some(expected) = expected else { continue };
        let apart = |a: (f64, f64), b: (f64, f64)| (a.0 - b.0).abs() / a.1.max(b.1);
        let (mut worth, mut most) = (0.0, 0.0_f64);
        for (nth, (&a, (_, share))) in expected.iter().zip(&leading).enumerate() {
            for (&b, (_, other)) in expected.iter().zip(&leading).take(nth) {
                let between = apart(a, b);
                // Beyond some errors a pair is told apart, and no farther.
                worth -= share * other * exp_m1(-0.25 * between * between);
                most = most.max(between);
            }
        }
        if most >= TELLS {
            let (if_first, if_second) = (shown(at, expected[0].0), shown(at, expected[1].0));
            let apart = apart(expected[0], expected[1]);
            all.push((worth, Next { at, if_first, if_second, apart }));
        }
    }
    all.sort_by(|a, b| b.0.total_cmp(&a.0));
    all.into_iter().take(NAMED).map(|(_, next)| next).collect()
}
