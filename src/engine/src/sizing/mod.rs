//! Choosing lengths: stock pieces into the free runs of a room's walls.

pub mod joint;
mod pack;

pub use pack::{Choice, RunPieces, choose};
pub(crate) use pack::{from_sixteenths, sixteenths};
