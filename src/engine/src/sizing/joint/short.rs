//! Where there are not pieces enough: what is missing weighs.

use super::Water;
use super::flow::{Hot, Wish};
use super::model::{Model, ModelRoom, ModelRun, Picometres, least, metres, microwatts};
use super::rents::{Goal, Point, rising};

/// Steps of what a room may be short, in the bound.
const SHORT_STEPS: i64 = 64;

/// Every room that wants something may stay short, at the weight of what is missing. The hottest
/// water is that after rooms with no new pieces.
pub(super) fn weighed(model: &Model, water: &dyn Water) -> (Vec<Vec<Hot>>, Vec<Goal>) {
    let (mut all, mut goals) = (Vec::new(), Vec::new());
    for (at, rooms) in model.circuits.iter().enumerate() {
        let mut water_k = water.enters_k(at);
        let mut hot = Vec::new();
        for (room, one) in rooms.iter().enumerate() {
            let needed = water.needed_m(at, room, water_k);
            let most = one.fixed + longest(model, one);
            let need = needed.map_or(most, |needed| least(needed).min(most));
            let wish = match needed {
                Some(needed) if needed <= 0.0 => Wish::Nothing,
                _ => Wish::Weighed,
            };
            let new = (need - one.fixed).max(0);
            let mut short = Vec::new();
            if wish == Wish::Weighed {
                for step in 0..=SHORT_STEPS {
                    // With so much missing it is at least as short as with a step less.
                    let missing = new * (step - 1).max(0) / SHORT_STEPS;
                    let finned = one.fixed + new - missing;
                    let is_met = needed.is_some_and(|needed| finned >= least(needed));
                    let output_w = water.after(at, room, water_k, metres(finned)).output_w;
                    let short_w = if is_met { 0.0 } else { water.load_w(at, room) - output_w };
                    let weight = model.scale.short(microwatts(short_w).max(0));
                    short.push(Point { finned: new * step / SHORT_STEPS, weight });
                }
            }
            if short.is_empty() {
                short.push(Point { finned: 0, weight: 0 });
            }
            goals.push(Goal {
                need: if wish == Wish::Weighed { new } else { 0 },
                short: rising(short),
            });
            hot.push(Hot { wish, water_k, need });
            water_k = water.after(at, room, water_k, metres(one.fixed)).water_k;
        }
        all.push(hot);
    }
    (all, goals)
}

/// The most new finned length of a room whose runs each have all that is there.
pub(super) fn longest(model: &Model, room: &ModelRoom) -> Picometres {
    let of_run = |run: &ModelRun| {
        // By units of wall that are taken, at the most.
        let mut longest: Vec<Picometres> = vec![0; run.hold as usize + 1];
        for kind in &model.kinds {
            let finned = model.finned(kind.length, 1);
            let most = run.hold / kind.length;
            for _ in 0..kind.limit.map_or(most, |limit| limit.min(most)) {
                for hold in (kind.length as usize..longest.len()).rev() {
                    longest[hold] =
                        longest[hold].max(longest[hold - kind.length as usize] + finned);
                }
            }
        }
        longest[run.hold as usize]
    };
    room.runs.iter().map(of_run).sum()
}
