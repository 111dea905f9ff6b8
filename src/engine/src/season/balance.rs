//! The steady state of a house on one day: every node where the heat that comes equals the heat that
//! goes, every thermostat satisfied, or its zone running throughout or not at all.

use super::system::{Mixed, System};
use crate::building::Day;
use crate::numeric::linear::factor;

/// A house at rest.
#[derive(Debug, Clone)]
pub(crate) struct Steady {
    /// Of each node, in K.
    pub(crate) at_k: Vec<f64>,
    /// Of the time that each caller calls.
    pub(crate) shares: Vec<f64>,
    pub(crate) given: Mixed,
}

/// How a caller stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Mode {
    /// Its room is as warm as it is meant to be.
    Holds,
    /// It calls all the time, and its room may be colder.
    Throughout,
    /// It never calls, and its room may be warmer.
    Off,
}

/// No node is out of balance by more, W.
const BALANCED_W: f64 = 1e-7;

/// Nor a room that is held off its temperature by more, K.
const HELD_K: f64 = 1e-9;

/// Many more rounds than any house has taken.
const MOST_ROUNDS: usize = 80;

/// From this round on one caller changes its stand at a time, so that two cannot turn each other round.
const ONE_BY_ONE: usize = 15;

/// Finds rest from a guess, by Newton's steps; a caller changes its stand where the step says so.
///
/// What is returned was put back into the balance: of every node, with the water followed anew at just
/// these temperatures. None where no such state was found.
pub(crate) fn settle(
    day: &Day,
    gains_w: &[f64],
    system: &mut System,
    guess: Option<&Steady>,
) -> Option<Steady> {
    let nodes = day.nodes();
    let callers = system.callers.len();
    let mut at_k = match guess {
        Some(guess) if guess.at_k.len() == nodes => guess.at_k.clone(),
        _ => system.meant_k(nodes),
    };
    let mut shares = match guess {
        Some(guess) if guess.shares.len() == callers => guess.shares.clone(),
        _ => vec![0.5; callers],
    };
    let stand = |share: &f64| match *share {
        share if share <= 0.0 => Mode::Off,
        share if share >= 1.0 => Mode::Throughout,
        _ => Mode::Holds,
    };
    let mut modes: Vec<Mode> = shares.iter().map(stand).collect();
    // Nobody hears a caller without an element.
    let mut deaf = vec![false; callers];
    for (at, held) in at_k.iter_mut().zip(&day.held_k) {
        *at = held.unwrap_or(*at);
    }
    for round in 0..MOST_ROUNDS {
        let given = system.give(&at_k, &shares, modes.iter().all(|mode| *mode == Mode::Off));
        for (at, caller) in system.callers.iter().enumerate() {
            let nothing = caller.rooms.iter().all(|&room| given.to_room_w[room] <= 0.0);
            if modes[at] != Mode::Off && nothing {
                (modes[at], shares[at], deaf[at]) = (Mode::Off, 0.0, true);
            }
        }
        let residual_w = residual_w(day, gains_w, system, &given, &at_k, &shares);
        let out = residual_w.iter().zip(&day.held_k).filter(|(_, held)| held.is_none());
        let balanced = out.fold(0.0, |most: f64, (r, _)| most.max(r.abs())) <= BALANCED_W;
        let stands = |at: usize| {
            let caller = &system.callers[at];
            let over_k = at_k[caller.holder] - caller.set_k;
            match modes[at] {
                Mode::Holds => over_k.abs() <= HELD_K,
                Mode::Throughout => over_k <= HELD_K,
                Mode::Off => over_k >= -HELD_K || deaf[at],
            }
        };
        if balanced && (0..callers).all(stands) {
            return Some(Steady { at_k, shares, given });
        }
        step(day, system, &given, &modes, &residual_w, &mut at_k, &mut shares)?;
        for (at, caller) in system.callers.iter().enumerate() {
            let over_k = at_k[caller.holder] - caller.set_k;
            let next = match modes[at] {
                Mode::Holds if shares[at] > 1.0 => Mode::Throughout,
                Mode::Holds if shares[at] < 0.0 => Mode::Off,
                Mode::Throughout if over_k > HELD_K => Mode::Holds,
                Mode::Off if over_k < -HELD_K && !deaf[at] => Mode::Holds,
                same => same,
            };
            shares[at] = shares[at].clamp(0.0, 1.0);
            if next != modes[at] {
                modes[at] = next;
                if round >= ONE_BY_ONE {
                    break;
                }
            }
        }
    }
    None
}

