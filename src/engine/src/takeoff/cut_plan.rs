//! Which pipe is cut from which stick: the least total length of sticks, proven.
//!
//! Whole sixteenths of an inch. A saw cut takes the kerf: pieces fit a stick when their sum and a
//! kerf between each two is no more than the stick, since at the stick's end there is no cut.
//!
//! Totals are tried from the least that the volume allows upward, and for each total every number
//! of sticks of each length that makes it; [`super::bins`] tells whether the pieces fit these.

use super::bins::{Bins, Fitted};

/// A piece out of a stick.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cut {
    /// Its place in the list of pieces as given.
    pub piece: usize,
    pub length_sixteenths: u32,
}

/// One stick with what is cut from it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CutStick {
    pub stick_sixteenths: u32,
    /// From one end of the stick, longest first.
    pub cuts: Vec<Cut>,
    /// What is left behind the last cut, less its kerf.
    pub offcut_sixteenths: u32,
}

/// Longer sticks first, then those with the longer pieces.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CutPlan {
    pub sticks: Vec<CutStick>,
    pub total_sixteenths: u64,
    /// No plan has a lesser total; the plan's own unless the nodes ran out.
    pub bound_sixteenths: u64,
    /// Sticks and parts of sticks looked at.
    pub nodes: u64,
}

impl CutPlan {
    /// Whether no plan has a lesser total length.
    pub fn is_proven(&self) -> bool {
        self.bound_sixteenths == self.total_sixteenths
    }
}

/// Why there is no plan. Places are those of the lists as given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CutError {
    NoPieces,
    NoSticks,
    /// A piece of no length.
    NoLength {
        piece: usize,
    },
    /// A stick of no length.
    NoStick {
        stick: usize,
    },
    /// A piece that is longer than every stick, by this.
    TooLong {
        piece: usize,
        over_sixteenths: u32,
    },
    /// More than 400 pieces, more than 8 lengths of sticks, or lengths beyond any house.
    TooLarge,
}

/// Nodes that are plenty for a house, and take well below a second.
pub const NODES: u64 = 200_000;

/// Beyond any house; small enough for the stack, and for sums. Judgement.
const MOST_PIECES: usize = 400;
const MOST_STICKS: usize = 8;
const MOST_SIXTEENTHS: u32 = 192_000;

/// Cuts `pieces` from sticks of the lengths in `sticks`, each as often as wanted, with the least
/// total length and of these the fewest sticks. With one length that is the fewest sticks.
///
/// The time is that of the search, which `nodes` bounds (a node takes the number of unlike pieces
/// at most); it grows beyond every power of the number of pieces where sticks must be filled almost
/// without waste. When it stops, the plan is the best known, and never worse than first-fit
/// decreasing; that the sticks are the fewest then is not certain.
pub fn cut_plan(
    pieces_sixteenths: &[u32],
    sticks_sixteenths: &[u32],
    kerf_sixteenths: u32,
    nodes: u64,
) -> Result<CutPlan, CutError> {
    check(pieces_sixteenths, sticks_sixteenths, kerf_sixteenths)?;
    let mut pieces = pieces_sixteenths.to_vec();
    pieces.sort_unstable_by(|a, b| b.cmp(a));
    let mut sticks: Vec<u32> = Vec::new();
    for &stick in sticks_sixteenths {
        let place = sticks.partition_point(|&longer| longer > stick);
        if sticks.get(place) != Some(&stick) {
            sticks.insert(place, stick);
        }
    }
    let kerf = kerf_sixteenths;
    let mut best = first_fit(&pieces, &sticks, kerf);
    let mut bins = Bins::of(&pieces, &sticks, kerf, nodes);
    let unit = sticks.iter().fold(0, |unit, &stick| divisor(u64::from(stick), unit)).max(1);
    let mut bound = least(&pieces, &sticks, kerf).div_ceil(unit) * unit;
    // What the first plan takes is tried too: fewer sticks may have that sum.
    while bound <= total(&best) && !bins.is_spent() {
        if let Some(plan) = fitted(&mut bins, &sticks, bound, &best) {
            best = plan;
            break;
        }
        if !bins.is_spent() {
            bound += unit;
        }
    }
    bound = bound.min(total(&best));
    Ok(CutPlan {
        total_sixteenths: total(&best),
        bound_sixteenths: bound,
        nodes: bins.nodes(),
        sticks: named(best, pieces_sixteenths, kerf),
    })
}

/// A stick's length and the lengths cut from it, longest first.
pub(super) type Filled = (u32, Vec<u32>);

fn check(pieces: &[u32], sticks: &[u32], kerf: u32) -> Result<(), CutError> {
    let Some(&longest) = sticks.iter().max() else {
        return Err(CutError::NoSticks);
    };
    if pieces.is_empty() {
        return Err(CutError::NoPieces);
    }
    if let Some(stick) = sticks.iter().position(|&stick| stick == 0) {
        return Err(CutError::NoStick { stick });
    }
    if let Some(piece) = pieces.iter().position(|&piece| piece == 0) {
        return Err(CutError::NoLength { piece });
    }
    let large = pieces.len() > MOST_PIECES
        || sticks.len() > MOST_STICKS
        || longest > MOST_SIXTEENTHS
        || kerf > MOST_SIXTEENTHS;
    if large {
        return Err(CutError::TooLarge);
    }
    match pieces.iter().position(|&piece| piece > longest) {
        None => Ok(()),
        Some(piece) => Err(CutError::TooLong { piece, over_sixteenths: pieces[piece] - longest }),
    }
}

