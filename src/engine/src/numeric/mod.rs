//! The few numerical tools the engine needs. Transcendental functions come from `libm`, so that a
//! native build and a wasm build give the same bits.

pub mod dual;
pub mod linear;

pub fn pow(base: f64, exponent: f64) -> f64 {
    libm::pow(base, exponent)
}

pub fn exp(x: f64) -> f64 {
    libm::exp(x)
}

pub fn ln(x: f64) -> f64 {
    libm::log(x)
}

/// `ln(1 + x)`, without losing a small `x`.
pub fn ln_1p(x: f64) -> f64 {
    libm::log1p(x)
}

/// `exp(x) - 1`, without losing a small `x`.
pub fn exp_m1(x: f64) -> f64 {
    libm::expm1(x)
}

pub fn log10(x: f64) -> f64 {
    libm::log10(x)
}

/// A root of `f` between `low` and `high`, or `None` when `f` has one sign at both ends or is not
/// finite there.
///
/// Bisection with secant steps where they stay inside (the Illinois form of false position). Stops
/// when the bracket is narrower than `tolerance`.
pub fn root(f: impl Fn(f64) -> f64, low: f64, high: f64, tolerance: f64) -> Option<f64> {
    let (mut a, mut b) = (low, high);
    let (mut fa, mut fb) = (f(a), f(b));
    if fa == 0.0 {
        return Some(a);
    }
    if fb == 0.0 {
        return Some(b);
    }
    if !(fa.is_finite() && fb.is_finite()) || fa.signum() == fb.signum() {
        return None;
    }
    for step in 0..200 {
        if (b - a).abs() <= tolerance {
            break;
        }
        // Every third step halves the bracket, so that a flat function cannot stall the search.
        let x = if step % 3 == 2 { 0.5 * (a + b) } else { b - fb * (b - a) / (fb - fa) };
        let fx = f(x);
        if !fx.is_finite() {
            return None;
        }
        if fx == 0.0 {
            return Some(x);
        }
        if fx.signum() == fb.signum() {
            fa *= 0.5;
        } else {
            (a, fa) = (b, fb);
        }
        (b, fb) = (x, fx);
    }
    Some(0.5 * (a + b))
}

/// Horner's rule; the constant term first.
pub fn polynomial(coefficients: &[f64], x: f64) -> f64 {
    coefficients.iter().rev().fold(0.0, |sum, c| sum * x + c)
}

pub fn sin(radians: f64) -> f64 {
    libm::sin(radians)
}

pub fn cos(radians: f64) -> f64 {
    libm::cos(radians)
}

pub fn asin(sine: f64) -> f64 {
    libm::asin(sine)
}

/// One less the error function, without losing a small rest.
pub fn erfc(x: f64) -> f64 {
    libm::erfc(x)
}
