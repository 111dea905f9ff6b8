//! What a link takes from the pressure at a flow, with the slope that Newton's method needs.

use super::pump::Pump;
use super::topology::Component;
use crate::pipe::{LAMINAR_END, Regime, STANDARD_GRAVITY, cv_pressure_drop, friction};
use crate::quantity::VolumeFlow;
use std::f64::consts::LN_10;

/// Below this flow, in kg/s, a loss that goes by the square goes straight to zero instead, so that
/// the slope at rest is not nothing. It is a thousandth of a gram a second.
const LEAST_FLOW: f64 = 1e-6;

/// A link that takes next to nothing takes this instead, in Pa s/kg, or the flow through a ring of
/// such links would be anybody's guess. At 0.1 kg/s it is a hundredth of a millimetre of water.
const JOINT: f64 = 1.0;

/// The flow in kg/s at which "next to nothing" is looked at, and where no better is known the flow
/// that the search begins with: 1.6 gpm, usual for a circuit.
const USUAL_FLOW: f64 = 0.1;

/// The velocity in m/s that the search begins with in a tube: usual, by common practice.
const USUAL_VELOCITY: f64 = 0.7;

/// A component prepared for being asked many times. All of it is in Pa and kg/s.
#[derive(Debug, Clone, Copy)]
pub(super) enum Law<'a> {
    /// Loss that rises evenly, and loss that rises by the square.
    Plain {
        even: f64,
        square: f64,
    },
    Pipe {
        tube: Tube,
        even: f64,
        square: f64,
    },
    Pump(&'a Pump),
    /// A flow that is given.
    Circulation(f64),
    Closed,
}

/// The straight part of a pipe.
#[derive(Debug, Clone, Copy)]
pub(super) struct Tube {
    /// Reynolds number a kg/s.
    reynolds: f64,
    relative_roughness: f64,
    /// Hagen and Poiseuille: loss a kg/s.
    laminar: f64,
    /// Loss a friction factor and a square of the flow.
    turbulent: f64,
    usual_flow: f64,
}

impl Law<'_> {
    /// `None` where the component's numbers mean nothing.
    pub(super) fn of(component: &Component) -> Option<Law<'_>> {
        let positive = |value: f64| value.is_finite() && value > 0.0;
        let zero_up = |value: f64| value.is_finite() && value >= 0.0;
        match *component {
            Component::Closed => Some(Law::Closed),
            Component::Pump(ref pump) => pump.is_sound().then_some(Law::Pump(pump)),
            Component::Circulation(flow) => {
                let flow = flow.si();
                zero_up(flow).then_some(Law::Circulation(flow))
            }
            Component::Valve { cv, density } => {
                let flow = VolumeFlow::from_si(1.0 / density.si());
                let square = cv_pressure_drop(flow, density, cv).si();
                (positive(density.si()) && positive(square)).then(|| Law::joint(square, None))
            }
            Component::Equipment { head, at, density } => {
                let flow = at.si() * density.si();
                let square = density.si() * STANDARD_GRAVITY * head.si() / (flow * flow);
                let sound = positive(at.si()) && positive(density.si()) && zero_up(square);
                sound.then(|| Law::joint(square, None))
            }
            Component::Pipe { length, bore, k, liquid } => {
                let (diameter, length) = (bore.diameter.si(), length.si());
                let (density, viscosity) = (liquid.density.si(), liquid.viscosity.si());
                let area = bore.area().si();
                let square = 1.0 / (2.0 * density * area * area);
                let tube = Tube {
                    reynolds: diameter / (area * viscosity),
                    relative_roughness: bore.relative_roughness(),
                    laminar: 32.0 * viscosity * length / (density * area * diameter * diameter),
                    turbulent: length / diameter * square,
                    usual_flow: density * area * USUAL_VELOCITY,
                };
                let sound = [diameter, density, viscosity, square, tube.reynolds];
                // Rougher than a tenth, Colebrook's formula says nothing.
                let sound = sound.into_iter().all(positive)
                    && [length, k, k * square, tube.laminar, tube.turbulent]
                        .into_iter()
                        .all(zero_up)
                    && (0.0..0.1).contains(&tube.relative_roughness);
                sound.then(|| Law::joint(k * square, (length > 0.0).then_some(tube)))
            }
        }
    }

    /// The law, with a joint's loss where there is next to none of its own.
    fn joint<'a>(square: f64, tube: Option<Tube>) -> Law<'a> {
        let with = |even| match tube {
            Some(tube) => Law::Pipe { tube, even, square },
            None => Law::Plain { even, square },
        };
        let bare = with(0.0);
        // Friction is never less than laminar, which spares most tubes the question.
        let plenty = tube.is_some_and(|tube| tube.laminar >= JOINT);
        let enough = plenty || bare.loss(USUAL_FLOW).0 >= JOINT * USUAL_FLOW;
        if enough { bare } else { with(JOINT) }
    }

    /// Pressure lost from end to end, and its slope; never falling. Carries the sign of the flow,
    /// but for a pump's, which is what it adds with the sign turned.
    pub(super) fn loss(&self, flow: f64) -> (f64, f64) {
        match *self {
            Law::Circulation(_) | Law::Closed => (0.0, 0.0),
            Law::Pump(pump) => {
                let (lift, slope) = pump.lift_and_slope(flow);
                (-lift, -slope)
            }
            Law::Plain { even, square } => plain(even, square, flow),
            Law::Pipe { tube, even, square } => {
                let (loss, slope) = plain(even, square, flow);
                let (friction, rise) = tube.friction_loss(flow);
                (loss + friction, slope + rise)
            }
        }
    }

    /// The slope of the straight line from rest to a usual flow, to begin the search with.
    pub(super) fn usual_slope(&self) -> f64 {
        match *self {
            Law::Circulation(_) | Law::Closed => 1.0,
            Law::Pump(pump) => pump.overall_slope(),
            Law::Plain { .. } => self.loss(USUAL_FLOW).0 / USUAL_FLOW,
            Law::Pipe { tube, .. } => self.loss(tube.usual_flow).0 / tube.usual_flow,
        }
    }
}

