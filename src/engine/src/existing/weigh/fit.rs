//! One explanation against the readings.

use super::super::explanation::{Candidate, Change};
use super::super::model::{Model, Predicted, State};
use super::super::place::{At, OUTDOORS, Reading};
use super::Compared;
use crate::numeric::linear::{Factored, factor};
use crate::numeric::{erfc, exp, ln};

/// What the calculation leaves open, one standard error: of all flows and of each, of all elements' output
/// and of each, of all losses and of each. Judgement, as shares; ratings, rooms and pipes as entered are
/// seldom known better.
const ALL_FLOWS: f64 = 0.10;
const EACH_FLOW: f64 = 0.05;
const ALL_OUTPUTS: f64 = 0.05;
const EACH_OUTPUT: f64 = 0.05;
const ALL_LOSSES: f64 = 0.10;
const EACH_LOSS: f64 = 0.10;

/// Nothing is known of the supply but what is read, K.
const SUPPLY_K: f64 = 20.0;

/// Steps of which slopes are taken.
const STEP: f64 = 0.02;
const STEP_K: f64 = 0.5;

/// A strength is found to this share.
const FOUND: f64 = 0.01;

/// Strengths looked at before the best is closed in upon.
const GRID: usize = 7;

/// An explanation at its best.
#[derive(Debug, Clone)]
pub(super) struct Fitted {
    pub(super) candidate: Candidate,
    /// A logarithm.
    pub(super) strength: f64,
    /// Of all places.
    pub(super) predicted: Predicted,
    /// The logarithm of how likely it makes the readings, times its chance.
    pub(super) ln_worth: f64,
    /// The sum of squares that it leaves, in standard errors.
    pub(super) misfit: f64,
    /// What it leaves open of itself.
    open: Open,
}

/// The readings with all that weighs explanations against them.
pub(super) struct Weigher<'a, 'b> {
    pub(super) model: &'a mut Model<'b>,
    entered: State,
    pub(super) readings: Vec<Reading>,
    /// Of each reading, its place among all.
    at: Vec<usize>,
    /// With nothing changed.
    open: Open,
}

/// How far readings may lie from a prediction.
#[derive(Debug, Clone)]
struct Open {
    /// Of the readings.
    covariance: Factored,
    /// Of each thing that is open, by how much it moves each place, for one standard error.
    slopes: Vec<Vec<f64>>,
}

impl<'a, 'b> Weigher<'a, 'b> {
    /// None where the system as entered comes to no rest.
    pub(super) fn of(
        model: &'a mut Model<'b>,
        entered: State,
        readings: Vec<Reading>,
    ) -> Option<Weigher<'a, 'b>> {
        let place = |reading: &Reading| model.places.iter().position(|at| *at == reading.at);
        let at: Vec<usize> = readings.iter().map(place).collect::<Option<_>>()?;
        let open = open(model, &entered, &at)?;
        Some(Weigher { model, entered, readings, at, open })
    }

    pub(super) fn rooms_told(&self) -> bool {
        self.model.rooms_tell()
    }

    /// None where the system comes to no rest with it.
    pub(super) fn fit(&mut self, candidate: Candidate) -> Option<Fitted> {
        let change = candidate.change;
        let Some(range) = change.range() else {
            let state = change.apply(&self.entered, 0.0);
            let open = match change {
                Change::Nothing => self.open.clone(),
                _ => open(self.model, &state, &self.at)?,
            };
            let predicted = self.model.predict(&state)?;
            return Some(self.fitted(candidate, 0.0, predicted, open, 0.0));
        };
        let (low, high) = range.ends();
        // First with what the system as entered leaves open, then with what this one does.
        let strength = self.closest(change, &self.open.covariance.clone(), low, high, GRID)?;
        let around = (high - low) / GRID as f64;
        let state = change.apply(&self.entered, strength);
        let open = open(self.model, &state, &self.at)?;
        let (from, to) = ((strength - around).max(low), (strength + around).min(high));
        let strength = self.closest(change, &open.covariance, from, to, 3)?;
        let predicted = self.model.predict(&change.apply(&self.entered, strength))?;
        let aside = if strength + STEP < high { STEP } else { -STEP };
        let moved = self.model.predict(&change.apply(&self.entered, strength + aside))?;
        let slopes: Vec<f64> = moved
            .values
            .iter()
            .zip(&predicted.values)
            .map(|(moved, at)| (moved - at) / aside)
            .collect();
        let slope: Vec<f64> = self.at.iter().map(|&at| slopes[at]).collect();
        let weighed = open.covariance.solve(&slope);
        let along = |x: &[f64]| weighed.iter().zip(x).map(|(a, b)| a * b).sum::<f64>();
        let bell = Bell { steep: along(&slope), rise: along(&self.left(&predicted)) };
        let ln_width = ln(bell.area(low - strength, high - strength) / (high - low));
        let mut fitted = self.fitted(candidate, strength, predicted, open, ln_width);
        // Beside the readings, the strength is open too: a twelfth of the square is a flat range's variance.
        let error = (high - low) / 12.0_f64.sqrt();
        fitted.open.slopes.push(slopes.iter().map(|slope| slope * error).collect());
        Some(fitted)
    }

