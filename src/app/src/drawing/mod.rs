//! Drawings, to scale, that carry the design's numbers.

mod circuit;
mod wall;

pub(crate) use circuit::LoopDrawing;
pub(crate) use wall::{Shows, WallDrawing};
