//! Pumps: the head they give against the flow.

use super::topology::Liquid;
use crate::named::names;
use crate::numeric::{ln, pow};
use crate::pipe::STANDARD_GRAVITY;
use crate::quantity::{Density, Length, MassFlow, Pressure, Unit, VolumeFlow};

/// Equal pumps at one speed.
#[derive(Debug, Clone, PartialEq)]
pub struct Pump {
    pub curve: PumpCurve,
    /// As a share of the speed that the curve is for. By the affinity laws flow goes with the speed
    /// and head with its square.
    pub speed: f64,
    pub in_parallel: u32,
    pub in_series: u32,
    pub density: Density,
}

impl Pump {
    /// One pump at full speed.
    pub fn one(curve: PumpCurve, liquid: Liquid) -> Pump {
        Pump { curve, speed: 1.0, in_parallel: 1, in_series: 1, density: liquid.density }
    }

    /// The pressure that they add to a flow.
    pub fn lift(&self, flow: MassFlow) -> Pressure {
        Pressure::from_si(self.lift_and_slope(flow.si()).0)
    }

    /// In Pa and Pa s/kg, of a flow in kg/s.
    pub(super) fn lift_and_slope(&self, flow: f64) -> (f64, f64) {
        let flow_scale = self.density.si() * f64::from(self.in_parallel) * self.speed;
        let head_scale = f64::from(self.in_series) * self.speed * self.speed;
        let pressure_scale = self.density.si() * STANDARD_GRAVITY * head_scale;
        let (head, slope) = self.curve.head_and_slope(flow / flow_scale);
        (head * pressure_scale, slope * pressure_scale / flow_scale)
    }

    /// Pressure at no flow a flow near the end of the curve, in Pa s/kg: how steep it is by and large.
    pub(super) fn overall_slope(&self) -> f64 {
        let full = self.density.si() * f64::from(self.in_parallel) * self.speed * self.curve.end;
        self.lift_and_slope(0.0).0 / full
    }

    /// Whether a flow lies on the curve, neither backward nor beyond its last point.
    pub(super) fn on_curve(&self, flow: f64) -> bool {
        let scale = self.density.si() * f64::from(self.in_parallel) * self.speed;
        (0.0..=self.curve.end).contains(&(flow / scale))
    }

    pub(super) fn is_sound(&self) -> bool {
        let positive = |value: f64| value.is_finite() && value > 0.0;
        positive(self.speed)
            && positive(self.density.si())
            && self.in_parallel > 0
            && self.in_series > 0
    }
}

/// Head against flow, nowhere rising.
///
/// Beyond its last point it falls on, more and more steeply, through zero. Backward flow meets the
/// head at rest and as much more as forward flow would lose: a judgement, for no maker tells.
#[derive(Debug, Clone, PartialEq)]
pub struct PumpCurve {
    shape: Shape,
    /// The last flow of the curve, in m³/s.
    end: f64,
}

#[derive(Debug, Clone, PartialEq)]
enum Shape {
    /// `H = H_0 - a Q^b` in m and m³/s, b at least 1.
    Power { shutoff: f64, a: f64, b: f64 },
    /// By flow; each holds up to the next.
    Pieces(Vec<Piece>),
}

/// `head + slope x + square x² + cube x³` at `flow + x`.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Piece {
    flow: f64,
    head: f64,
    slope: f64,
    square: f64,
    cube: f64,
}

/// One point of a pump's curve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CurvePoint {
    pub flow: VolumeFlow,
    pub head: Length,
}

/// How a curve runs between its points.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Join {
    /// Three points, the first at rest, by a power; others by a cubic that does not overshoot.
    Smooth,
    /// By straight lines.
    Straight,
}

/// Why points make no curve. The number is the point's place in the list as given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CurveError {
    TooFewPoints,
    NotFinite(usize),
    /// Flow or head below zero.
    Negative(usize),
    /// A second point at one flow.
    Repeated(usize),
    /// More head than at a smaller flow.
    Rising(usize),
    /// No head anywhere.
    NoHead,
}

impl PumpCurve {
    /// The curve through three points or more, given in any order.
    pub fn through(points: &[CurvePoint], join: Join) -> Result<PumpCurve, CurveError> {
        let sorted = sorted(points)?;
        let end = sorted[sorted.len() - 1].flow;
        let shape = match (join, power(&sorted)) {
            (Join::Smooth, Some(power)) => power,
            _ => Shape::Pieces(pieces(sorted, join)),
        };
        Ok(PumpCurve { shape, end })
    }

    pub fn head(&self, flow: VolumeFlow) -> Length {
        Length::from_si(self.head_and_slope(flow.si()).0)
    }

    /// The last flow of the curve.
    pub fn end(&self) -> VolumeFlow {
        VolumeFlow::from_si(self.end)
    }

    /// In m and s/m², of a flow in m³/s.
    fn head_and_slope(&self, flow: f64) -> (f64, f64) {
        let (head, slope) = self.forward(flow.abs());
        if flow < 0.0 { (2.0 * self.forward(0.0).0 - head, slope) } else { (head, slope) }
    }

    fn forward(&self, flow: f64) -> (f64, f64) {
        match &self.shape {
            Shape::Power { shutoff, a, b } => {
                // The slope from one power less, so that it is right at rest too.
                let fall = a * pow(flow, b - 1.0);
                (shutoff - fall * flow, -b * fall)
            }
            Shape::Pieces(pieces) => {
                let mut piece = pieces[0];
                for next in &pieces[1..] {
                    if flow < next.flow {
                        break;
                    }
                    piece = *next;
                }
                let x = flow - piece.flow;
                let head = piece.head + x * (piece.slope + x * (piece.square + x * piece.cube));
                (head, piece.slope + x * (2.0 * piece.square + x * 3.0 * piece.cube))
            }
        }
    }
}

