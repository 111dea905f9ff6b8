//! Solder, flux, gas and sealant by the number of joints; glycol by what the loop holds.
//!
//! What a spool, a jar or a bottle is enough for is judgement, on the careful side: a joint of 3/4 in
//! takes about as much solder wire as the tube is wide.

use super::{Counting, joints};
use crate::job::PriceField;
use crate::quantity::Unit;
use crate::takeoff::item::{Class, Reason, Whose};

/// Joints to a spool of 8 oz.
pub const JOINTS_TO_A_SPOOL: u32 = 50;
/// Joints to a jar of flux of 4 oz.
pub const JOINTS_TO_A_JAR: u32 = 200;
/// Joints to a bottle of 14 oz.
pub const JOINTS_TO_A_BOTTLE: u32 = 75;
/// Threads to a jar of sealant of 4 oz.
pub const THREADS_TO_A_JAR: u32 = 60;

impl Counting<'_> {
    pub(super) fn supplies(&mut self) {
        let house = Whose::House;
        let joints = joints(&self.items);
        for (field, each) in [
            (PriceField::Solder, JOINTS_TO_A_SPOOL),
            (PriceField::Flux, JOINTS_TO_A_JAR),
            (PriceField::Gas, JOINTS_TO_A_BOTTLE),
        ] {
            self.part(field, None, house, Reason::Joints(joints), joints.div_ceil(each) as usize);
        }
        let adapters = self.items.iter().filter(|i| i.class == Class::Part(PriceField::Adapter));
        let threads: u32 = adapters.map(|item| item.amount.number() as u32).sum();
        let jars = threads.div_ceil(THREADS_TO_A_JAR) as usize;
        self.part(PriceField::Sealant, None, house, Reason::Threaded(threads), jars);
        let charge = self.design.plant.as_ref().and_then(|plant| plant.glycol);
        if let Some(glycol) = charge.map(|charge| charge.glycol) {
            // In cans of a gallon; a hair over is rounding.
            let cans = (Unit::LiquidGallon.from_si(glycol.si()) - 1e-9).ceil();
            let reason = Reason::Freezing { glycol };
            self.part(PriceField::Glycol, None, house, reason, cans.clamp(0.0, 1e5) as usize);
        }
    }
}
