//! A house marched through time.

use crate::building::Day;
use crate::numeric::linear::factor;
use crate::season::system::{Mixed, System};

/// Of one step, s.
pub(crate) const STEP_S: f64 = 60.0;

/// The water is followed anew once a room is farther from where it was followed, K: between, each room's
/// output goes with its own air. That turns an output by less than one part in 100,000.
const NEAR_K: f64 = 0.25;

/// Or once a zone's share of the time has changed by more, where zones meet.
const NEAR_SHARE: f64 = 0.05;

/// What is lost and stored as one linear step of time.
#[derive(Debug)]
pub(crate) struct March {
    nodes: usize,
    /// Inverse of the matrix of the end of a step, row by row.
    inverse: Vec<f64>,
    capacities_j_k: Vec<f64>,
    held: Vec<bool>,
}

/// A house at one moment, and what has passed since the start.
#[derive(Debug, Clone)]
pub(crate) struct Moment {
    pub(crate) at_k: Vec<f64>,
    before_k: Vec<f64>,
    /// Of the last step, of each caller.
    pub(crate) shares: Vec<f64>,
    /// Heat given to the rooms, lost from pipes outside them, and lost from the house less what it has
    /// from elsewhere, J.
    pub(crate) given_j: f64,
    pub(crate) pipe_j: f64,
    pub(crate) lost_j: f64,
    followed: Option<Followed>,
}

/// The water as it was last followed.
#[derive(Debug, Clone)]
struct Followed {
    at_k: Vec<f64>,
    shares: Vec<f64>,
    given: Mixed,
}

/// How the callers are held during a step.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Held<'a> {
    /// Each calls as much as brings its room to this temperature at the end of the step, K.
    At(&'a [f64]),
    /// All call throughout.
    Throughout,
}

impl March {
    /// None where the equations have no single answer.
    pub(crate) fn of(day: &Day, capacities_j_k: &[f64]) -> Option<March> {
        let nodes = day.nodes();
        let mut matrix = vec![0.0; nodes * nodes];
        for (node, own) in day.own_w_k.iter().enumerate() {
            matrix[node * nodes + node] = capacities_j_k[node] / STEP_S + 0.5 * own;
        }
        for &(a, b, g) in &day.between {
            for (near, far) in [(a, b), (b, a)] {
                matrix[near * nodes + near] += 0.5 * g;
                matrix[near * nodes + far] -= 0.5 * g;
            }
        }
        let held: Vec<bool> = day.held_k.iter().map(Option::is_some).collect();
        for node in (0..nodes).filter(|node| held[*node]) {
            matrix[node * nodes..(node + 1) * nodes].fill(0.0);
            matrix[node * nodes + node] = 1.0;
        }
        let factored = factor(matrix, nodes)?;
        let mut inverse = vec![0.0; nodes * nodes];
        for column in 0..nodes {
            let mut unit = vec![0.0; nodes];
            unit[column] = 1.0;
            for (row, value) in factored.solve(&unit).into_iter().enumerate() {
                inverse[row * nodes + column] = value;
            }
        }
        Some(March { nodes, inverse, capacities_j_k: capacities_j_k.to_vec(), held })
    }

    /// From `moment` on by one step. The outputs of all elements count `strength` times.
    ///
    /// With `A` the conductances and `C` what is stored, `(C/dt + A/2) (T' - T) = q - A T + b`, so that
    /// what is stored is what came in less what went out at the mean of both ends, to rounding.
    pub(crate) fn step(
        &self,
        day: &Day,
        gains_w: &[f64],
        system: &mut System,
        moment: &mut Moment,
        held: Held<'_>,
        strength: f64,
    ) {
        let nodes = self.nodes;
        let middle_k: Vec<f64> = moment
            .at_k
            .iter()
            .zip(&moment.before_k)
            .map(|(now, was)| now + 0.5 * (now - was))
            .collect();
        moment.follow(system, &middle_k);
        let Some(followed) = &moment.followed else { return };
        let output = |room: usize| {
            let warmer_k = middle_k[room] - followed.at_k[room];
            let w = followed.given.to_room_w[room] - followed.given.slope_w_k[room] * warmer_k;
            strength * w.max(0.0)
        };
        let mut right: Vec<f64> = day.losses_w(&moment.at_k).iter().map(|loss| -loss).collect();
        for (right, gain) in right.iter_mut().zip(gains_w) {
            *right += gain;
        }
        for node in (0..nodes).filter(|node| self.held[*node]) {
            right[node] = 0.0;
        }
        // What each caller's rooms get while it calls.
        let outputs: Vec<Vec<(usize, f64)>> = system
            .callers
            .iter()
            .map(|caller| {
                let open = caller.rooms.iter().filter(|room| !self.held[**room]);
                open.map(|&room| (room, output(room))).collect()
            })
            .collect();
        let shares = match held {
            Held::Throughout => vec![1.0; outputs.len()],
            Held::At(set_k) => self.shares(system, &moment.at_k, &right, &outputs, set_k),
        };
        for (outputs, share) in outputs.iter().zip(&shares) {
            for (room, w) in outputs {
                right[*room] += share * w;
                moment.given_j += share * w * STEP_S;
            }
        }
        let rise_k: Vec<f64> = (0..nodes).map(|row| self.row(row, &right)).collect();
        let after_k: Vec<f64> =
            moment.at_k.iter().zip(&rise_k).map(|(at, rise)| at + rise).collect();
        let mean_k: Vec<f64> =
            moment.at_k.iter().zip(&after_k).map(|(at, after)| 0.5 * (at + after)).collect();
        let lost = day.losses_w(&mean_k);
        let lost = lost.iter().zip(gains_w).zip(&self.held).filter(|(_, held)| !**held);
        moment.lost_j += lost.map(|((lost, gain), _)| (lost - gain) * STEP_S).sum::<f64>();
        let running = system.running(&shares);
        let pipe_w = followed.given.zone_lost_w.iter().zip(&running).map(|(w, share)| w * share);
        moment.pipe_j += pipe_w.sum::<f64>() * STEP_S;
        moment.before_k = std::mem::replace(&mut moment.at_k, after_k);
        moment.shares = shares;
    }

