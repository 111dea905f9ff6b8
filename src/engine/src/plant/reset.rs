//! Outdoor reset: how warm the supply has to be on milder days, and how to set a control to it.

use crate::numeric::{pow, root};
use crate::quantity::{Power, Temperature, TemperatureDifference};
use serde::Serialize;

/// The loop as it was designed, its elements all counted at the mean water temperature.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Designed {
    pub room: Temperature,
    pub outdoors: Temperature,
    /// From here on the house needs no heat: the room's temperature, or lower by what sun and people
    /// give.
    pub balance: Temperature,
    pub supply: Temperature,
    /// From supply to return, at the design supply and a flow that stays.
    pub drop: TemperatureDifference,
    pub exponent: f64,
    /// What the elements give at the design supply over the load: 1 where they just meet it.
    pub surplus: f64,
}

/// What a day asks of the supply.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Point {
    #[serde(rename = "outdoors_k")]
    pub outdoors: Temperature,
    #[serde(rename = "supply_k")]
    pub supply: Temperature,
}

/// A straight line for a control: `supply = room + shift + slope (room - outdoors)`. The control's
/// high limit stays at the design supply, which the line passes on the coldest days.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Setting {
    /// Kelvin of supply a kelvin outdoors.
    pub slope: f64,
    #[serde(rename = "shift_k")]
    pub shift: TemperatureDifference,
    /// The most by which the line is above what is needed.
    #[serde(rename = "excess_k")]
    pub excess: TemperatureDifference,
}

/// Why there is no line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub enum ResetError {
    /// The balance temperature is not above the design's outdoors, or above the room's.
    Balance,
    /// The mean water is not warmer than the room, or the water grows warmer on its way.
    Water,
    /// The exponent or the surplus is not above zero.
    Element,
}

/// The supply that just meets the load at `outdoors`.
///
/// The load goes with `balance - outdoors`; the elements give `((T_m - T_a)/(T_m,d - T_a))^n` of what
/// they give at the design's mean water, and the drop goes with the load. Counting a series of
/// elements at the loop's mean is off by less than 0.05 K at a drop of 11 K (20 °F).
pub fn supply_at(designed: &Designed, outdoors: Temperature) -> Result<Temperature, ResetError> {
    let Designed { room, balance, supply, drop, exponent, surplus, .. } = *designed;
    let span = balance - designed.outdoors;
    if !(span > TemperatureDifference::ZERO && balance <= room) {
        return Err(ResetError::Balance);
    }
    let excess = supply - drop / 2.0 - room;
    if !(excess > TemperatureDifference::ZERO && drop >= TemperatureDifference::ZERO) {
        return Err(ResetError::Water);
    }
    if !(exponent > 0.0 && surplus > 0.0) {
        return Err(ResetError::Element);
    }
    let share = ((balance - outdoors) / span / surplus).max(0.0);
    Ok(room + excess * pow(share, 1.0 / exponent) + drop * (0.5 * share))
}

/// The supply between the room's temperature and `most` at which the loop gives `load`, by its own
/// exact output; `None` if `most` is not enough.
pub fn supply_for(
    load: Power,
    room: Temperature,
    most: Temperature,
    output_at: &dyn Fn(Temperature) -> Power,
) -> Option<Temperature> {
    if load <= Power::ZERO {
        return Some(room);
    }
    let missing = |kelvin: f64| (output_at(Temperature::from_si(kelvin)) - load).si();
    root(missing, room.si(), most.si(), 1e-6).map(Temperature::from_si)
}

/// `count` days, two or more, spread evenly from the coldest to the mildest.
///
/// The mildest is where heating is switched off, some kelvin below the balance temperature: near that
/// the line bends so much that a straight one would be far off.
///
/// `None` if one of them has no supply.
pub fn points(
    coldest: Temperature,
    mildest: Temperature,
    count: usize,
    supply_at: &dyn Fn(Temperature) -> Option<Temperature>,
) -> Option<Vec<Point>> {
    let last = count.max(2) - 1;
    (0..=last)
        .map(|step| {
            let outdoors = coldest + (mildest - coldest) * (step as f64 / last as f64);
            supply_at(outdoors).map(|supply| Point { outdoors, supply })
        })
        .collect()
}

/// The straight line through what is needed: as steep as from the first point to the last, and so
/// high that no day is short. `None` unless these two have different temperatures outdoors.
///
/// The line that is needed bends downwards, and of all lines that are nowhere below it this one is
/// above it by the least.
pub fn setting(room: Temperature, points: &[Point]) -> Option<Setting> {
    let (first, last) = (points.first()?, points.last()?);
    let slope = (first.supply - last.supply) / (last.outdoors - first.outdoors);
    if !slope.is_finite() {
        return None;
    }
    let over = |point: &Point| point.supply - room - (room - point.outdoors) * slope;
    let start = over(first);
    let (mut least, mut most) = (start, start);
    for point in points {
        least = least.min(over(point));
        most = most.max(over(point));
    }
    Some(Setting { slope, shift: most, excess: most - least })
}
