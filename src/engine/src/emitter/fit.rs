//! Fits the output law to a maker's table.

use super::{HeatingEffect, Rating, flow_factor};
use crate::numeric::{exp, ln, pow};
use crate::quantity::{LinearPower, MassFlow, Temperature, TemperatureDifference};
use serde::{Deserialize, Serialize};

/// One entry of a maker's table.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Point {
    /// Mean water temperature in the element.
    #[serde(rename = "water_k")]
    pub water: Temperature,
    #[serde(rename = "flow_kg_per_s")]
    pub flow: MassFlow,
    /// Per finned length.
    #[serde(rename = "output_w_per_m")]
    pub output: LinearPower,
}

/// The conditions that the fitted rating is to hold at; `air` is also the whole table's.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Reference {
    #[serde(rename = "water_k")]
    pub water: Temperature,
    #[serde(rename = "air_k")]
    pub air: Temperature,
    #[serde(rename = "flow_kg_per_s")]
    pub flow: MassFlow,
}

/// The output law that comes nearest to a table.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Fit {
    /// Output at the reference conditions.
    #[serde(rename = "output_w_per_m")]
    pub output: LinearPower,
    pub exponent: f64,
    /// Fitted less given, point by point.
    #[serde(rename = "residuals_w_per_m")]
    pub residuals: Vec<LinearPower>,
    /// `None` for two points, through which the law passes exactly.
    pub errors: Option<StandardErrors>,
}

/// One standard error of each fitted number, by the scatter of the residuals.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct StandardErrors {
    #[serde(rename = "output_w_per_m")]
    pub output: LinearPower,
    pub exponent: f64,
}

/// Why a table has no fit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum FitError {
    /// The reference is not finite, its water no warmer than its air, or its flow not above zero.
    Reference,
    /// The point at `index` (from zero) is unfit.
    Point { index: usize, fault: PointFault },
    /// Fewer than two different water temperatures: the exponent could be anything.
    TooFewTemperatures,
    /// No least squares were found; the numbers follow no such law.
    NoConvergence,
}

/// What is wrong with a point.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum PointFault {
    NotFinite,
    WaterNotAboveAir,
    OutputNotPositive,
    FlowNotPositive,
}

impl Fit {
    /// The fitted law as a rating.
    pub fn rating(&self, reference: Reference, effect: HeatingEffect) -> Rating {
        Rating {
            output: self.output,
            water: reference.water,
            air: reference.air,
            exponent: self.exponent,
            flow: reference.flow,
            effect,
        }
    }
}

/// The unweighted nonlinear least squares fit, in W/m, of output at `reference` and exponent.
///
/// Levenberg and Marquardt's method from the straight line through the logarithms. That line is
/// itself another answer: it weighs small outputs more, and differs on a rounded or noisy table.
///
/// The exponent comes out as the table has it; whether it is a likely one is for the caller to say.
///
/// # Errors
/// [`FitError`] names the unfit point or the reason.
pub fn fit(points: &[Point], reference: Reference) -> Result<Fit, FitError> {
    check_reference(reference)?;
    for (index, point) in points.iter().enumerate() {
        check_point(point, reference.air).map_err(|fault| FitError::Point { index, fault })?;
    }
    let first = points.first().ok_or(FitError::TooFewTemperatures)?;
    if points.iter().all(|point| point.water == first.water) {
        return Err(FitError::TooFewTemperatures);
    }
    // Outputs as a share of the largest keep both unknowns near one.
    let largest = points.iter().fold(LinearPower::ZERO, |most, point| most.max(point.output));
    let samples: Vec<Sample> =
        points.iter().map(|point| sample(point, reference, largest)).collect();
    let law = least_squares(&samples, logarithmic_start(&samples))?;
    let residuals = samples.iter().map(|s| largest * law.residual(s)).collect();
    let errors = standard_errors(&samples, law)
        .map(|(output, exponent)| StandardErrors { output: largest * output, exponent });
    Ok(Fit { output: largest * law.output, exponent: law.exponent, residuals, errors })
}

fn check_reference(reference: Reference) -> Result<(), FitError> {
    let finite =
        reference.water.is_finite() && reference.air.is_finite() && reference.flow.is_finite();
    let sound = finite && reference.water > reference.air && reference.flow > MassFlow::ZERO;
    if sound { Ok(()) } else { Err(FitError::Reference) }
}

