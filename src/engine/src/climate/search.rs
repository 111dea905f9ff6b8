//! Stations near a ZIP code or a place.

use super::place::{rank, split};
use super::table::{Area, Listed, Position, Table};
use super::{Station, fahrenheit_degrees};
use crate::numeric::{asin, cos, sin};
use crate::quantity::{Length, TemperatureDifference};

/// What a search came to.
#[derive(Debug, Clone, PartialEq)]
pub enum Found {
    /// Nothing was typed.
    Blank,
    /// Stations near a ZIP code, the best first.
    Zip {
        /// As many digits as counted: three or five.
        zip: String,
        /// From the middle that distances are measured from to the farthest part of the area.
        spread: Length,
        hits: Vec<Hit>,
    },
    /// Stations of a name, the best first.
    Place {
        named: Vec<Hit>,
        /// Further stations of that name, not listed.
        more: usize,
        /// If those named are few and of one state: the neighbours of the first, by distance.
        near: Vec<Hit>,
    },
    /// No ZIP code begins with these three digits.
    NoSuchZip {
        zip: String,
    },
    /// Only digits, but neither three nor five nor nine of them.
    NotAZip {
        digits: usize,
    },
    NoSuchPlace,
}

/// A station with what tells how well it stands for the place searched.
#[derive(Debug, Clone, PartialEq)]
pub struct Hit {
    pub station: Station,
    /// From the middle of the ZIP area, or from the first station named; zero for those named.
    pub distance: Length,
    /// One standard deviation of its 99 % temperature against the place's own.
    pub uncertainty: TemperatureDifference,
}

/// Stations listed for a ZIP code, and for a place together with its neighbours.
const LISTED: usize = 5;

/// Most stations listed of one name.
const MOST_NAMED: usize = 24;

/// Finds stations for what was typed: a ZIP code, or a place with or without its state. With the
/// house's altitude, stations of its height are preferred.
pub fn search(table: &Table, query: &str, altitude: Option<Length>) -> Found {
    let words = split(query);
    if words.is_empty() {
        return Found::Blank;
    }
    if words.iter().all(|word| word.bytes().all(|byte| byte.is_ascii_digit())) {
        return search_zip(table, &words.concat(), altitude);
    }
    search_place(table, &words, altitude)
}

fn search_zip(table: &Table, digits: &str, altitude: Option<Length>) -> Found {
    if !matches!(digits.len(), 3 | 5 | 9) {
        return Found::NotAZip { digits: digits.len() };
    }
    let zip = &digits[..digits.len().min(5)];
    let find = |areas: &[Area], code: &str| {
        let code = code.parse::<i32>().ok();
        areas.iter().copied().find(|area| Some(area.code) == code)
    };
    let exact = if zip.len() == 5 { find(&table.zips, zip) } else { None };
    let Some(area) = exact.or_else(|| find(&table.prefixes, &zip[..3])) else {
        return Found::NoSuchZip { zip: zip.to_string() };
    };
    let near = nearest(table, area.middle, altitude, &[], LISTED);
    let height = altitude.unwrap_or_else(|| mean_elevation(&near));
    // Half of the houses stand within half of the spread (measured on the five-digit areas of each
    // prefix: 0.49).
    let off = area.spread * 0.5;
    let hits = near.iter().map(|near| near.hit(off, height)).collect();
    Found::Zip { zip: zip.to_string(), spread: area.spread, hits }
}

fn search_place(table: &Table, words: &[&str], altitude: Option<Length>) -> Found {
    let mut ranked = rank(table, words);
    // The better fit first; the table's order among equals.
    let mut named = Vec::new();
    let more = ranked.len().saturating_sub(MOST_NAMED);
    while named.len() < MOST_NAMED {
        let best = ranked.iter().enumerate().min_by_key(|&(at, &(rank, _))| (rank, at));
        let Some((at, _)) = best else { break };
        let (_, listed) = ranked.remove(at);
        named.push(Near { listed, distance: Length::ZERO });
    }
    let Some(first) = named.first().copied() else { return Found::NoSuchPlace };
    let one_state =
        named.iter().all(|near| near.listed.station.state == first.listed.station.state);
    let near = if one_state && named.len() < LISTED {
        nearest(table, first.listed.position, altitude, &named, LISTED - named.len())
    } else {
        Vec::new()
    };
    let hit = |near: &Near<'_>| {
        near.hit(Length::ZERO, altitude.unwrap_or(near.listed.station.elevation()))
    };
    let near_hit = |near: &Near<'_>| {
        near.hit(Length::ZERO, altitude.unwrap_or(first.listed.station.elevation()))
    };
    Found::Place {
        named: named.iter().map(hit).collect(),
        more,
        near: near.iter().map(near_hit).collect(),
    }
}