fn plain(even: f64, square: f64, flow: f64) -> (f64, f64) {
    let size = flow.abs();
    let (secant, slope) =
        if size > LEAST_FLOW { (size, 2.0 * size) } else { (LEAST_FLOW, LEAST_FLOW) };
    ((even + square * secant) * flow, even + square * slope)
}

impl Tube {
    /// Darcy and Weisbach with the engine's friction factor.
    fn friction_loss(&self, flow: f64) -> (f64, f64) {
        let size = flow.abs();
        let reynolds = size * self.reynolds;
        if reynolds <= LAMINAR_END {
            return (self.laminar * flow, self.laminar);
        }
        let friction = friction(reynolds, self.relative_roughness);
        let factor = friction.factor;
        let rise = match friction.regime {
            Regime::Still | Regime::Laminar => -factor / reynolds,
            // A straight line from the laminar end.
            Regime::Transition => (factor - 64.0 / LAMINAR_END) / (reynolds - LAMINAR_END),
            Regime::Turbulent => self.colebrook_rise(reynolds, factor),
        };
        let loss = self.turbulent * factor * size;
        (loss * flow, 2.0 * loss + self.turbulent * size * size * rise * self.reynolds)
    }

    /// `df/dRe` from Colebrook's equation, differentiated as it stands: with `x = 1/sqrt f` and `c =
    /// 2/ln 10`, `x + c ln(e/3.7 + 2.51 x/Re) = 0` gives `dx/dRe = c x/Re/(e Re/3.7/2.51 + x + c)`.
    fn colebrook_rise(&self, reynolds: f64, factor: f64) -> f64 {
        let (x, c) = (1.0 / factor.sqrt(), 2.0 / LN_10);
        let roughness = self.relative_roughness * (1.0 / (3.7 * 2.51));
        // f = x^-2.
        -2.0 * c * factor / (reynolds * (roughness * reynolds + x + c))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::network::topology::Liquid;
    use crate::pipe::{Bore, Cv};
    use crate::quantity::{Density, Length, Viscosity};
    use std::f64::consts::PI;

    fn pipe(length: f64, k: f64) -> Component {
        Component::Pipe {
            length: Length::from_si(length),
            bore: Bore { diameter: Length::from_si(0.02), roughness: Length::from_si(1.5e-6) },
            k,
            liquid: Liquid {
                density: Density::from_si(980.0),
                viscosity: Viscosity::from_si(4e-4),
            },
        }
    }

    #[test]
    fn slopes_are_those_of_the_losses() {
        let components = [pipe(10.0, 3.0), pipe(0.0, 3.0), pipe(0.0, 0.0), pipe(2.0, 0.0)];
        for component in components {
            let law = Law::of(&component).expect("sound numbers");
            // Reynolds number 2000 is at 0.01257 kg/s here, 4000 at 0.02513.
            for flow in [1e-9, 1e-7, 1e-5, 0.01, 0.0126, 0.02, 0.025, 0.0252, 0.1, 1.0, -0.02, -0.3]
            {
                let step = flow * 1e-5;
                let expected = (law.loss(flow + step).0 - law.loss(flow - step).0) / (2.0 * step);
                let slope = law.loss(flow).1;
                assert!((slope / expected - 1.0).abs() < 1e-6, "{flow}: {slope} for {expected}");
            }
        }
    }

    #[test]
    fn at_rest_the_slope_is_that_of_laminar_flow() {
        let component = pipe(10.0, 0.0);
        let law = Law::of(&component).expect("sound numbers");
        let expected = 128.0 * 4e-4 * 10.0 / (PI * 980.0 * 0.02 * 0.02 * 0.02 * 0.02);
        assert!((law.loss(0.0).1 / expected - 1.0).abs() < 1e-12);
        assert_eq!(law.loss(0.0).0, 0.0);
    }

    #[test]
    fn numbers_without_meaning_make_no_law() {
        let cv = Cv::new(3.5).expect("positive");
        for wrong in [-1.0, f64::NAN, f64::INFINITY] {
            assert!(Law::of(&pipe(wrong, 0.0)).is_none());
            assert!(Law::of(&pipe(1.0, wrong)).is_none());
            let density = Density::from_si(wrong);
            assert!(Law::of(&Component::Valve { cv, density }).is_none());
        }
    }
}
