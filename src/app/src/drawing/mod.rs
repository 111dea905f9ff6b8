//! Drawings, to scale, that carry the design's numbers.

mod circuit;
mod plan;
mod wall;

pub(crate) use circuit::loop_drawing;
pub(crate) use plan::plans;
pub(crate) use wall::{Shows, wall_drawing};