    fn fitted(
        &self,
        candidate: Candidate,
        strength: f64,
        predicted: Predicted,
        open: Open,
        ln_width: f64,
    ) -> Fitted {
        let misfit = product(&open.covariance, &self.left(&predicted));
        let ln_worth =
            ln(candidate.chance) + ln_width - 0.5 * (misfit + open.covariance.ln_determinant());
        Fitted { candidate, strength, predicted, ln_worth, misfit, open }
    }

    /// The strength between two that leaves the least: the best of some, and then by golden section.
    fn closest(
        &mut self,
        change: Change,
        covariance: &Factored,
        low: f64,
        high: f64,
        grid: usize,
    ) -> Option<f64> {
        const GOLDEN: f64 = 0.618_033_988_749_894_9;
        let mut left = |strength: f64| {
            let predicted = self.model.predict(&change.apply(&self.entered, strength));
            predicted.map_or(f64::INFINITY, |predicted| product(covariance, &self.left(&predicted)))
        };
        let step = (high - low) / grid as f64;
        let tried: Vec<f64> = (0..=grid).map(|nth| left(low + step * nth as f64)).collect();
        let best = (0..=grid).min_by(|&a, &b| tried[a].total_cmp(&tried[b]))?;
        if !tried[best].is_finite() {
            return None;
        }
        let at = low + step * best as f64;
        let (mut a, mut b) = ((at - step).max(low), (at + step).min(high));
        let (mut c, mut d) = (b - GOLDEN * (b - a), a + GOLDEN * (b - a));
        let (mut of_c, mut of_d) = (left(c), left(d));
        while b - a > FOUND {
            if of_c <= of_d {
                (b, d, of_d) = (d, c, of_c);
                c = b - GOLDEN * (b - a);
                of_c = left(c);
            } else {
                (a, c, of_c) = (c, d, of_d);
                d = a + GOLDEN * (b - a);
                of_d = left(d);
            }
        }
        // An end of the range may be best of all.
        let middle = 0.5 * (a + b);
        Some(if left(middle) <= tried[best] { middle } else { at })
    }

    /// What a prediction leaves of each reading.
    fn left(&self, predicted: &Predicted) -> Vec<f64> {
        let all = self.readings.iter().zip(&self.at);
        all.map(|(reading, &at)| reading.value - predicted.values[at]).collect()
    }

    /// How far apart two explanations' predictions of the readings are, squared, in the first's errors.
    pub(super) fn apart(&self, first: &Fitted, other: &Fitted) -> f64 {
        let between: Vec<f64> = self
            .at
            .iter()
            .map(|&at| first.predicted.values[at] - other.predicted.values[at])
            .collect();
        product(&first.open.covariance, &between)
    }

    /// What an explanation expects at a place that was not read, given all that was, and the standard
    /// error of a reading there: a Gaussian's mean and spread once others of it are known.
    pub(super) fn expects(&self, fitted: &Fitted, place: usize) -> Option<(f64, f64)> {
        let slopes = &fitted.open.slopes;
        let common = |a: usize, b: usize| slopes.iter().map(|s| s[a] * s[b]).sum::<f64>();
        let size = self.at.len();
        let mut covariance = vec![0.0; size * size];
        for (row, &a) in self.at.iter().enumerate() {
            for (column, &b) in self.at.iter().enumerate() {
                covariance[row * size + column] = common(a, b);
            }
            let error = self.model.places[a].error();
            covariance[row * size + row] += error * error;
        }
        let with: Vec<f64> = self.at.iter().map(|&at| common(at, place)).collect();
        let weights = factor(covariance, size)?.solve(&with);
        let left = self.left(&fitted.predicted);
        let moved: f64 = weights.iter().zip(&left).map(|(a, b)| a * b).sum();
        let known: f64 = weights.iter().zip(&with).map(|(a, b)| a * b).sum();
        let error = self.model.places[place].error();
        let variance = error * error + (common(place, place) - known).max(0.0);
        Some((fitted.predicted.values[place] + moved, variance.sqrt()))
    }

    /// Whether a reading there would count.
    pub(super) fn tells(&self, at: At) -> bool {
        self.model.rooms_tell() || !matches!(at, At::Air(_))
    }

