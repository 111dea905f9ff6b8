//! The pipe of a job cut from the lengths in which it is sold: which piece from which stick or coil.

use super::cut_plan::{CutError, CutPlan, NODES, cut_plan};
use super::straights::{Straight, longest_sold, sold_in, straights};
use crate::design::Design;
use crate::job::{Job, LegKind};
use crate::network::Place;
use crate::order;
use crate::pipe::{Material, Tube};
use crate::quantity::Length;
use crate::sizing::{from_sixteenths, sixteenths};

/// All pipe of one tube.
#[derive(Debug, Clone, PartialEq)]
pub struct Cutting {
    pub tube: Tube,
    /// In the order of the water, zone after zone.
    pub pieces: Vec<Piece>,
    /// In which it is sold, whole sixteenths of an inch: sticks, or a coil.
    pub sold_sixteenths: Vec<u32>,
    /// What a cut takes; a coil's cut takes nothing.
    pub kerf_sixteenths: u32,
    /// A cut's piece is one of those above.
    pub plan: Result<CutPlan, CutError>,
}

/// Pipe in one piece: a straight, or part of one that is longer than what is sold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Piece {
    /// Rounded up.
    pub length_sixteenths: u32,
    pub place: Place,
    /// None where the stretch's whole length is taken as one line.
    pub leg: Option<LegKind>,
    /// Which of how many parts, coupled; from one.
    pub part: (u32, u32),
}

impl Cutting {
    pub fn is_coil(&self) -> bool {
        self.tube.material() == Material::Pex
    }

    /// What is bought: how many of each length, longest first, so that nothing is short of `share` to
    /// spare; more is added in the shortest.
    pub fn bought(&self, share: f64) -> Vec<(Length, u32)> {
        let mut sold = self.sold_sixteenths.clone();
        order::sort_by_key(&mut sold, |&length| std::cmp::Reverse(length));
        let longest = sold.first().copied().unwrap_or(1).max(1);
        let needed =
            self.pieces.iter().map(|piece| u64::from(piece.length_sixteenths)).sum::<u64>();
        let mut counts: Vec<(u32, u32)> = match &self.plan {
            Ok(plan) => {
                let of = |length: u32| {
                    plan.sticks.iter().filter(|stick| stick.stick_sixteenths == length).count()
                };
                sold.iter().map(|&length| (length, of(length) as u32)).collect()
            }
            // More than any house: by the length alone.
            Err(_) => vec![(longest, needed.div_ceil(u64::from(longest)) as u32)],
        };
        let wanted = (needed as f64 * (1.0 + share) - 1e-6).ceil();
        let held = |counts: &[(u32, u32)]| -> f64 {
            counts.iter().map(|&(length, count)| f64::from(length) * f64::from(count)).sum()
        };
        let missing = wanted - held(&counts);
        if let Some((length, count)) = counts.last_mut()
            && missing > 0.0
        {
            *count += (missing / f64::from(*length)).ceil() as u32;
        }
        counts.retain(|(_, count)| *count > 0);
        counts.into_iter().map(|(length, count)| (from_sixteenths(length), count)).collect()
    }
}

/// A cut plan for each tube that is used, by material and size.
pub fn cuttings(job: &Job, design: &Design) -> Vec<Cutting> {
    let straights = straights(job, design);
    let used = Tube::ALL.iter().filter(|tube| straights.iter().any(|s| s.tube == **tube));
    used.map(|&tube| cutting(job, &straights, tube)).collect()
}

fn cutting(job: &Job, straights: &[Straight], tube: Tube) -> Cutting {
    let longest = longest_sold(job, straights, tube);
    let sold_sixteenths: Vec<u32> =
        sold_in(job, tube, longest).into_iter().map(sixteenths).collect();
    let most = sixteenths(longest).max(1);
    let own = straights.iter().filter(|straight| straight.tube == tube);
    let pieces: Vec<Piece> = own.flat_map(|straight| pieces(straight, most)).collect();
    let kerf_sixteenths = match tube.material() {
        Material::Pex => 0,
        _ => rounded_up(job.cutting.kerf),
    };
    let lengths: Vec<u32> = pieces.iter().map(|piece| piece.length_sixteenths).collect();
    let plan = cut_plan(&lengths, &sold_sixteenths, kerf_sixteenths, NODES);
    Cutting { tube, pieces, sold_sixteenths, kerf_sixteenths, plan }
}

/// A straight in parts that are no longer than what is sold.
fn pieces(straight: &Straight, most: u32) -> Vec<Piece> {
    let whole = rounded_up(straight.length);
    let parts = whole.div_ceil(most);
    let of = |nth: u32| Piece {
        length_sixteenths: if nth < parts { most } else { whole - (parts - 1) * most },
        place: straight.place,
        leg: straight.leg,
        part: (nth, parts),
    };
    (1..=parts).map(of).collect()
}

/// To whole sixteenths of an inch, a hair less being rounding.
fn rounded_up(length: Length) -> u32 {
    let down = sixteenths(length);
    let rest = length - from_sixteenths(down);
    // A thousandth of a sixteenth.
    down + u32::from(rest.si() > 0.0254 / 16_000.0)
}
