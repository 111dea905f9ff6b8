//! The ids of the boxes on the page, which name the fields in errors and tests too.

use super::Field;
use crate::named::Named;
use std::fmt;

impl fmt::Display for Field {
    /// A stable path, such as `room-3.surface-7.length`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Field::House(field) => write!(f, "house.{}", field.name()),
            Field::Air(field) => write!(f, "air.{}", field.name()),
            Field::Ground(field) => write!(f, "ground.{}", field.name()),
            Field::Certainty(field) => write!(f, "certainty.{}", field.name()),
            Field::Assembly(id, field) => write!(f, "assembly-{}.{}", id.0, field.name()),
            Field::Layer(id, row, field) => {
                write!(f, "assembly-{}.layer-{}.{}", id.0, row + 1, field.name())
            }
            Field::Bills(field) => write!(f, "bills.{}", field.name()),
            Field::Bill(id, field) => write!(f, "bill-{}.{}", id.0, field.name()),
            Field::Element(field) => write!(f, "element.{}", field.name()),
            Field::Point(row, field) => write!(f, "element.point-{}.{}", row + 1, field.name()),
            Field::Stocked(feet, field) => write!(f, "element.piece-{feet}.{}", field.name()),
            Field::Price(field) => write!(f, "price.{}", field.name()),
            Field::SizedPrice(tube, field) => write!(f, "price.{}.{}", tube.name(), field.name()),
            Field::Spare(group) => write!(f, "spare.{}", group.name()),
            Field::Cut(field) => write!(f, "cut.{}", field.name()),
            Field::Stock => f.write_str("element.stock"),
            Field::Circuit(field) => write!(f, "circuit.{}", field.name()),
            Field::Part(field) => write!(f, "part.{}", field.name()),
            Field::Plant(field) => write!(f, "plant.{}", field.name()),
            Field::Control(field) => write!(f, "control.{}", field.name()),
            Field::Zone(id, field) => write!(f, "zone-{}.{}", id.0, field.name()),
            Field::PumpPoint(row, field) => write!(f, "pump.point-{}.{}", row + 1, field.name()),
            Field::Leg(room, row, field) => {
                write!(f, "room-{}.leg-{}.{}", room.0, row + 1, field.name())
            }
            Field::Room(room, field) => write!(f, "room-{}.{}", room.0, field.name()),
            Field::Surface(room, surface, field) => {
                write!(f, "room-{}.surface-{}.{}", room.0, surface.0, field.name())
            }
            Field::Opening(room, surface, opening, field) => write!(
                f,
                "room-{}.surface-{}.opening-{}.{}",
                room.0,
                surface.0,
                opening.0,
                field.name()
            ),
            Field::Measured(field) => write!(f, "measured.{}", field.name()),
            Field::Spot(room, field) => write!(f, "room-{}.measured-{}", room.0, field.name()),
            Field::Change(id, field) => write!(f, "change-{}.{}", id.0, field.name()),
        }
    }
}
