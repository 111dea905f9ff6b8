//! What happens to water on its way: temperature, heat, pressure; and how it divides where there
//! is more than one way.

mod law;
mod link;
mod matrix;
mod parts;
mod pump;
mod solver;
mod topology;
mod walk;

pub use link::{Equipment, Link, Passage, Place, Surface, Warms, pass};
pub use pump::{CurveError, CurvePoint, Join, Pump, PumpCurve, TypicalPump};
pub use solver::{NotSolved, Note, Solved, notes, solve, solve_from};
pub use topology::{Component, LinkId, Liquid, Network, NodeId, Way};
pub use walk::{Source, Stretch, Walked, walk};
pub(crate) use walk::{follow, places};
