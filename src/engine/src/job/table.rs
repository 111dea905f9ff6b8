//! The baseboard's rating: one typed output, or a maker's table fitted.

use super::Baseboard;
use super::draft::RatingBasis;
use super::field::{ElementField, Field, PointField};
use super::read::{Problem, Reader, read_stock};
use crate::emitter::{Element, FitError, HeatingEffect, Point, Rating, Reference, fit};
use crate::quantity::{Length, LinearPower, MassFlow, Temperature, Unit, Value, VolumeFlow};

pub(super) fn read_baseboard(reader: &mut Reader<'_>) -> Option<Baseboard> {
    let mut si = |field| reader.si(Field::Element(field));
    let air = si(ElementField::Air).map(Temperature::from_si);
    let flow = si(ElementField::RatingFlow).map(rating_flow);
    let derate = si(ElementField::Derate);
    let bare_per_piece = si(ElementField::BarePerPiece).map(Length::from_si);
    let end_allowance = si(ElementField::EndAllowance).map(Length::from_si);
    let effect = reader.draft.element.heating_effect;
    let rating = match reader.draft.element.rating_basis {
        RatingBasis::Single => read_single(reader, air, flow, effect),
        RatingBasis::Table => read_table(reader, air, flow, effect),
    };
    let stock = read_stock(reader);
    let (rating, worst_residual) = rating?;
    Some(Baseboard {
        element: Element { rating, derate: derate? },
        worst_residual,
        stock: stock?,
        objective: reader.draft.element.objective,
        bare_per_piece: bare_per_piece?,
        end_allowance: end_allowance?,
    })
}

/// Rating practice counts 500 lb/h as one gallon a minute.
fn rating_flow(si: f64) -> MassFlow {
    MassFlow::of(500.0 * VolumeFlow::from_si(si).to(Unit::GallonPerMinute), Unit::PoundPerHour)
}

/// A rating, and how far its table strays from it if it was fitted.
type Rated = (Rating, Option<LinearPower>);

fn read_single(
    reader: &mut Reader<'_>,
    air: Option<Temperature>,
    flow: Option<MassFlow>,
    effect: HeatingEffect,
) -> Option<Rated> {
    let mut si = |field| reader.si(Field::Element(field));
    let output = si(ElementField::Output).map(LinearPower::from_si);
    let water = si(ElementField::Water).map(Temperature::from_si);
    let exponent = si(ElementField::Exponent);
    // Only now, when every error is listed, may one that failed end it.
    let (water, air, flow) = (water?, air?, flow?);
    if water <= air {
        let air = Value::from(air);
        reader.fail(Field::Element(ElementField::Water), Problem::NotAboveAir { air });
        return None;
    }
    Some((Rating { output: output?, water, air, exponent: exponent?, flow, effect }, None))
}

/// Fits the complete rows; rows that are wholly blank do not count.
fn read_table(
    reader: &mut Reader<'_>,
    air: Option<Temperature>,
    flow: Option<MassFlow>,
    effect: HeatingEffect,
) -> Option<Rated> {
    let mut points = Vec::new();
    let mut rows = Vec::new();
    let mut complete = true;
    for row in 0..reader.draft.element.points.len() {
        let typed = |field| reader.draft.entry(Field::Point(row, field)).is_some();
        if !typed(PointField::Water) && !typed(PointField::Output) {
            continue;
        }
        let water = reader.temperature(Field::Point(row, PointField::Water));
        let output = reader.si(Field::Point(row, PointField::Output)).map(LinearPower::from_si);
        match (water, output) {
            (Some(water), Some(output)) => {
                points.push((water, output));
                rows.push(row);
            }
            _ => complete = false,
        }
    }
    if !complete {
        return None;
    }
    let (air, flow) = (air?, flow?);
    let points: Vec<Point> =
        points.into_iter().map(|(water, output)| Point { water, flow, output }).collect();
    if points.len() < 2 {
        let row = rows.first().copied().unwrap_or(0);
        reader.fail(Field::Point(row, PointField::Water), Problem::TooFewPoints);
        return None;
    }
    let reference = Reference { water: reference_water(&points)?, air, flow };
    match fit(&points, reference) {
        Ok(fit) => {
            let worst = fit.residuals.iter().map(|r| r.abs()).reduce(LinearPower::max);
            Some((fit.rating(reference, effect), worst))
        }
        Err(error) => {
            let index = match error {
                FitError::Point { index, .. } => index,
                _ => 0,
            };
            let row = rows.get(index).copied().unwrap_or(0);
            reader.fail(Field::Point(row, PointField::Output), Problem::NoFit(error));
            None
        }
    }
}

/// The table's hottest water: where its outputs are read most exactly.
fn reference_water(points: &[Point]) -> Option<Temperature> {
    points.iter().map(|point| point.water).reduce(Temperature::max)
}
