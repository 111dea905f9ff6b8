//! What happens to water on its way: temperature, heat, pressure.

mod link;

pub use link::{Link, Passage, Place, Surface, pass};
