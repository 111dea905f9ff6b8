//! Water that cools along finned tube: a stand-in for the engine's, for the joint choice of pieces.

use finrun_engine::sizing::joint::{After, Water};

/// The exponent of output over excess temperature.
const EXPONENT: f64 = 1.4;

/// A room on its circuit.
#[derive(Debug, Clone, Copy)]
pub struct Heated {
    pub load_w: f64,
    pub air_k: f64,
}

/// One circuit's water.
#[derive(Debug, Clone)]
pub struct Loop {
    pub enters_k: f64,
    /// Flow times specific heat.
    pub capacity_w_per_k: f64,
    pub rooms: Vec<Heated>,
}

/// Element of one kind on all circuits. Along it `c dθ/dx = -a θ^n`, so that `θ^(1-n)` rises
/// linearly with length: solved by hand, nothing of the engine's.
#[derive(Debug, Clone)]
pub struct Element {
    /// Output of a metre at 1 K of excess.
    pub per_metre_w: f64,
    /// By how much the supply is lowered at part load, and the share of the loads then.
    pub part_lower_k: f64,
    pub circuits: Vec<Loop>,
}

#[expect(clippy::disallowed_methods, reason = "independent of the engine's own")]
impl Element {
    fn cooled(&self, circuit: usize, room: usize, water_k: f64, finned_m: f64) -> After {
        let Loop { capacity_w_per_k: c, rooms, .. } = &self.circuits[circuit];
        let air_k = rooms[room].air_k;
        let excess = (water_k - air_k).max(0.0);
        if excess == 0.0 {
            return After { water_k, output_w: 0.0 };
        }
        let power = 1.0 - EXPONENT;
        let rise = (EXPONENT - 1.0) * self.per_metre_w / c * finned_m;
        let left = (excess.powf(power) + rise).powf(1.0 / power);
        After { water_k: air_k + left, output_w: c * (excess - left) }
    }
}

#[expect(clippy::disallowed_methods, reason = "independent of the engine's own")]
impl Water for Element {
    fn enters_k(&self, circuit: usize) -> f64 {
        self.circuits[circuit].enters_k
    }

    fn needed_m(&self, circuit: usize, room: usize, water_k: f64) -> Option<f64> {
        let Loop { capacity_w_per_k: c, rooms, .. } = &self.circuits[circuit];
        let Heated { load_w, air_k } = rooms[room];
        if load_w <= 0.0 {
            return Some(0.0);
        }
        let excess = (water_k - air_k).max(0.0);
        let left = excess - load_w / c;
        if left <= 0.0 {
            return None;
        }
        let power = 1.0 - EXPONENT;
        let rise = left.powf(power) - excess.powf(power);
        Some(rise * c / ((EXPONENT - 1.0) * self.per_metre_w))
    }

    fn after(&self, circuit: usize, room: usize, water_k: f64, finned_m: f64) -> After {
        self.cooled(circuit, room, water_k, finned_m)
    }

    fn load_w(&self, circuit: usize, room: usize) -> f64 {
        self.circuits[circuit].rooms[room].load_w
    }

    fn part_enters_k(&self, circuit: usize) -> f64 {
        self.circuits[circuit].enters_k - self.part_lower_k
    }

    fn part_after(&self, circuit: usize, room: usize, water_k: f64, finned_m: f64) -> After {
        self.cooled(circuit, room, water_k, finned_m)
    }
}