/// What each node gets beyond what it loses, W.
fn residual_w(
    day: &Day,
    gains_w: &[f64],
    system: &System,
    given: &Mixed,
    at_k: &[f64],
    shares: &[f64],
) -> Vec<f64> {
    let mut residual_w: Vec<f64> = day.losses_w(at_k).iter().map(|loss| -loss).collect();
    for (residual, gain) in residual_w.iter_mut().zip(gains_w) {
        *residual += gain;
    }
    for (caller, share) in system.callers.iter().zip(shares) {
        for &room in &caller.rooms {
            residual_w[room] += share * given.to_room_w[room];
        }
    }
    residual_w
}

/// One step of Newton's. A room that is held gives its place among the unknowns to its caller's share.
fn step(
    day: &Day,
    system: &System,
    given: &Mixed,
    modes: &[Mode],
    residual_w: &[f64],
    at_k: &mut [f64],
    shares: &mut [f64],
) -> Option<()> {
    let nodes = day.nodes();
    let mut matrix = vec![0.0; nodes * nodes];
    let mut right = residual_w.to_vec();
    for (node, own) in day.own_w_k.iter().enumerate() {
        matrix[node * nodes + node] += own;
    }
    for &(a, b, g) in &day.between {
        matrix[a * nodes + a] += g;
        matrix[b * nodes + b] += g;
        matrix[a * nodes + b] -= g;
        matrix[b * nodes + a] -= g;
    }
    for (caller, share) in system.callers.iter().zip(&*shares) {
        for &room in &caller.rooms {
            matrix[room * nodes + room] += share * given.slope_w_k[room];
        }
    }
    for (node, held) in day.held_k.iter().enumerate() {
        if held.is_some() {
            matrix[node * nodes..(node + 1) * nodes].fill(0.0);
            matrix[node * nodes + node] = 1.0;
            right[node] = 0.0;
        }
    }
    let holding = |at: &usize| {
        let holder = system.callers[*at].holder;
        modes[*at] == Mode::Holds && day.held_k[holder].is_none()
    };
    let holding: Vec<usize> = (0..modes.len()).filter(holding).collect();
    for &at in &holding {
        let caller = &system.callers[at];
        let rise_k = caller.set_k - at_k[caller.holder];
        for row in 0..nodes {
            let entry = &mut matrix[row * nodes + caller.holder];
            right[row] -= *entry * rise_k;
            *entry = 0.0;
        }
        for &room in caller.rooms.iter().filter(|room| day.held_k[**room].is_none()) {
            matrix[room * nodes + caller.holder] = -given.to_room_w[room];
        }
        at_k[caller.holder] = caller.set_k;
    }
    let step = factor(matrix, nodes)?.solve(&right);
    for (node, rise_k) in step.iter().enumerate() {
        match holding.iter().find(|at| system.callers[**at].holder == node) {
            Some(&at) => shares[at] += rise_k,
            None => at_k[node] += rise_k,
        }
    }
    at_k.iter().all(|k| k.is_finite()).then_some(())
}

/// Every node's temperature with these rooms held at what they have, and no heat for the spaces: K.
pub(crate) fn with_rooms_at(day: &Day, rooms_k: &[f64]) -> Option<Vec<f64>> {
    let nodes = day.nodes();
    let mut at_k = rooms_k.to_vec();
    at_k.resize(nodes, day.outdoors.si());
    let spaces = day.rooms..nodes;
    let size = spaces.len();
    for node in spaces.clone() {
        at_k[node] = day.held_k[node].unwrap_or(at_k[node]);
    }
    let losses = day.losses_w(&at_k);
    let mut matrix = vec![0.0; size * size];
    let mut right: Vec<f64> = spaces.clone().map(|node| -losses[node]).collect();
    let place = |node: usize| node.checked_sub(day.rooms);
    for node in spaces.clone() {
        let at = node - day.rooms;
        matrix[at * size + at] += day.own_w_k[node];
    }
    for &(a, b, g) in &day.between {
        for (near, far) in [(a, b), (b, a)] {
            if let Some(row) = place(near) {
                matrix[row * size + row] += g;
                if let Some(column) = place(far) {
                    matrix[row * size + column] -= g;
                }
            }
        }
    }
    for node in spaces.clone().filter(|node| day.held_k[*node].is_some()) {
        let at = node - day.rooms;
        matrix[at * size..(at + 1) * size].fill(0.0);
        matrix[at * size + at] = 1.0;
        right[at] = 0.0;
    }
    let rise = factor(matrix, size)?.solve(&right);
    for (at, rise_k) in rise.iter().enumerate() {
        at_k[day.rooms + at] += rise_k;
    }
    Some(at_k)
}
