//! Piping arrangements: how the rooms are connected.

mod series;

pub use series::{LoopDesign, Solved, flow_for, series_loop};
