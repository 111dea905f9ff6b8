//! Exact slopes: a formula written once over [`Scalar`] gives its value with `f64`, and its value
//! and derivative in one variable with [`Dual`] (forward-mode differentiation).

use std::ops::{Add, Div, Mul, Neg, Sub};

/// What a formula needs of its numbers. Mark the variable with [`Dual::variable`]; everything else
/// enters by `From<f64>` or stays a plain `f64`.
pub trait Scalar:
    Copy
    + From<f64>
    + Neg<Output = Self>
    + Add<Output = Self>
    + Sub<Output = Self>
    + Mul<Output = Self>
    + Div<Output = Self>
    + Add<f64, Output = Self>
    + Sub<f64, Output = Self>
    + Mul<f64, Output = Self>
    + Div<f64, Output = Self>
{
    fn value(self) -> f64;
    fn exp(self) -> Self;
    fn ln(self) -> Self;
    /// `ln(1 + x)`, without losing a small `x`.
    fn ln_1p(self) -> Self;
}

impl Scalar for f64 {
    fn value(self) -> f64 {
        self
    }

    fn exp(self) -> f64 {
        super::exp(self)
    }

    fn ln(self) -> f64 {
        super::ln(self)
    }

    fn ln_1p(self) -> f64 {
        super::ln_1p(self)
    }
}

/// A number with its derivative in the one variable.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dual {
    pub value: f64,
    pub slope: f64,
}

impl Dual {
    /// The variable itself, whose slope is 1.
    pub const fn variable(value: f64) -> Dual {
        Dual { value, slope: 1.0 }
    }
}

impl From<f64> for Dual {
    fn from(value: f64) -> Dual {
        Dual { value, slope: 0.0 }
    }
}

impl Scalar for Dual {
    fn value(self) -> f64 {
        self.value
    }

    fn exp(self) -> Dual {
        let value = super::exp(self.value);
        Dual { value, slope: value * self.slope }
    }

    fn ln(self) -> Dual {
        Dual { value: super::ln(self.value), slope: self.slope / self.value }
    }

    fn ln_1p(self) -> Dual {
        Dual { value: super::ln_1p(self.value), slope: self.slope / (1.0 + self.value) }
    }
}

impl Neg for Dual {
    type Output = Dual;
    fn neg(self) -> Dual {
        Dual { value: -self.value, slope: -self.slope }
    }
}

impl Add for Dual {
    type Output = Dual;
    fn add(self, other: Dual) -> Dual {
        Dual { value: self.value + other.value, slope: self.slope + other.slope }
    }
}

impl Sub for Dual {
    type Output = Dual;
    fn sub(self, other: Dual) -> Dual {
        Dual { value: self.value - other.value, slope: self.slope - other.slope }
    }
}

impl Mul for Dual {
    type Output = Dual;
    fn mul(self, other: Dual) -> Dual {
        let slope = self.slope * other.value + self.value * other.slope;
        Dual { value: self.value * other.value, slope }
    }
}

impl Div for Dual {
    type Output = Dual;
    fn div(self, other: Dual) -> Dual {
        let value = self.value / other.value;
        Dual { value, slope: (self.slope - value * other.slope) / other.value }
    }
}

impl Add<f64> for Dual {
    type Output = Dual;
    fn add(self, other: f64) -> Dual {
        Dual { value: self.value + other, slope: self.slope }
    }
}

impl Sub<f64> for Dual {
    type Output = Dual;
    fn sub(self, other: f64) -> Dual {
        Dual { value: self.value - other, slope: self.slope }
    }
}

impl Mul<f64> for Dual {
    type Output = Dual;
    fn mul(self, other: f64) -> Dual {
        Dual { value: self.value * other, slope: self.slope * other }
    }
}

impl Div<f64> for Dual {
    type Output = Dual;
    fn div(self, other: f64) -> Dual {
        Dual { value: self.value / other, slope: self.slope / other }
    }
}
