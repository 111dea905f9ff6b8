//! How far apart things stand, and how many that makes: each rule once, for whoever buys and for whoever
//! fits.

use crate::job::Approach;
use crate::pipe::{Material, Tube};
use crate::quantity::{Length, Unit};
use crate::sizing::Choice;

/// Brackets of an enclosure no farther apart than 4 ft: common practice, no source; the maker's word
/// stands above it.
pub const BRACKETS: Length = Length::from_si(4.0 * 0.3048);

/// Hangers of copper tube up to 1-1/4 in, lying: 6 ft (International Plumbing Code, table 308.5, from
/// memory).
pub const COPPER_HANGERS: Length = Length::from_si(6.0 * 0.3048);

/// Hangers of PEX tube up to 1 in, lying: 32 in (the same table, from memory).
pub const PEX_HANGERS: Length = Length::from_si(32.0 * 0.0254);

/// Holes on a way that is not described, which is taken to go down and come up once: judgement.
pub const HOLES_TAKEN: u32 = 2;

/// One at each end of a run, and more between.
pub fn brackets(choice: &Choice) -> u32 {
    let runs = choice.runs.iter();
    let lengths = runs.map(|run| run.pieces.iter().copied().sum::<Length>());
    lengths.map(|long| spaces(long, BRACKETS) + 1).sum()
}

pub fn hanger_spacing(tube: Tube) -> Length {
    match tube.material() {
        Material::Pex => PEX_HANGERS,
        Material::CopperL | Material::CopperM => COPPER_HANGERS,
    }
}

/// On one straight of pipe: one for each spacing begun.
pub fn hangers(straight: Length, tube: Tube) -> u32 {
    spaces(straight, hanger_spacing(tube))
}

/// Through floors on the way to a room; none where the way is not described. Below a door and below a
/// floor the pipe goes down and comes up.
pub fn holes(way: &Approach) -> Option<u32> {
    way.crossings.map(|c| 2 * (c.doorways + c.below) + c.floors)
}

/// Spaces of at most this that a length has, one at the least.
fn spaces(long: Length, at_most: Length) -> u32 {
    // A hair over a whole number is rounding.
    let spaces = (long.to(Unit::Foot) / at_most.to(Unit::Foot) - 1e-9).ceil();
    spaces.clamp(1.0, 1e4) as u32
}