    pub(super) fn was_read(&self, place: usize) -> bool {
        self.at.contains(&place)
    }

    pub(super) fn compared(&self, calculated: &Fitted, first: &Fitted) -> Vec<Compared> {
        let one = |(reading, &at): (&Reading, &usize)| {
            let shown = |value: f64| shown(reading.at, value);
            Compared {
                at: reading.at,
                read: shown(reading.value),
                calculated: shown(calculated.predicted.values[at]),
                explained: shown(first.predicted.values[at]),
            }
        };
        self.readings.iter().zip(&self.at).map(one).collect()
    }
}

/// A compared number as it is measured.
pub(super) fn shown(at: At, value: f64) -> f64 {
    match at {
        At::Flow(_) => exp(value),
        _ => value,
    }
}

/// The covariance of readings about what a state predicts: their own errors, and by the slopes of the
/// prediction what is open of the state itself.
fn open(model: &mut Model<'_>, state: &State, at: &[usize]) -> Option<Open> {
    let base = model.predict(state)?;
    let size = at.len();
    let mut covariance = vec![0.0; size * size];
    for (row, &place) in at.iter().enumerate() {
        let error = model.places[place].error();
        covariance[row * size + row] = error * error;
    }
    let mut all = Vec::new();
    for (moved, step, error) in nearby(model, state) {
        let moved = model.predict(&moved)?;
        let slopes: Vec<f64> = moved
            .values
            .iter()
            .zip(&base.values)
            .map(|(moved, base)| (moved - base) / step * error)
            .collect();
        for (row, &a) in at.iter().enumerate() {
            for (column, &b) in at.iter().enumerate() {
                covariance[row * size + column] += slopes[a] * slopes[b];
            }
        }
        all.push(slopes);
    }
    Some(Open { covariance: factor(covariance, size)?, slopes: all })
}

/// The state with each thing moved of which it is not known exactly; by how much, and its standard error.
fn nearby(model: &Model<'_>, state: &State) -> Vec<(State, f64, f64)> {
    let mut all = Vec::new();
    let mut add = |change: &dyn Fn(&mut State), step: f64, error: f64| {
        let mut moved = state.clone();
        change(&mut moved);
        all.push((moved, step, error));
    };
    let all_by = |values: &mut Vec<f64>| values.iter_mut().for_each(|value| *value += STEP);
    add(&|state| state.supply_k += STEP_K, STEP_K, SUPPLY_K);
    add(&|state| all_by(&mut state.flow), STEP, ALL_FLOWS);
    add(&|state| all_by(&mut state.output), STEP, ALL_OUTPUTS);
    if state.flow.len() > 1 {
        for at in 0..state.flow.len() {
            add(&|state| state.flow[at] += STEP, STEP, EACH_FLOW);
        }
    }
    for at in 0..state.output.len() {
        add(&|state| state.output[at] += STEP, STEP, EACH_OUTPUT);
    }
    if model.rooms_tell() {
        add(&|state| state.outdoors_k += STEP_K, STEP_K, OUTDOORS.si());
        add(&|state| all_by(&mut state.loss), STEP, ALL_LOSSES);
        for at in 0..state.loss.len() {
            add(&|state| state.loss[at] += STEP, STEP, EACH_LOSS);
        }
    }
    all
}

/// `x C^-1 x`.
fn product(covariance: &Factored, x: &[f64]) -> f64 {
    covariance.solve(x).iter().zip(x).map(|(a, b)| a * b).sum()
}

/// Laplace's method: the likelihood about a strength, as a share of that there, is the bell
/// `exp(rise x - steep x²/2)`. About the best strength within a range it is level; at an end of the range it
/// may rise beyond that.
struct Bell {
    rise: f64,
    steep: f64,
}

impl Bell {
    /// Between two distances from the strength, the first not above nought, the second not below.
    fn area(&self, from: f64, to: f64) -> f64 {
        // So wide a bell is flat.
        let wide = (1.0 / self.steep.max(1e-6).sqrt()).min(1e3);
        let top = self.rise * wide * wide;
        // Far from its top a bell is an exponential, and its parts are too small to be subtracted.
        if (top - to).max(from - top) > 6.0 * wide {
            return 1.0 / self.rise.abs();
        }
        let errors = |x: f64| (x - top) / wide;
        let within = below(errors(to)) - below(errors(from));
        let higher = exp((0.5 * self.rise * top).min(600.0));
        higher * wide * (2.0 * std::f64::consts::PI).sqrt() * within
    }
}

/// The part of a bell's area below so many standard errors.
fn below(errors: f64) -> f64 {
    0.5 * erfc(-errors / std::f64::consts::SQRT_2)
}
