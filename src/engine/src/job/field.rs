//! Every place where a number is typed: its kind, its bounds, and what a blank means.
//!
//! Declared once; the reader, the error text, the form's hint and the page's element ids all
//! follow from it.

use crate::building::{OpeningId, OpeningKind, RoomId, SurfaceId};
use crate::named::{Named, stored_by_name};
use crate::quantity::{Kind, Unit};
use serde::Serialize;
use std::fmt;

/// Declares a family of fields, each with the name under which it is stored.
macro_rules! fields {
    ($(#[$doc:meta])* $family:ident { $($(#[$field_doc:meta])* $name:ident = $text:literal),+ $(,)? }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $family { $($(#[$field_doc])* $name),+ }

        impl Named for $family {
            const ALL: &'static [$family] = &[$($family::$name),+];
            fn name(self) -> &'static str {
                match self { $($family::$name => $text),+ }
            }
        }
        stored_by_name!($family);
    };
}

fields!(
    /// Of the house.
    HouseField {
        Outdoors = "outdoors",
        Indoors = "indoors",
        Altitude = "altitude",
        AirChanges = "air-changes",
    }
);

fields!(
    /// Of the baseboard element.
    ElementField {
        Output = "output",
        Water = "water",
        Air = "air",
        Exponent = "exponent",
        RatingFlow = "rating-flow",
        Derate = "derate",
        BarePerPiece = "bare-per-piece",
        EndAllowance = "end-allowance",
    }
);

fields!(
    /// Of one point of a maker's table.
    PointField {
        Water = "water",
        Output = "output",
    }
);

fields!(
    /// Of the loop and the boiler room.
    CircuitField {
        Supply = "supply",
        BoilerLimit = "boiler-limit",
        Drop = "drop",
        Flow = "flow",
        PipeSurroundings = "pipe-surroundings",
        PipeFilm = "pipe-film",
        ReturnPipe = "return-pipe",
        ReturnElbows = "return-elbows",
        BoilerElbows = "boiler-elbows",
        BoilerTees = "boiler-tees",
        BoilerValves = "boiler-valves",
        EquipmentHead = "equipment-head",
    }
);

fields!(
    RoomField {
        FloorLength = "floor-length",
        FloorWidth = "floor-width",
        FloorArea = "floor-area",
        Height = "height",
        Temperature = "temperature",
        AirChanges = "air-changes",
        PipeTo = "pipe-to",
        Elbows = "elbows",
    }
);

fields!(
    SurfaceField {
        Length = "length",
        Height = "height",
        Area = "area",
        BehindTemperature = "behind-temperature",
        U = "u",
        R = "r",
        Free = "free",
    }
);

fields!(
    OpeningField {
        Width = "width",
        Height = "height",
        FromLeft = "from-left",
        U = "u",
        R = "r",
    }
);

/// A place where a number is typed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub enum Field {
    House(HouseField),
    Element(ElementField),
    /// A row of the maker's table, counted from zero.
    Point(usize, PointField),
    /// The choice of stock lengths, which is no text but has an error of its own.
    Stock,
    Circuit(CircuitField),
    Room(RoomId, RoomField),
    Surface(RoomId, SurfaceId, SurfaceField),
    Opening(RoomId, SurfaceId, OpeningId, OpeningField),
}

impl fmt::Display for Field {
    /// A stable path, such as `room-3.surface-7.length`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Field::House(field) => write!(f, "house.{}", field.name()),
            Field::Element(field) => write!(f, "element.{}", field.name()),
            Field::Point(row, field) => write!(f, "element.point-{}.{}", row + 1, field.name()),
            Field::Stock => f.write_str("element.stock"),
            Field::Circuit(field) => write!(f, "circuit.{}", field.name()),
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
        }
    }
}

/// What a blank field means.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Blank {
    /// Something is missing.
    Required,
    /// This value, in SI, is assumed and marked so.
    Assumed(f64),
    /// The value follows from other fields; see [`super::resolve`].
    Follows,
}