/// The points in order of flow, or what is wrong with them.
fn sorted(points: &[CurvePoint]) -> Result<Vec<Piece>, CurveError> {
    if points.len() < 3 {
        return Err(CurveError::TooFewPoints);
    }
    let mut order: Vec<usize> = Vec::with_capacity(points.len());
    for (index, point) in points.iter().enumerate() {
        if !(point.flow.is_finite() && point.head.is_finite()) {
            return Err(CurveError::NotFinite(index));
        }
        if point.flow < VolumeFlow::ZERO || point.head < Length::ZERO {
            return Err(CurveError::Negative(index));
        }
        let after = |&&other: &&usize| points[other].flow > point.flow;
        let place = order.len() - order.iter().rev().take_while(after).count();
        if place > 0 && points[order[place - 1]].flow == point.flow {
            return Err(CurveError::Repeated(index));
        }
        order.insert(place, index);
    }
    for pair in order.windows(2) {
        if points[pair[1]].head > points[pair[0]].head {
            return Err(CurveError::Rising(pair[1]));
        }
    }
    if points[order[0]].head == Length::ZERO {
        return Err(CurveError::NoHead);
    }
    let piece = |&index: &usize| {
        let CurvePoint { flow, head } = points[index];
        Piece { flow: flow.si(), head: head.si(), slope: 0.0, square: 0.0, cube: 0.0 }
    };
    Ok(order.iter().map(piece).collect())
}

/// The power through three points, the usual form for pumps (as EPANET's, users' manual, "pump
/// curves"). `None` where it would be steepest at rest, or flatter than any pump.
fn power(points: &[Piece]) -> Option<Shape> {
    let &[first, middle, last] = points else { return None };
    let (shutoff, low, high) = (first.head, first.head - middle.head, first.head - last.head);
    if first.flow > 0.0 || low <= 0.0 {
        return None;
    }
    let b = ln(high / low) / ln(last.flow / middle.flow);
    let a = high / pow(last.flow, b);
    ((1.0..=10.0).contains(&b) && a.is_finite()).then_some(Shape::Power { shutoff, a, b })
}

/// Cubics through the points after Fritsch and Carlson (1980), slopes as in Fritsch and Butland
/// (1984), from memory: a weighted harmonic mean of the neighbours, so that no cubic overshoots.
fn pieces(mut points: Vec<Piece>, join: Join) -> Vec<Piece> {
    let last = points.len() - 1;
    let chord = |points: &[Piece], i: usize| {
        let width = points[i + 1].flow - points[i].flow;
        (width, (points[i + 1].head - points[i].head) / width)
    };
    for i in 0..=last {
        points[i].slope = if i == 0 || i == last {
            end_slope(
                chord(&points, i.min(last - 1)),
                chord(&points, if i == 0 { 1 } else { last - 2 }),
            )
        } else {
            let ((before, left), (after, right)) = (chord(&points, i - 1), chord(&points, i));
            let weight = (before + 2.0 * after) / (3.0 * (before + after));
            let mean = weight * left + (1.0 - weight) * right;
            if left * right > 0.0 { left * right / mean } else { 0.0 }
        };
    }
    for i in 0..last {
        let (width, chord) = chord(&points, i);
        let (left, right) = (points[i].slope, points[i + 1].slope);
        match join {
            Join::Straight => points[i].slope = chord,
            Join::Smooth => {
                points[i].square = (3.0 * chord - 2.0 * left - right) / width;
                points[i].cube = (left + right - 2.0 * chord) / (width * width);
            }
        }
    }
    if join == Join::Straight {
        points[last].slope = points[last - 1].slope;
    }
    // Beyond the last point a parabola, as steep as one from the head at rest to nothing there;
    // before the first straight on, for the cubic could turn there.
    let Piece { flow, head, slope, .. } = points[0];
    let rest = Piece { flow: 0.0, head: head - slope * flow, slope, square: 0.0, cube: 0.0 };
    let end = points[last].flow;
    points[last].square = -rest.head / (end * end);
    if flow > 0.0 {
        points.insert(0, rest);
    }
    points
}

/// The slope at an end from the parabola through three points, within what keeps the cubic from
/// turning: between level and three times the chord.
fn end_slope((near, slope): (f64, f64), (far, other): (f64, f64)) -> f64 {
    let parabola = ((2.0 * near + far) * slope - near * other) / (near + far);
    parabola.clamp(3.0 * slope, 0.0)
}

/// A pump for those who do not know theirs yet: the usual range of small wet-rotor circulators,
/// cut in three by judgement. They are nobody's pumps, and no source stands behind the numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TypicalPump {
    Small,
    Medium,
    HighHead,
}

names!(TypicalPump {
    Small = "small",
    Medium = "medium",
    HighHead = "high-head",
});

impl TypicalPump {
    pub fn curve(self) -> PumpCurve {
        // Head at rest in feet, flow without head in gallons a minute: judgement, as is the
        // exponent, between the straight fall of a steep curve and the flat start of a flat one.
        let (head, flow) = match self {
            TypicalPump::Small => (10.0, 14.0),
            TypicalPump::Medium => (18.0, 22.0),
            TypicalPump::HighHead => (34.0, 20.0),
        };
        let b = 1.8;
        let shutoff = Length::of(head, Unit::Foot).si();
        let end = VolumeFlow::of(flow, Unit::GallonPerMinute).si();
        PumpCurve { shape: Shape::Power { shutoff, a: shutoff / pow(end, b), b }, end }
    }
}
