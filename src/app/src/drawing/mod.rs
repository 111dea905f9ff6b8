//! Drawings, to scale, that carry the design's numbers.

mod pen;
mod plan;
mod schematic;
#[cfg(test)]
mod tests;
mod wall;

pub(crate) use plan::plans;
pub(crate) use schematic::schematic;
pub(crate) use wall::{Shows, wall_drawing};