/// What a field takes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spec {
    pub kind: Kind,
    /// Least and most, in SI, both allowed.
    pub least: f64,
    pub most: f64,
    pub blank: Blank,
}

/// A specification with its bounds and assumption in the unit they are thought in.
fn spec(unit: Unit, least: f64, most: f64, blank: In) -> Spec {
    let blank = match blank {
        In::Required => Blank::Required,
        In::Assumed(value) => Blank::Assumed(unit.to_si(value)),
        In::Follows => Blank::Follows,
    };
    Spec { kind: unit.kind(), least: unit.to_si(least), most: unit.to_si(most), blank }
}

enum In {
    Required,
    Assumed(f64),
    Follows,
}

impl Field {
    pub fn spec(self) -> Spec {
        match self {
            Field::House(field) => house(field),
            Field::Element(field) => element(field),
            Field::Point(_, PointField::Water) => spec(Unit::Fahrenheit, 70.0, 250.0, In::Required),
            Field::Point(_, PointField::Output) => {
                spec(Unit::BtuPerHourFoot, 1.0, 5000.0, In::Required)
            }
            Field::Stock => spec(Unit::Foot, 2.0, 10.0, In::Required),
            Field::Circuit(field) => circuit(field),
            Field::Room(_, field) => room(field),
            Field::Surface(_, _, field) => surface(field),
            Field::Opening(_, _, _, field) => opening(field),
        }
    }
}

fn house(field: HouseField) -> Spec {
    match field {
        HouseField::Outdoors => spec(Unit::Fahrenheit, -80.0, 65.0, In::Required),
        HouseField::Indoors => spec(Unit::Fahrenheit, 40.0, 90.0, In::Assumed(70.0)),
        HouseField::Altitude => spec(Unit::Foot, -1500.0, 16_000.0, In::Assumed(0.0)),
        HouseField::AirChanges => spec(Unit::PerHour, 0.0, 10.0, In::Follows),
    }
}

fn element(field: ElementField) -> Spec {
    match field {
        // Common practice, no source: about 600 Btu/h a foot at 180 F water.
        ElementField::Output => spec(Unit::BtuPerHourFoot, 20.0, 3000.0, In::Assumed(600.0)),
        ElementField::Water => spec(Unit::Fahrenheit, 90.0, 250.0, In::Assumed(180.0)),
        // Rating practice: entering air of 65 F.
        ElementField::Air => spec(Unit::Fahrenheit, 32.0, 85.0, In::Assumed(65.0)),
        // Typical fin-tube lies between 1.3 and 1.45.
        ElementField::Exponent => spec(Unit::One, 1.0, 2.0, In::Assumed(1.4)),
        // Ratings are published at 1 or 4 gpm; taking 4 is the careful reading of a bare number.
        ElementField::RatingFlow => spec(Unit::GallonPerMinute, 0.1, 20.0, In::Assumed(4.0)),
        ElementField::Derate => spec(Unit::Percent, 20.0, 120.0, In::Assumed(100.0)),
        ElementField::BarePerPiece => spec(Unit::InchSmall, 0.0, 20.0, In::Assumed(0.0)),
        // Judgement: an end cap and the fittings inside it at each end of a run.
        ElementField::EndAllowance => spec(Unit::InchSmall, 0.0, 60.0, In::Assumed(4.0)),
    }
}

