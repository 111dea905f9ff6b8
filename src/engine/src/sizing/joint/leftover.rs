//! A first choice: room by room of what is left.

use super::answer::Plan;
use super::flow::{Wish, each};
use super::known::{Known, Stream};
use super::model::{Kind, Weight, metres};
use super::room::{Fills, Way, Ways, pieces};

/// The lightest way with rents in each room as the water comes to it; what a room would take more
/// of than is left is not given to it at all. Good enough to begin with.
pub(super) fn choose(known: &mut Known, rents: &[Weight]) {
    let model = known.model;
    let mut left: Vec<u32> =
        model.kinds.iter().map(|kind| kind.limit.unwrap_or(u32::MAX)).collect();
    let mut plan = Plan::new();
    for (at, rooms) in model.circuits.iter().enumerate() {
        let mut water_k = known.water.enters_k(at);
        for (room, (one, hot)) in rooms.iter().zip(&known.hot[at]).enumerate() {
            let stream = Stream { at, room, water_k };
            let mut offered: Vec<Kind> = Vec::new();
            for kind in model.kinds.iter().filter(|kind| left[kind.place] > 0) {
                let weight = kind.weight + rents[kind.place];
                offered.push(Kind { weight, ..kind.clone() });
            }
            let (way, taken) = loop {
                let fills = Fills::of(model, &offered);
                let ways = Ways::of(model, one, &fills);
                let Some(way) = lightest(known, stream, &ways, hot.wish) else {
                    return;
                };
                let taken = pieces(model, one, &fills, &way);
                let used = super::rents::totals(model, &taken);
                let kept = offered.len();
                offered.retain(|kind| used[kind.place] <= left[kind.place]);
                if offered.len() == kept {
                    break (way, taken);
                }
            };
            for counts in &taken {
                for (left, &count) in left.iter_mut().zip(counts) {
                    *left = left.saturating_sub(u32::from(count));
                }
            }
            plan.extend(taken);
            water_k = known.water.after(at, room, water_k, metres(way.finned)).water_k;
        }
    }
    known.meet(&plan);
}

fn lightest(known: &Known, stream: Stream, ways: &Ways, wish: Wish) -> Option<Way> {
    let Stream { at, room, water_k } = stream;
    let as_wished = if wish == Wish::Weighed { Wish::Enough } else { wish };
    let mut taken = None;
    each(known.model, known.water, (at, room), ways, (as_wished, water_k), &mut |_, way| {
        taken = Some(*way);
    });
    match (taken, wish) {
        (None, Wish::Weighed) => ways.list.last().copied(),
        (taken, _) => taken,
    }
}
