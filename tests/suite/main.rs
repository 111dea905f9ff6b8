//! Checks that cross more than one file of the engine, and everything against the outside.

#[cfg(feature = "browser")]
mod browser;
mod published;
mod water_side;