/// A station at a distance.
#[derive(Debug, Clone, Copy)]
struct Near<'a> {
    listed: &'a Listed,
    distance: Length,
}

impl Near<'_> {
    /// `off`: how far the house may stand from where the distance begins.
    fn hit(&self, off: Length, height: Length) -> Hit {
        let station = &self.listed.station;
        Hit {
            station: station.clone(),
            distance: self.distance,
            uncertainty: uncertainty(station, self.distance, off, height),
        }
    }
}

/// How far a station's 99 % temperature may be from the house's: one standard deviation.
///
/// Its own 3 °F, with what distance and height add, as independent errors. Measured on the 4328
/// pairs of stations of the table less than 150 km apart outside of Alaska: the mean square of the
/// difference of two is `2 (3.2 °F)² + (2.2 °F per 100 km)² + (1.2 °F per 100 m)²`, the last as the
/// standard atmosphere's lapse of 6.5 K/km. Alaska's pairs differ 1.9 times as much. That a house is
/// to a station as one station to another, is judgement.
fn uncertainty(
    station: &Station,
    distance: Length,
    off: Length,
    height: Length,
) -> TemperatureDifference {
    let base_f = 3.0;
    let by_distance_f = 2.2 * (distance.si() * distance.si() + off.si() * off.si()).sqrt() / 1e5;
    let by_height_f = 1.2 * (height - station.elevation()).si() / 100.0;
    let sum = base_f * base_f + by_distance_f * by_distance_f + by_height_f * by_height_f;
    let alaska = if station.state == "AK" { 2.0 } else { 1.0 };
    fahrenheit_degrees(alaska * sum.sqrt())
}

/// With an altitude, 100 m of height count as 10 km of distance: judgement. Of two neighbours, the
/// one so chosen is the better one: 4.3 °F rms from the station between them, against 4.7 °F by
/// distance alone (measured on the table).
const DISTANCE_PER_HEIGHT: f64 = 100.0;

fn nearest<'a>(
    table: &'a Table,
    from: Position,
    altitude: Option<Length>,
    without: &[Near<'_>],
    count: usize,
) -> Vec<Near<'a>> {
    let mut rest: Vec<(f64, Near<'a>)> = Vec::new();
    for listed in &table.stations {
        if without.iter().any(|near| std::ptr::eq(near.listed, listed)) {
            continue;
        }
        let distance = distance(from, listed.position);
        let height = altitude.map_or(Length::ZERO, |own| (own - listed.station.elevation()).abs());
        rest.push((distance.si() + DISTANCE_PER_HEIGHT * height.si(), Near { listed, distance }));
    }
    let mut out = Vec::new();
    while out.len() < count && !rest.is_empty() {
        let mut best = 0;
        for i in 1..rest.len() {
            if rest[i].0 < rest[best].0 {
                best = i;
            }
        }
        // The last takes the place of the one removed; equal distances to the last bit do not occur.
        out.push(rest.swap_remove(best).1);
    }
    out
}

fn mean_elevation(near: &[Near<'_>]) -> Length {
    let sum: Length = near.iter().map(|near| near.listed.station.elevation()).sum();
    sum / near.len().max(1) as f64
}

/// Mean radius of the earth (IUGG, from memory).
const EARTH: Length = Length::from_si(6_371_008.8);

/// Along the great circle, by the haversine.
fn distance(a: Position, b: Position) -> Length {
    let radians = std::f64::consts::PI / 180.0;
    let half_sine_squared = |degrees: f64| {
        let half = sin(0.5 * degrees * radians);
        half * half
    };
    let haversine = half_sine_squared(b.latitude_deg - a.latitude_deg)
        + cos(a.latitude_deg * radians)
            * cos(b.latitude_deg * radians)
            * half_sine_squared(b.longitude_deg - a.longitude_deg);
    EARTH * (2.0 * asin(haversine.sqrt().min(1.0)))
}