fn check_point(point: &Point, air: Temperature) -> Result<(), PointFault> {
    if !(point.water.is_finite() && point.output.is_finite() && point.flow.is_finite()) {
        return Err(PointFault::NotFinite);
    }
    if point.water - air <= TemperatureDifference::ZERO {
        return Err(PointFault::WaterNotAboveAir);
    }
    if point.output <= LinearPower::ZERO {
        return Err(PointFault::OutputNotPositive);
    }
    if point.flow <= MassFlow::ZERO {
        return Err(PointFault::FlowNotPositive);
    }
    Ok(())
}

/// A point without units.
#[derive(Debug, Clone, Copy)]
struct Sample {
    /// Excess over the reference's excess.
    ratio: f64,
    /// Output as a share of the largest, brought to the reference's flow.
    output: f64,
    /// The flow's factor, by which the residual counts.
    weight: f64,
}

fn sample(point: &Point, reference: Reference, largest: LinearPower) -> Sample {
    let weight = flow_factor(point.flow, reference.flow);
    Sample {
        ratio: (point.water - reference.air) / (reference.water - reference.air),
        output: point.output / largest / weight,
        weight,
    }
}

/// `output ratio^exponent`.
#[derive(Debug, Clone, Copy)]
struct Law {
    output: f64,
    exponent: f64,
}

impl Law {
    fn residual(self, sample: &Sample) -> f64 {
        sample.weight * (self.output * pow(sample.ratio, self.exponent) - sample.output)
    }

    /// The residual's derivatives by output and by exponent.
    fn slopes(self, sample: &Sample) -> (f64, f64) {
        let power = sample.weight * pow(sample.ratio, self.exponent);
        (power, self.output * power * ln(sample.ratio))
    }

    fn sum_of_squares(self, samples: &[Sample]) -> f64 {
        samples.iter().map(|s| self.residual(s)).map(|r| r * r).sum()
    }
}

/// The least squares line through the logarithms.
fn logarithmic_start(samples: &[Sample]) -> Law {
    let count = samples.len() as f64;
    let mean = |f: fn(&Sample) -> f64| samples.iter().map(f).sum::<f64>() / count;
    let (x, y) = (mean(|s| ln(s.ratio)), mean(|s| ln(s.output)));
    let (mut xx, mut xy) = (0.0, 0.0);
    for s in samples {
        let dx = ln(s.ratio) - x;
        xx += dx * dx;
        xy += dx * (ln(s.output) - y);
    }
    let exponent = xy / xx;
    Law { output: exp(y - exponent * x), exponent }
}

/// The normal equations of a linearised law: matrix (symmetric) and right-hand side.
#[derive(Debug, Clone, Copy, Default)]
struct Normal {
    aa: f64,
    ab: f64,
    bb: f64,
    a: f64,
    b: f64,
}

impl Normal {
    fn of(samples: &[Sample], law: Law) -> Normal {
        samples.iter().fold(Normal::default(), |sum, s| {
            let (residual, (by_a, by_b)) = (law.residual(s), law.slopes(s));
            Normal {
                aa: sum.aa + by_a * by_a,
                ab: sum.ab + by_a * by_b,
                bb: sum.bb + by_b * by_b,
                a: sum.a - by_a * residual,
                b: sum.b - by_b * residual,
            }
        })
    }

    fn determinant(self) -> f64 {
        self.aa * self.bb - self.ab * self.ab
    }

    fn damped(self, damping: f64) -> Normal {
        Normal { aa: self.aa * (1.0 + damping), bb: self.bb * (1.0 + damping), ..self }
    }

    fn solve(self) -> (f64, f64) {
        let d = self.determinant();
        ((self.a * self.bb - self.b * self.ab) / d, (self.b * self.aa - self.a * self.ab) / d)
    }
}

