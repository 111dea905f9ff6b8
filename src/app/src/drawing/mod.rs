//! Drawings, to scale, that carry the design's numbers.

mod all;
mod boiler_room;
mod chain;
mod cuts;
mod elevation;
mod follow;
mod key;
mod lines;
mod pen;
mod plan;
mod plot;
mod pump;
mod route;
mod schematic;
mod sheet;
#[cfg(test)]
mod sheet_tests;
mod stand;
mod temperature;
#[cfg(test)]
mod tests;
mod wall;
#[cfg(test)]
mod word_tests;

pub(crate) use all::{all_drawings, draw};
pub(crate) use cuts::cut_drawing;
pub(crate) use lines::{Lines, lines_chart};
pub(crate) use plan::plans;
pub(crate) use pump::pump_charts;
pub(crate) use schematic::{draw as schematic_drawn, schematic};
pub(crate) use temperature::temperature_chart;
pub(crate) use wall::{Shows, wall_drawing};
