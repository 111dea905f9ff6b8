//! Drawings, to scale, that carry the design's numbers.

mod pen;
mod plan;
mod plot;
mod pump;
mod schematic;
mod temperature;
#[cfg(test)]
mod tests;
mod wall;

pub(crate) use plan::plans;
pub(crate) use pump::pump_charts;
pub(crate) use schematic::schematic;
pub(crate) use temperature::temperature_chart;
pub(crate) use wall::{Shows, wall_drawing};
