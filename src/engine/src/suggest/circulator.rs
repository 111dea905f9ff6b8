//! What a circulator's curve allows a loop.

use crate::arrangement::Solved;
use crate::check::PUMP_REACHES;
use crate::job::{Flow, Job, PumpSet, Zone, Zoning};
use crate::network::{Place, PumpCurve};
use crate::pipe::STANDARD_GRAVITY;
use crate::quantity::{MassFlow, Pressure};

/// What a circulator leaves for a loop at the flow that is meant. Loops next to one another share the
/// flow and not the pressure, so that each is held against it by itself.
pub(super) struct PressureLimit {
    /// None where the flow is given, whatever that takes.
    left: Option<Pressure>,
}

impl PressureLimit {
    pub(super) fn of(job: &Job, zone: &Zone, solved: &Solved) -> PressureLimit {
        if job.circuit.flow != Flow::FromPump {
            return PressureLimit { left: None };
        }
        let piping = &solved.piping;
        let own = job.zones.len() > 1 && job.circuit.zoning == Zoning::Circulators;
        let (curve, set): (&PumpCurve, PumpSet) = match own {
            true => (&zone.pump, PumpSet::One),
            false => (&job.circuit.pump, job.circuit.pumps),
        };
        let (flows, heads) = match set {
            PumpSet::One => (1.0, 1.0),
            PumpSet::TwoInParallel => (2.0, 1.0),
            PumpSet::TwoInSeries => (1.0, 2.0),
        };
        let fed = piping.circuits.iter().filter(|circuit| !own || circuit.zone == zone.id);
        let meant: MassFlow = fed.map(|circuit| circuit.target).sum();
        let density = job.circuit.fluid.density(job.circuit.supply);
        // A circulator counts as enough where it moves nine tenths of what is meant, which takes
        // about eight tenths of the pressure.
        let head = curve.head(meant / density * (PUMP_REACHES / flows))
            * (heads / (PUMP_REACHES * PUMP_REACHES));
        // What the boiler room and the zone's valve take now, they take with any loops.
        let shared = piping.passages.iter().filter(|passage| match passage.place {
            Place::BoilerRoom => true,
            Place::ZoneValve(id) | Place::FlowCheck(id) => id == zone.id,
            _ => false,
        });
        let now = piping.mass_flow / meant.max(MassFlow::from_si(f64::MIN_POSITIVE));
        let taken: Pressure = shared.map(|passage| passage.pressure_drop()).sum();
        let lift = density.si() * STANDARD_GRAVITY * head.si();
        PressureLimit { left: Some(Pressure::from_si(lift) - taken / (now * now).max(1e-6)) }
    }

    pub(super) fn over_ppm(&self, pressure: Pressure) -> u64 {
        match self.left {
            Some(left) if left <= Pressure::ZERO => 1_000_000,
            Some(left) => (((pressure / left) - 1.0).clamp(0.0, 1.0) * 1e6) as u64,
            None => 0,
        }
    }
}