fn circuit(field: CircuitField) -> Spec {
    match field {
        CircuitField::Supply => spec(Unit::Fahrenheit, 80.0, 250.0, In::Assumed(180.0)),
        // Judgement: a usual setting of a residential boiler's high limit.
        CircuitField::BoilerLimit => spec(Unit::Fahrenheit, 80.0, 250.0, In::Assumed(200.0)),
        CircuitField::Drop => spec(Unit::FahrenheitDegree, 2.0, 80.0, In::Assumed(20.0)),
        CircuitField::Flow => spec(Unit::GallonPerMinute, 0.05, 60.0, In::Required),
        CircuitField::PipeSurroundings => spec(Unit::Fahrenheit, -20.0, 100.0, In::Assumed(60.0)),
        // Judgement: natural convection and radiation from a bare hot pipe together.
        CircuitField::PipeFilm => spec(Unit::SiU, 0.0, 50.0, In::Assumed(10.0)),
        CircuitField::ReturnPipe => spec(Unit::Foot, 0.0, 1000.0, In::Assumed(10.0)),
        CircuitField::ReturnElbows => spec(Unit::Piece, 0.0, 100.0, In::Assumed(4.0)),
        CircuitField::BoilerElbows => spec(Unit::Piece, 0.0, 100.0, In::Assumed(6.0)),
        CircuitField::BoilerTees => spec(Unit::Piece, 0.0, 100.0, In::Assumed(2.0)),
        CircuitField::BoilerValves => spec(Unit::Piece, 0.0, 100.0, In::Assumed(4.0)),
        // Judgement: a small boiler, an air eliminator and a flow-check valve.
        CircuitField::EquipmentHead => spec(Unit::HeadFoot, 0.0, 50.0, In::Assumed(1.0)),
    }
}

fn room(field: RoomField) -> Spec {
    match field {
        RoomField::FloorLength | RoomField::FloorWidth => {
            spec(Unit::Foot, 1.0, 200.0, In::Required)
        }
        RoomField::FloorArea => spec(Unit::SquareFoot, 1.0, 20_000.0, In::Follows),
        RoomField::Height => spec(Unit::Foot, 4.0, 40.0, In::Assumed(8.0)),
        RoomField::Temperature => spec(Unit::Fahrenheit, 40.0, 90.0, In::Follows),
        RoomField::AirChanges => spec(Unit::PerHour, 0.0, 20.0, In::Follows),
        RoomField::PipeTo => spec(Unit::Foot, 0.0, 1000.0, In::Assumed(10.0)),
        RoomField::Elbows => spec(Unit::Piece, 0.0, 100.0, In::Assumed(4.0)),
    }
}

fn surface(field: SurfaceField) -> Spec {
    match field {
        SurfaceField::Length => spec(Unit::Foot, 0.5, 200.0, In::Required),
        SurfaceField::Height => spec(Unit::Foot, 0.5, 60.0, In::Follows),
        SurfaceField::Area => spec(Unit::SquareFoot, 0.1, 20_000.0, In::Follows),
        SurfaceField::BehindTemperature => spec(Unit::Fahrenheit, -80.0, 120.0, In::Follows),
        SurfaceField::U => spec(Unit::UsU, 0.005, 3.0, In::Required),
        SurfaceField::R => spec(Unit::UsR, 0.3, 200.0, In::Required),
        SurfaceField::Free => spec(Unit::Foot, 0.0, 200.0, In::Follows),
    }
}

fn opening(field: OpeningField) -> Spec {
    match field {
        OpeningField::Width => spec(Unit::Foot, 0.25, 60.0, In::Follows),
        OpeningField::Height => spec(Unit::Foot, 0.25, 40.0, In::Follows),
        OpeningField::FromLeft => spec(Unit::Foot, 0.0, 200.0, In::Follows),
        OpeningField::U => spec(Unit::UsU, 0.02, 3.0, In::Required),
        OpeningField::R => spec(Unit::UsR, 0.3, 50.0, In::Required),
    }
}

/// Width and height in metres that an unmeasured opening is taken to have: common sizes, judgement.
pub(super) fn usual_opening(kind: OpeningKind) -> (f64, f64) {
    match kind {
        OpeningKind::Window => (0.9144, 1.2192),
        OpeningKind::Door => (0.9144, 2.032),
    }
}
