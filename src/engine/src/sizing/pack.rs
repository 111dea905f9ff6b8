//! The least total of stock pieces that gives a room its finned length and fits its runs.

use crate::building::{Run, SurfaceId};
use crate::job::Baseboard;
use crate::quantity::Length;
use serde::Serialize;

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
    let stock: Vec<u32> = baseboard.stock.iter().map(|stock| sixteenths(stock.length)).collect();
    let finned = |candidate: &Candidate| {
        let bare = baseboard.bare_per_piece * candidate.merit.pieces as f64;
        (from_sixteenths(candidate.nominal) - bare).max(Length::ZERO)
    };
    // A least total loses its last piece and falls short, so none is longer than this.
    let longest = baseboard.stock.iter().fold(Length::ZERO, |a, b| a.max(b.length));
    let mut totals = vec![Candidate::default()];
    for (_, run) in runs {
        let room = sixteenths((run.length - baseboard.end_allowance).max(Length::ZERO));
        totals = add_run(&totals, &fewest_pieces(&stock, room));
        totals.retain(|candidate| finned(candidate) <= needed + longest);
    }
    // A hair of slack: a length that is needed exactly is reached by a piece of that length.
    let enough = |candidate: &&Candidate| finned(candidate).si() >= needed.si() * (1.0 - 1e-9);
    let most = || totals.iter().max_by(|a, b| finned(a).si().total_cmp(&finned(b).si()));
    match totals.iter().find(enough).or_else(most) {
        None => Choice::none(),
        Some(candidate) => Choice {
            runs: runs
                .iter()
                .zip(&candidate.by_run)
                .filter(|(_, pieces)| !pieces.is_empty())
                .map(|(&(surface, run), pieces)| RunPieces {
                    surface,
                    run,
                    pieces: pieces.iter().map(|&piece| from_sixteenths(piece)).collect(),
                })
                .collect(),
            nominal: from_sixteenths(candidate.nominal),
            finned: finned(candidate),
        },
    }
}

/// The best way known to reach one nominal total over the runs looked at so far.
#[derive(Debug, Clone, Default)]
struct Candidate {
    nominal: u32,
    merit: Merit,
    /// The pieces on each run, longest first.
    by_run: Vec<Vec<u32>>,
}

/// Fewer pieces are better, then fewer runs that hold any.
#[derive(Debug, Clone, Copy, Default, PartialEq, PartialOrd)]
struct Merit {
    pieces: usize,
    runs: usize,
}

/// Keeps a candidate in a list that is ordered by nominal length, unless one as good is there. Most are
/// not kept, so their pieces are put together last.
fn keep(
    list: &mut Vec<Candidate>,
    nominal: u32,
    merit: Merit,
    by_run: impl FnOnce() -> Vec<Vec<u32>>,
) {
    match list.binary_search_by_key(&nominal, |known| known.nominal) {
        Err(place) => list.insert(place, Candidate { nominal, merit, by_run: by_run() }),
        Ok(place) if merit < list[place].merit => {
            list[place] = Candidate { nominal, merit, by_run: by_run() };
        }
        Ok(_) => {}
    }
}

/// For each length up to `room` that stock pieces can make: the pieces, fewest.
fn fewest_pieces(stock: &[u32], room: u32) -> Vec<Candidate> {
    let mut best = vec![Candidate { by_run: vec![Vec::new()], ..Candidate::default() }];
    let mut at = 0;
    // Totals grow by whole pieces, so walking the list in order meets each total's best first.
    while let Some(here) = best.get(at).cloned() {
        let merit = Merit { pieces: here.merit.pieces + 1, runs: 1 };
        for &piece in stock.iter().filter(|&&piece| piece > 0 && here.nominal + piece <= room) {
            keep(&mut best, here.nominal + piece, merit, || {
                let mut pieces = here.by_run.concat();
                let place = pieces.partition_point(|&longer| longer >= piece);
                pieces.insert(place, piece);
                vec![pieces]
            });
        }
        at += 1;
    }
    best
}

/// Every total of the runs before with every total of one more.
fn add_run(totals: &[Candidate], run: &[Candidate]) -> Vec<Candidate> {
    let mut sums = Vec::new();
    // Larger totals of the earlier runs first, so that on a tie the earlier runs stay fuller.
    for before in totals.iter().rev() {
        for here in run {
            let merit = Merit {
                pieces: before.merit.pieces + here.merit.pieces,
                runs: before.merit.runs + here.merit.runs,
            };
            let by_run = || [before.by_run.as_slice(), here.by_run.as_slice()].concat();
            keep(&mut sums, before.nominal + here.nominal, merit, by_run);
        }
    }
    sums
}

/// Whole sixteenths of an inch in a length, as a tape is read; a hair short still counts.
pub(crate) fn sixteenths(length: Length) -> u32 {
    (length.si() / SIXTEENTH_M + 1e-6).floor().clamp(0.0, 1e6) as u32
}

pub(crate) fn from_sixteenths(sixteenths: u32) -> Length {
    // A sixteenth of an inch is 254/160000 m; dividing last keeps whole feet exact.
    Length::from_si(f64::from(sixteenths) * 254.0 / 160_000.0)
}

const SIXTEENTH_M: f64 = 0.0254 / 16.0;
