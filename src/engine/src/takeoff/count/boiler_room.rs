//! What stands in the boiler room, once for all zones or once for each.

use super::Counting;
use crate::job::{PriceField, PumpSet, Zoning};
use crate::plant::design::Fed;
use crate::plant::return_protection::{Advice, Verdict};
use crate::takeoff::item::{Reason, Whose};

impl Counting<'_> {
    pub(super) fn boiler_room(&mut self) {
        let (circuit, house) = (&self.job.circuit, Whose::House);
        let tube = self.boiler_tube();
        let of_room = Reason::BoilerRoom;
        self.part(PriceField::Tee, tube, house, of_room, circuit.boiler_tees as usize);
        self.part(PriceField::ShutOffValve, tube, house, of_room, circuit.boiler_valves as usize);
        self.circulators();
        self.controls();
        for (field, reason) in [
            (PriceField::AirEliminator, Reason::TakesAirOut),
            (PriceField::ExpansionTank, Reason::TakesUp { volume: self.tank() }),
            (PriceField::FillValve, Reason::Fills),
            (PriceField::BackflowPreventer, Reason::Fills),
            (PriceField::ReliefValve, Reason::Fills),
            (PriceField::Gauge, Reason::Fills),
        ] {
            self.part(field, None, house, reason, 1);
        }
        // Two at the boiler, two at the air eliminator (common practice, no source): valves are taken
        // with solder ends.
        self.part(PriceField::Adapter, tube, house, Reason::Threads, 4);
        match self.design.plant.as_ref().and_then(|plant| plant.back) {
            Some(Verdict::Cold { advice: Advice::MixingValve(_), .. }) => {
                self.part(PriceField::MixingValve, None, house, Reason::ColdReturn, 1);
                self.part(PriceField::Tee, tube, house, Reason::ColdReturn, 1);
            }
            // A bypass is set by a valve between two tees.
            Some(Verdict::Cold { advice: Advice::Bypass(_), .. }) => {
                self.part(PriceField::BalancingValve, tube, house, Reason::ColdReturn, 1);
                self.part(PriceField::Tee, tube, house, Reason::ColdReturn, 2);
            }
            _ => {}
        }
    }

    fn tank(&self) -> Option<crate::quantity::Volume> {
        let tank = self.design.plant.as_ref().and_then(|plant| plant.tank)?;
        Some(tank.usual.unwrap_or(tank.volume))
    }

    /// Zone valves or a circulator each, with tees to the further zones; a circulator has a pair of
    /// flanges, each with a thread.
    fn circulators(&mut self) {
        let (job, circuit) = (self.job, &self.job.circuit);
        let several = job.zones.len() > 1;
        let boiler_tube = self.boiler_tube();
        for (nth, zone) in job.zones.iter().enumerate().filter(|_| several) {
            let (whose, tube) = (Whose::Zone(zone.id), self.first_tube(zone));
            match circuit.zoning {
                Zoning::Valves => {
                    self.part(PriceField::ZoneValve, tube, whose, Reason::StartsZone, 1);
                }
                Zoning::Circulators => {
                    self.circulator(tube, whose, 1);
                    self.part(PriceField::FlowCheck, tube, whose, Reason::KeepsWay, 1);
                }
            }
            if nth > 0 {
                self.part(PriceField::Tee, boiler_tube, whose, Reason::FurtherZone, 2);
            }
        }
        let shared = match circuit.pumps {
            PumpSet::One => 1,
            PumpSet::TwoInSeries | PumpSet::TwoInParallel => 2,
        };
        if !several || circuit.zoning == Zoning::Valves {
            self.circulator(boiler_tube, Whose::House, shared);
        }
    }

    fn circulator(&mut self, tube: crate::pipe::Tube, whose: Whose, count: usize) {
        self.part(PriceField::Circulator, None, whose, Reason::MovesWater, count);
        self.part(PriceField::Flanges, None, whose, Reason::MovesWater, count);
        self.part(PriceField::Adapter, tube, whose, Reason::Threads, 2 * count);
    }

    /// As the plant has them: zone valves start boiler and circulator by their end switches (common
    /// practice, no source), so that only circulators of zones, or the only one, have a relay.
    fn controls(&mut self) {
        let Some(control) = self.design.plant.as_ref().and_then(|plant| plant.control) else {
            return;
        };
        let (house, of) = (Whose::House, control.transformers);
        if control.feeds == Fed::Relays {
            let relays = control.coils as usize;
            self.part(PriceField::Relay, None, house, Reason::Switches, relays);
        }
        let feeds = Reason::Feeds { volt_amperes: of.each_va };
        self.part(PriceField::Transformer, None, house, feeds, of.count as usize);
    }
}
