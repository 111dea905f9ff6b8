//! A line through the bills, with neither slope nor constant below zero.

/// A period as the fit sees it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Sample {
    /// Mean excess of the balance temperature over the outdoors.
    pub(super) cold_k: f64,
    pub(super) use_w: f64,
    /// By which it counts.
    pub(super) days: f64,
}

/// Use in W is slope times cold, and the constant.
#[derive(Debug, Clone, Copy)]
pub(super) struct Line {
    pub(super) slope: f64,
    pub(super) constant: f64,
    /// Sum of squares left over, each by its days.
    pub(super) misfit: f64,
}

pub(super) fn fit_line(samples: &[Sample], with_constant: bool) -> Line {
    let sum = |f: fn(&Sample) -> f64| samples.iter().map(|s| s.days * f(s)).sum::<f64>();
    let (days, cold, used) = (sum(|_| 1.0), sum(|s| s.cold_k), sum(|s| s.use_w));
    let (cold_cold, cold_used) = (sum(|s| s.cold_k * s.cold_k), sum(|s| s.cold_k * s.use_w));
    let determinant = days * cold_cold - cold * cold;
    let slope = (days * cold_used - cold * used) / determinant;
    let constant = (used - slope * cold) / days;
    // What would be below zero is zero, and the other alone is fitted.
    let (slope, constant) = if with_constant && determinant > 0.0 && constant >= 0.0 {
        if slope >= 0.0 { (slope, constant) } else { (0.0, used / days) }
    } else if cold_cold > 0.0 {
        (cold_used / cold_cold, 0.0)
    } else {
        (0.0, 0.0)
    };
    let misfit = |s: &Sample| {
        let residual = slope * s.cold_k + constant - s.use_w;
        s.days * residual * residual
    };
    Line { slope, constant, misfit: samples.iter().map(misfit).sum() }
}

/// One standard error of the slope: `s² (J'WJ)^-1`, with `s²` the misfit over the degrees of
/// freedom and `J` the derivatives by slope, constant and balance temperature; a column of zeros
/// was not fitted.
pub(super) fn slope_error(samples: &[Sample], slopes: &[[f64; 3]], line: Line) -> Option<f64> {
    let mut normal = [[0.0; 3]; 3];
    for (sample, by) in samples.iter().zip(slopes) {
        for (row, a) in normal.iter_mut().zip(by) {
            for (entry, b) in row.iter_mut().zip(by) {
                *entry += sample.days * a * b;
            }
        }
    }
    let mut unknowns = 1;
    for i in [1, 2] {
        if normal[i][i] > 0.0 {
            unknowns += 1;
        } else {
            // Alone on its diagonal, it leaves the others as they are.
            normal[i][i] = 1.0;
        }
    }
    let freedom = samples.len().checked_sub(unknowns).filter(|&spare| spare > 0)? as f64;
    let [[aa, ab, ac], [_, bb, bc], [_, _, cc]] = normal;
    let rest = bb * cc - bc * bc;
    let determinant = aa * rest - ab * (ab * cc - bc * ac) + ac * (ab * bc - bb * ac);
    let variance = line.misfit / freedom * rest / determinant;
    // Columns that are all but multiples of each other leave nothing but noise.
    (variance >= 0.0 && variance.is_finite()).then(|| variance.sqrt())
}
