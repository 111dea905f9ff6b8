//! Fin-tube baseboard: what it is rated at, and what it gives at the water that reaches it.

mod fit;
mod march;

pub use fit::{Fit, FitError, Point, PointFault, Reference, StandardErrors, fit};
pub use march::{Cooling, cool, cool_at_specific_heat, length_for};

use crate::named::names;
use crate::numeric::pow;
use crate::quantity::{LinearPower, MassFlow, Temperature, TemperatureDifference};
use serde::{Deserialize, Serialize};

/// Output follows flow to this power: rating practice of the hydronics trade, which takes it
/// between 500 and 2000 lb/h (1 and 4 gpm), a factor of 1.057.
pub const FLOW_EXPONENT: f64 = 0.04;

/// A certified rating is the measured output times this: rule of the rating practice, seen quoted.
pub const HEATING_EFFECT: f64 = 1.15;

/// Output of a metre of finned length at stated conditions.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Rating {
    /// As printed, per finned length.
    #[serde(rename = "output_w_per_m")]
    pub output: LinearPower,
    /// The element's average water temperature in the rating. Above [`Rating::air`].
    #[serde(rename = "water_k")]
    pub water: Temperature,
    /// Air that enters the element in the rating; 65 °F by common practice.
    #[serde(rename = "air_k")]
    pub air: Temperature,
    /// Output goes with the excess of water over air to this power; 1.3 to 1.45 for most fin-tube.
    pub exponent: f64,
    /// Flow in the rating.
    #[serde(rename = "flow_kg_per_s")]
    pub flow: MassFlow,
    pub effect: HeatingEffect,
}

/// Whether a rating contains the heating effect of [`HEATING_EFFECT`], and how the room is credited.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HeatingEffect {
    /// The rating is the heat given: the room gets it, the water loses it.
    AsTyped,
    /// A certified rating. The room is credited with the rating as printed (practice); the water
    /// loses the rating divided by the effect.
    CertifiedCredited,
    /// A certified rating. Room and water both reckon with the rating divided by the effect: the
    /// stricter choice, 11 to 20 % more length.
    CertifiedStrict,
    /// Nobody knows: reckoned as typed, and worth a notice.
    Unknown,
}

names!(HeatingEffect {
    AsTyped = "as-typed",
    CertifiedCredited = "certified-credited",
    CertifiedStrict = "certified-strict",
    Unknown = "unknown",
});

impl HeatingEffect {
    /// The share of the rating that the room is credited with.
    pub fn room_share(self) -> f64 {
        match self {
            HeatingEffect::AsTyped | HeatingEffect::CertifiedCredited | HeatingEffect::Unknown => {
                1.0
            }
            HeatingEffect::CertifiedStrict => 1.0 / HEATING_EFFECT,
        }
    }

    /// The share of the rating that the water gives up.
    pub fn water_share(self) -> f64 {
        match self {
            HeatingEffect::AsTyped | HeatingEffect::Unknown => 1.0,
            HeatingEffect::CertifiedCredited | HeatingEffect::CertifiedStrict => {
                1.0 / HEATING_EFFECT
            }
        }
    }
}

/// An element as it hangs on the wall.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Element {
    pub rating: Rating,
    /// Product of the factors for altitude, damper, covered inlet and the like; 1 for none.
    pub derate: f64,
}

/// Heat a metre of finned length gives.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Output {
    /// What the room is credited with.
    #[serde(rename = "to_room_w_per_m")]
    pub to_room: LinearPower,
    /// What the water loses.
    #[serde(rename = "from_water_w_per_m")]
    pub from_water: LinearPower,
}

/// Output per finned length where the water has temperature `water` (local, not the loop's mean).
///
/// `q' = q'_ref ((T_w - T_a)/(T_ref - T_a,ref))^n (m/m_ref)^0.04`, times the derate: the form of
/// EN 442 with the flow correction of [`FLOW_EXPONENT`]. Zero when the water is no warmer than the
/// air, or does not flow.
pub fn output_per_length(
    element: &Element,
    water: Temperature,
    air: Temperature,
    flow: MassFlow,
) -> Output {
    let Element { rating, derate } = element;
    let excess = water - air;
    if excess <= TemperatureDifference::ZERO || flow <= MassFlow::ZERO {
        return Output { to_room: LinearPower::ZERO, from_water: LinearPower::ZERO };
    }
    let as_rated = rating.output
        * *derate
        * pow(excess / (rating.water - rating.air), rating.exponent)
        * flow_factor(flow, rating.flow);
    Output {
        to_room: as_rated * rating.effect.room_share(),
        from_water: as_rated * rating.effect.water_share(),
    }
}

/// `(m/m_ref)^0.04`.
fn flow_factor(flow: MassFlow, reference: MassFlow) -> f64 {
    pow(flow / reference, FLOW_EXPONENT)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Unit;

    pub(super) fn fahrenheit(value: f64) -> Temperature {
        Temperature::of(value, Unit::Fahrenheit)
    }

    pub(super) fn element(effect: HeatingEffect) -> Element {
        let rating = Rating {
            output: LinearPower::of(600.0, Unit::BtuPerHourFoot),
            water: fahrenheit(180.0),
            air: fahrenheit(65.0),
            exponent: 1.4,
            flow: MassFlow::of(500.0, Unit::PoundPerHour),
            effect,
        };
        Element { rating, derate: 1.0 }
    }

    fn room_output(element: &Element, water: f64, flow: f64) -> f64 {
        let flow = MassFlow::of(flow, Unit::PoundPerHour);
        output_per_length(element, fahrenheit(water), fahrenheit(65.0), flow)
            .to_room
            .to(Unit::BtuPerHourFoot)
    }

    #[test]
    fn at_its_rating_conditions_it_gives_its_rating() {
        let found = room_output(&element(HeatingEffect::AsTyped), 180.0, 500.0);
        assert!((found - 600.0).abs() < 1e-9, "{found}");
    }

    #[test]
    fn four_gallons_a_minute_give_5_7_percent_more_than_one() {
        let found = room_output(&element(HeatingEffect::AsTyped), 180.0, 2000.0);
        assert!((found / 600.0 - 1.057).abs() < 5e-4, "{found}");
    }

    #[test]
    fn no_excess_or_no_flow_gives_nothing() {
        let element = element(HeatingEffect::AsTyped);
        for (water, flow) in [(65.0, 500.0), (50.0, 500.0), (180.0, 0.0), (180.0, -500.0)] {
            assert_eq!(room_output(&element, water, flow), 0.0);
        }
    }

    #[test]
    fn the_heating_effect_is_shared_as_stated() {
        let cases = [
            (HeatingEffect::AsTyped, 600.0, 600.0),
            (HeatingEffect::Unknown, 600.0, 600.0),
            (HeatingEffect::CertifiedCredited, 600.0, 600.0 / 1.15),
            (HeatingEffect::CertifiedStrict, 600.0 / 1.15, 600.0 / 1.15),
        ];
        for (effect, to_room, from_water) in cases {
            let flow = MassFlow::of(500.0, Unit::PoundPerHour);
            let output =
                output_per_length(&element(effect), fahrenheit(180.0), fahrenheit(65.0), flow);
            assert!((output.to_room.to(Unit::BtuPerHourFoot) - to_room).abs() < 1e-9);
            assert!((output.from_water.to(Unit::BtuPerHourFoot) - from_water).abs() < 1e-9);
        }
    }

    #[test]
    fn not_a_number_stays_not_a_number() {
        assert!(room_output(&element(HeatingEffect::AsTyped), f64::NAN, 500.0).is_nan());
    }
}
