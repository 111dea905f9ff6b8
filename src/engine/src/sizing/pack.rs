//! The least total of stock pieces that gives a room its finned length and fits its runs.

use crate::building::{Run, SurfaceId};
use crate::job::Baseboard;
use crate::quantity::Length;
use serde::Serialize;
use std::collections::BTreeMap;

/// The pieces on one run of wall, longest first.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RunPieces {
    pub surface: SurfaceId,
    pub run: Run,
    #[serde(rename = "pieces_m")]
    pub pieces: Vec<Length>,
}

/// What was chosen for a room.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Choice {
    /// Only runs that hold pieces, in the order given.
    pub runs: Vec<RunPieces>,
    /// Sum of the nominal lengths.
    #[serde(rename = "nominal_m")]
    pub nominal: Length,
    /// Finned length: nominal less the bare tube on each piece.
    #[serde(rename = "finned_m")]
    pub finned: Length,
}

impl Choice {
    pub fn none() -> Choice {
        Choice { runs: Vec::new(), nominal: Length::ZERO, finned: Length::ZERO }
    }

    pub fn pieces(&self) -> impl Iterator<Item = Length> + '_ {
        self.runs.iter().flat_map(|run| run.pieces.iter().copied())
    }
}

/// Chooses pieces for `runs` so that the finned length reaches `needed`, with the least nominal
/// length; of equal lengths the fewest pieces, then the fewest runs, then the earlier runs fuller.
///
/// When no choice reaches `needed`, the one with the most finned length is returned: the caller
/// compares. The search over nominal lengths is exact; that the fewest pieces also have the most
/// fins lets each nominal length keep one candidate.
pub fn choose(runs: &[(SurfaceId, Run)], baseboard: &Baseboard, needed: Length) -> Choice {
    let stock: Vec<u32> = baseboard.stock.iter().map(|&l| sixteenths(l)).collect();
    let mut totals = BTreeMap::from([(0u32, Candidate::default())]);
    let bare = baseboard.bare_per_piece;
    let finned = |nominal: u32, candidate: &Candidate| {
        (length(nominal) - bare * f64::from(candidate.pieces)).max(Length::ZERO)
    };
    // A least total loses its last piece and falls short, so none is longer than this.
    let longest = baseboard.stock.iter().fold(Length::ZERO, |a, &b| a.max(b));
    for (_, run) in runs {
        let room = sixteenths((run.length - baseboard.end_allowance).max(Length::ZERO));
        totals = add_run(&totals, &fewest_pieces(&stock, room));
        totals.retain(|&nominal, candidate| finned(nominal, candidate) <= needed + longest);
    }
    // A hair of slack: a length that is needed exactly is reached by a piece of that length.
    let enough = |(nominal, candidate): &(&u32, &Candidate)| {
        finned(**nominal, candidate).si() >= needed.si() * (1.0 - 1e-9)
    };
    let reached = totals.iter().find(enough);
    let most =
        || totals.iter().max_by(|a, b| finned(*a.0, a.1).si().total_cmp(&finned(*b.0, b.1).si()));
    match reached.or_else(most) {
        None => Choice::none(),
        Some((&nominal, candidate)) => Choice {
            runs: runs
                .iter()
                .zip(&candidate.by_run)
                .filter(|(_, pieces)| !pieces.is_empty())
                .map(|(&(surface, run), pieces)| RunPieces {
                    surface,
                    run,
                    pieces: pieces.iter().map(|&piece| length(piece)).collect(),
                })
                .collect(),
            nominal: length(nominal),
            finned: finned(nominal, candidate),
        },
    }
}

/// The best way known to reach one nominal total over the runs looked at so far.
#[derive(Debug, Clone, Default)]
struct Candidate {
    pieces: u32,
    runs: u32,
    by_run: Vec<Vec<u32>>,
}

/// For each length up to `room` that stock pieces can make: the pieces, fewest, longest first.
fn fewest_pieces(stock: &[u32], room: u32) -> BTreeMap<u32, Vec<u32>> {
    let mut best: BTreeMap<u32, Vec<u32>> = BTreeMap::from([(0, Vec::new())]);
    // Totals grow by whole pieces, so walking the map in order meets each total's best first.
    let mut at = Some(0u32);
    while let Some(total) = at {
        let here = best.get(&total).cloned().unwrap_or_default();
        for &piece in stock.iter().filter(|&&piece| piece > 0) {
            let next = total + piece;
            if next > room {
                continue;
            }
            let longer = here.len() + 1;
            if best.get(&next).is_none_or(|known| longer < known.len()) {
                let mut pieces = here.clone();
                let place = pieces.partition_point(|&longer| longer >= piece);
                pieces.insert(place, piece);
                best.insert(next, pieces);
            }
        }
        at = best.range(total + 1..).next().map(|(&next, _)| next);
    }
    best
}

fn add_run(
    totals: &BTreeMap<u32, Candidate>,
    run: &BTreeMap<u32, Vec<u32>>,
) -> BTreeMap<u32, Candidate> {
    let mut sums: BTreeMap<u32, Candidate> = BTreeMap::new();
    // Larger totals of the earlier runs first, so that on a tie the earlier runs stay fuller.
    for (before, candidate) in totals.iter().rev() {
        for (here, pieces) in run {
            let better = Candidate {
                pieces: candidate.pieces + pieces.len() as u32,
                runs: candidate.runs + u32::from(!pieces.is_empty()),
                by_run: Vec::new(),
            };
            let known = sums.get(&(before + here));
            if known.is_none_or(|k| (better.pieces, better.runs) < (k.pieces, k.runs)) {
                let mut by_run = candidate.by_run.clone();
                by_run.push(pieces.clone());
                sums.insert(before + here, Candidate { by_run, ..better });
            }
        }
    }
    sums
}

/// Whole sixteenths of an inch in a length, as a tape is read; a hair short still counts.
fn sixteenths(length: Length) -> u32 {
    (length.si() / SIXTEENTH_M + 1e-6).floor().clamp(0.0, 1e6) as u32
}

fn length(sixteenths: u32) -> Length {
    // A sixteenth of an inch is 254/160000 m; dividing last keeps whole feet exact.
    Length::from_si(f64::from(sixteenths) * 254.0 / 160_000.0)
}

const SIXTEENTH_M: f64 = 0.0254 / 16.0;