    /// The share of the step that each caller calls.
    ///
    /// One caller's heat barely warms another's room within a minute, so that seeing to one after the
    /// other comes to rest at once.
    fn shares(
        &self,
        system: &System,
        at_k: &[f64],
        right: &[f64],
        outputs: &[Vec<(usize, f64)>],
        set_k: &[f64],
    ) -> Vec<f64> {
        let callers = &system.callers;
        let by = |holder: usize, outputs: &[(usize, f64)]| -> f64 {
            outputs.iter().map(|(room, w)| self.inverse[holder * self.nodes + room] * w).sum()
        };
        let free: Vec<f64> =
            callers.iter().map(|c| at_k[c.holder] + self.row(c.holder, right)).collect();
        let mut shares = vec![0.0; callers.len()];
        for _ in 0..50 {
            let mut most = 0.0_f64;
            for (at, caller) in callers.iter().enumerate() {
                let own = by(caller.holder, &outputs[at]);
                let others =
                    shares.iter().zip(outputs).enumerate().filter(|(other, _)| *other != at);
                let warmed: f64 = others.map(|(_, (s, out))| s * by(caller.holder, out)).sum();
                let wanted = (set_k[at] - free[at] - warmed) / own;
                let share = if own > 0.0 { wanted.clamp(0.0, 1.0) } else { 0.0 };
                most = most.max((share - shares[at]).abs());
                shares[at] = share;
            }
            if most < 1e-10 || callers.len() == 1 {
                break;
            }
        }
        shares
    }

    fn row(&self, row: usize, right: &[f64]) -> f64 {
        let entries = &self.inverse[row * self.nodes..(row + 1) * self.nodes];
        entries.iter().zip(right).map(|(a, b)| a * b).sum()
    }

    /// Heat stored above that of all nodes at these temperatures, J.
    pub(crate) fn stored_j(&self, at_k: &[f64], from_k: &[f64]) -> f64 {
        let risen = at_k.iter().zip(from_k).map(|(at, from)| at - from);
        let open =
            self.capacities_j_k.iter().zip(risen).zip(&self.held).filter(|(_, held)| !**held);
        open.map(|((capacity, risen), _)| capacity * risen).sum()
    }
}

impl Moment {
    /// At rest so far.
    pub(crate) fn at_rest(at_k: &[f64], shares: &[f64]) -> Moment {
        Moment {
            at_k: at_k.to_vec(),
            before_k: at_k.to_vec(),
            shares: shares.to_vec(),
            given_j: 0.0,
            pipe_j: 0.0,
            lost_j: 0.0,
            followed: None,
        }
    }

    /// Follows the water where the last time was too far from now.
    fn follow(&mut self, system: &mut System, at_k: &[f64]) {
        let alone = !system.alone.is_empty();
        let moved = self.followed.as_ref().is_none_or(|last| {
            let far = |(a, b): (&f64, &f64), most: f64| (a - b).abs() > most;
            let warmer = at_k.iter().zip(&last.at_k).any(|pair| far(pair, NEAR_K));
            warmer
                || alone && self.shares.iter().zip(&last.shares).any(|pair| far(pair, NEAR_SHARE))
        });
        if moved {
            let given = system.give(at_k, &self.shares, false);
            self.followed =
                Some(Followed { at_k: at_k.to_vec(), shares: self.shares.clone(), given });
        }
    }
}
