//! Bands against two thousand houses, each with every input drawn anew: four in five lie within.

use super::half_w;
use super::nudge::{as_gaps, nudged};
use super::slopes::{inputs, measured_anew};
use crate::shipped::SHIPPED;
use crate::support::{job_of, open};
use finrun_engine::building::{Band, House, Subject, losses};
use finrun_engine::numeric::ln;
use finrun_engine::quantity::TemperatureDifference;

/// Nine in ten lie below so many standard deviations (tables of the normal distribution).
const TENTH: f64 = 1.281_551_565_5;

const HOUSES: usize = 2000;

/// A generator of G. Marsaglia (xorshift64) with his polar method for normal numbers.
struct Draw(u64);

impl Draw {
    /// Between 0 and 1, without either.
    fn even(&mut self) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        ((self.0 >> 11) as f64 + 0.5) / (1_u64 << 53) as f64
    }

    fn normal(&mut self) -> f64 {
        loop {
            let (u, v) = (2.0 * self.even() - 1.0, 2.0 * self.even() - 1.0);
            let s = u * u + v * v;
            if s < 1.0 {
                return u * (-2.0 * ln(s) / s).sqrt();
            }
        }
    }
}

/// One house with every input changed at once: nothing is held.
fn drawn(house: &House, inputs: &[(Subject, f64)], draw: &mut Draw) -> House {
    let mut changed = house.clone();
    for &(subject, range) in inputs {
        let off = draw.normal() * range / TENTH;
        // No input turns into its opposite.
        let off = if subject == Subject::Outdoors { off } else { off.max(-0.95) };
        changed = match subject {
            Subject::Size(_) | Subject::GuessedOpenings => measured_anew(&changed, subject, off),
            Subject::Outdoors => {
                let mut warmer = changed;
                let difference = TemperatureDifference::from_si(off);
                warmer.site.outdoors = warmer.site.outdoors + difference;
                warmer
            }
            _ => nudged(&changed, subject, off),
        };
    }
    changed
}

fn within(loads: &[f64], band: &Band) -> f64 {
    let (low, high) = (band.low.si(), band.high.si());
    let count = loads.iter().filter(|load| (low..=high).contains(*load)).count();
    100.0 * count as f64 / loads.len() as f64
}

#[test]
fn four_in_five_changed_houses_lie_within_the_band() {
    for (text, seed) in SHIPPED.into_iter().zip([11, 12, 13]) {
        let house = job_of(&open(text)).house;
        let (inputs, bands) = (inputs(&house), losses(&house).certainty);
        let house = as_gaps(&house);
        let mut draw = Draw(0x9E37_79B9_7F4A_7C15 ^ seed);
        let mut whole = Vec::new();
        let mut rooms = vec![Vec::new(); house.rooms.len()];
        for _ in 0..HOUSES {
            let found = losses(&drawn(&house, &inputs, &mut draw)).rooms;
            whole.push(found.iter().map(|room| room.total.si()).sum());
            for (loads, room) in rooms.iter_mut().zip(found) {
                loads.push(room.total.si());
            }
        }
        let name = &open(text).name;
        let percent = within(&whole, &bands.house);

        assert!((78.0..=82.0).contains(&percent), "{name}: {percent} % of houses within");
        for (loads, band) in rooms.iter().zip(&bands.rooms) {
            let percent = within(loads, band);

            assert!((78.0..=82.0).contains(&percent), "{name}: {percent} % of a room within");
            assert!(half_w(band) > 0.0);
        }
    }
}