fn least_squares(samples: &[Sample], start: Law) -> Result<Law, FitError> {
    let mut law = start;
    let mut sum = law.sum_of_squares(samples);
    let mut damping = 1e-4;
    for _ in 0..200 {
        let (by_output, by_exponent) = Normal::of(samples, law).damped(damping).solve();
        let next = Law { output: law.output + by_output, exponent: law.exponent + by_exponent };
        let next_sum = next.sum_of_squares(samples);
        if next_sum <= sum {
            (law, sum) = (next, next_sum);
            damping *= 0.1;
        } else {
            damping *= 10.0;
        }
        let small = by_output.abs() <= 1e-13 * law.output.abs()
            && by_exponent.abs() <= 1e-13 * (1.0 + law.exponent.abs());
        if small {
            return Ok(law);
        }
    }
    Err(FitError::NoConvergence)
}

/// Square roots of the diagonal of `s² (J'J)^-1`, with `s²` the residuals' sum of squares over the
/// degrees of freedom.
fn standard_errors(samples: &[Sample], law: Law) -> Option<(f64, f64)> {
    let freedom = samples.len().checked_sub(2).filter(|&spare| spare > 0)? as f64;
    let normal = Normal::of(samples, law);
    let scale = law.sum_of_squares(samples) / freedom / normal.determinant();
    Some(((scale * normal.bb).sqrt(), (scale * normal.aa).sqrt()))
}

#[cfg(test)]
mod tests {
    use super::super::FLOW_EXPONENT;
    use super::super::tests::fahrenheit;
    use super::*;
    use crate::quantity::Unit;

    fn reference() -> Reference {
        Reference {
            water: fahrenheit(180.0),
            air: fahrenheit(65.0),
            flow: MassFlow::of(500.0, Unit::PoundPerHour),
        }
    }

    fn point(water: f64, flow: f64, output: f64) -> Point {
        Point {
            water: fahrenheit(water),
            flow: MassFlow::of(flow, Unit::PoundPerHour),
            output: LinearPower::of(output, Unit::BtuPerHourFoot),
        }
    }

    #[test]
    fn two_points_are_met_exactly() {
        let found = fit(&[point(180.0, 500.0, 600.0), point(140.0, 500.0, 330.0)], reference());
        let found = found.expect("two points have a law");
        assert!((found.output.to(Unit::BtuPerHourFoot) - 600.0).abs() < 1e-9);
        assert!((found.exponent - ln(600.0 / 330.0) / ln(115.0 / 75.0)).abs() < 1e-10);
        assert_eq!(found.errors, None);
    }

    #[test]
    fn a_second_flow_is_brought_to_the_reference() {
        let law = |water: f64, flow: f64| {
            let output =
                600.0 * pow((water - 65.0) / 115.0, 1.37) * pow(flow / 500.0, FLOW_EXPONENT);
            point(water, flow, output)
        };
        let mut points: Vec<Point> = Vec::new();
        for water in [120.0, 150.0, 180.0, 210.0] {
            points.extend([law(water, 500.0), law(water, 2000.0)]);
        }
        let found = fit(&points, reference()).expect("an exact law");
        assert!((found.output.to(Unit::BtuPerHourFoot) - 600.0).abs() < 1e-8);
        assert!((found.exponent - 1.37).abs() < 1e-10);
        assert!(found.residuals.iter().all(|r| r.abs().si() < 1e-8));
    }

    #[test]
    fn what_is_wrong_is_named() {
        let good = point(180.0, 500.0, 600.0);
        let at_one = |fault| FitError::Point { index: 1, fault };
        let cases = [
            (point(65.0, 500.0, 100.0), at_one(PointFault::WaterNotAboveAir)),
            (point(160.0, 500.0, 0.0), at_one(PointFault::OutputNotPositive)),
            (point(160.0, 0.0, 400.0), at_one(PointFault::FlowNotPositive)),
            (point(f64::NAN, 500.0, 400.0), at_one(PointFault::NotFinite)),
            (point(160.0, 500.0, f64::INFINITY), at_one(PointFault::NotFinite)),
            (point(180.0, 500.0, 590.0), FitError::TooFewTemperatures),
        ];
        for (second, expected) in cases {
            assert_eq!(fit(&[good, second], reference()), Err(expected));
        }
        assert_eq!(fit(&[], reference()), Err(FitError::TooFewTemperatures));
        let cold = Reference { water: fahrenheit(65.0), ..reference() };
        assert_eq!(fit(&[good], cold), Err(FitError::Reference));
    }
}