fn total(plan: &[Filled]) -> u64 {
    plan.iter().map(|&(stick, _)| u64::from(stick)).sum()
}

/// First-fit decreasing into each length of sticks alone, then each stick as short as will do; the
/// best of these.
fn first_fit(pieces: &[u32], sticks: &[u32], kerf: u32) -> Vec<Filled> {
    let mut best: Vec<Filled> = Vec::new();
    for &stick in sticks.iter().filter(|&&stick| stick >= pieces[0]) {
        let mut plan: Vec<Filled> = Vec::new();
        for &piece in pieces {
            match plan.iter_mut().find(|(_, cuts)| used(cuts, kerf) + kerf + piece <= stick) {
                Some((_, cuts)) => cuts.push(piece),
                None => plan.push((stick, vec![piece])),
            }
        }
        for (stick, cuts) in &mut plan {
            let used = used(cuts, kerf);
            *stick = sticks.iter().copied().rev().find(|&stick| stick >= used).unwrap_or(*stick);
        }
        if best.is_empty() || (total(&plan), plan.len()) < (total(&best), best.len()) {
            best = plan;
        }
    }
    best
}

/// What pieces and the kerfs between them take of a stick.
fn used(cuts: &[u32], kerf: u32) -> u32 {
    cuts.iter().sum::<u32>() + kerf * (cuts.len() as u32).saturating_sub(1)
}

/// No sticks with a lesser sum hold the pieces: short sticks hold most for their length, since no
/// kerf is spent at a stick's end.
fn least(pieces: &[u32], sticks: &[u32], kerf: u32) -> u64 {
    let wanted: u64 = pieces.iter().map(|&piece| u64::from(piece + kerf)).sum();
    let shortest = u64::from(sticks.iter().copied().min().unwrap_or(1));
    (wanted * shortest).div_ceil(shortest + u64::from(kerf))
}

/// A plan with this sum, of the fewest sticks; `None` too when `best` is as good, or the nodes are
/// spent.
fn fitted(bins: &mut Bins<'_>, sticks: &[u32], sum: u64, best: &[Filled]) -> Option<Vec<Filled>> {
    for numbers in numbers(bins, sticks, sum) {
        if sum == total(best) && numbers.iter().sum::<u32>() >= best.len() as u32 {
            return None;
        }
        match bins.fit(&numbers) {
            Fitted::Into(plan) => return Some(plan),
            Fitted::Not => {}
            Fitted::Unknown => return None,
        }
    }
    None
}

fn divisor(a: u64, b: u64) -> u64 {
    if b == 0 { a } else { divisor(b, a % b) }
}

/// Every number of sticks of each length with this sum, fewest sticks first.
fn numbers(bins: &mut Bins<'_>, sticks: &[u32], sum: u64) -> Vec<Vec<u32>> {
    let mut all = Vec::new();
    add_numbers(bins, sticks, sum, &mut Vec::new(), &mut all);
    // Stable: of as many sticks the longer come first, as they were found.
    all.sort_by_key(|numbers| numbers.iter().sum::<u32>());
    all
}

fn add_numbers(
    bins: &mut Bins<'_>,
    sticks: &[u32],
    sum: u64,
    before: &mut Vec<u32>,
    all: &mut Vec<Vec<u32>>,
) {
    let Some((&stick, rest)) = sticks.split_first() else {
        if sum == 0 {
            all.push(before.clone());
        }
        return;
    };
    let most = sum / u64::from(stick);
    // The last length must make up what is left.
    let fewest = if rest.is_empty() { most } else { 0 };
    for number in (fewest..=most).rev() {
        bins.take(1);
        if bins.is_spent() {
            return;
        }
        before.push(number as u32);
        add_numbers(bins, rest, sum - number * u64::from(stick), before, all);
        before.pop();
    }
}

/// The plan in order, with each piece's place in the list given.
fn named(mut plan: Vec<Filled>, pieces: &[u32], kerf: u32) -> Vec<CutStick> {
    plan.sort_unstable_by(|a, b| b.cmp(a));
    let mut taken = vec![false; pieces.len()];
    let mut name = |length: u32| {
        let piece = (0..pieces.len()).find(|&at| !taken[at] && pieces[at] == length).unwrap_or(0);
        taken[piece] = true;
        Cut { piece, length_sixteenths: length }
    };
    let mut stick = |(stick, cuts): Filled| CutStick {
        stick_sixteenths: stick,
        offcut_sixteenths: stick.saturating_sub(used(&cuts, kerf) + kerf),
        cuts: cuts.into_iter().map(&mut name).collect(),
    };
    plan.into_iter().map(&mut stick).collect()
}
