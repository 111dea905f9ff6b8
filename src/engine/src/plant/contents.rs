//! How much liquid the system holds.

use crate::pipe::Tube;
use crate::quantity::{Length, Volume};

/// Everything that is filled. What a maker states is typed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Contents<'a> {
    pub tubes: &'a [(Tube, Length)],
    /// The elements' own tubes at their nominal length: the fins hold nothing.
    pub elements: &'a [(Tube, Length)],
    pub boiler: Volume,
    /// A buffer tank, or the coil of an indirect tank. An expansion tank with the right pre-charge
    /// holds no water when cold.
    pub tank: Volume,
}

/// The liquid in all of it.
pub fn system_volume(contents: &Contents) -> Volume {
    let inside = |tubes: &[(Tube, Length)]| -> Volume {
        tubes.iter().map(|&(tube, length)| tube_volume(tube, length)).sum()
    };
    inside(contents.tubes) + inside(contents.elements) + contents.boiler + contents.tank
}

/// What a length of tube holds: its open cross-section times the length.
pub fn tube_volume(tube: Tube, length: Length) -> Volume {
    tube.flow_area() * length
}
