//! What each field takes: its kind, its bounds, and what a blank means. Declared once; the reader, the
//! error text and the form's hint follow from it.

use super::field::{
    AirField, AssemblyField, BillField, BillsField, CertaintyField, ChangeField, CircuitField,
    ControlField, CutField, ElementField, Field, GroundField, HouseField, LayerField, LegField,
    MeasuredField, OpeningField, PartField, PlantField, PointField, PriceField, PumpPointField,
    RoomField, SpotField, StockField, SurfaceField, ZoneField,
};
use crate::building::OpeningKind;
use crate::quantity::{Kind, Unit};

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
            Field::Air(field) => air(field),
            Field::Ground(field) => ground(field),
            Field::Certainty(field) => certainty(field),
            Field::Assembly(_, AssemblyField::U) => spec(Unit::UsU, 0.005, 3.0, In::Follows),
            Field::Assembly(_, AssemblyField::R) => spec(Unit::UsR, 0.3, 200.0, In::Follows),
            Field::Layer(_, _, LayerField::Thickness) => {
                spec(Unit::InchSmall, 0.01, 48.0, In::Required)
            }
            Field::Layer(_, _, LayerField::R) => spec(Unit::UsR, 0.0, 100.0, In::Required),
            Field::Bills(BillsField::Efficiency) => {
                // Judgement: a boiler of some years, chimney and standing losses included.
                spec(Unit::Percent, 20.0, 400.0, In::Assumed(80.0))
            }
            Field::Bills(BillsField::Indoors) => spec(Unit::Fahrenheit, 40.0, 90.0, In::Follows),
            // Blank: not known, and then nothing is said of money.
            Field::Bills(BillsField::Price) => spec(Unit::Currency, 0.0, 1000.0, In::Follows),
            Field::Bill(_, field) => bill(field),
            Field::Element(field) => element(field),
            Field::Point(_, PointField::Water) => spec(Unit::Fahrenheit, 70.0, 250.0, In::Required),
            Field::Point(_, PointField::Output) => {
                spec(Unit::BtuPerHourFoot, 1.0, 5000.0, In::Required)
            }
            Field::Stocked(_, StockField::Price) => spec(Unit::Currency, 0.0, 5000.0, In::Follows),
            Field::Stocked(_, StockField::Available) => spec(Unit::Piece, 0.0, 999.0, In::Follows),
            Field::Stocked(_, StockField::Have) => spec(Unit::Piece, 0.0, 99.0, In::Assumed(0.0)),
            Field::Price(field) => price(field),
            Field::SizedPrice(_, field) => price(field.for_any_size()),
            Field::Spare(_) => spec(Unit::Percent, 0.0, 100.0, In::Assumed(0.0)),
            // Judgement: the blade of a hacksaw or a small circular saw.
            Field::Cut(CutField::Kerf) => spec(Unit::InchSmall, 0.0, 0.5, In::Assumed(0.0625)),
            Field::Stock => spec(Unit::Foot, 2.0, 10.0, In::Required),
            Field::Circuit(field) => circuit(field),
            Field::Part(field) => part(field),
            Field::Plant(field) => plant(field),
            Field::Control(field) => control(field),
            Field::Zone(_, ZoneField::Trunk) => spec(Unit::Foot, 0.0, 1000.0, In::Follows),
            Field::Zone(_, ZoneField::TrunkElbows) => spec(Unit::Piece, 0.0, 100.0, In::Follows),
            // Blank: not measured, and then not counted.
            Field::Zone(_, ZoneField::Wire) => spec(Unit::Foot, 0.0, 1000.0, In::Follows),
            Field::PumpPoint(_, PumpPointField::Flow) => {
                spec(Unit::GallonPerMinute, 0.0, 200.0, In::Required)
            }
            Field::PumpPoint(_, PumpPointField::Head) => {
                spec(Unit::HeadFoot, 0.0, 200.0, In::Required)
            }
            Field::Leg(_, _, LegField::Length) => spec(Unit::Foot, 0.0, 500.0, In::Follows),
            Field::Room(_, field) => room(field),
            Field::Surface(_, _, field) => surface(field),
            Field::Opening(_, _, _, field) => opening(field),
            Field::Measured(field) => measured(field),
            Field::Spot(_, field) => spot(field),
            Field::Change(_, field) => change(field),
        }
    }
}

fn house(field: HouseField) -> Spec {
    match field {
        HouseField::Outdoors => spec(Unit::Fahrenheit, -80.0, 65.0, In::Required),
        HouseField::Indoors => spec(Unit::Fahrenheit, 40.0, 90.0, In::Assumed(70.0)),
        HouseField::Altitude => spec(Unit::Foot, -1500.0, 16_000.0, In::Assumed(0.0)),
        HouseField::AirChanges => spec(Unit::PerHour, 0.0, 10.0, In::Follows),
        HouseField::CeilingHeight => spec(Unit::Foot, 4.0, 40.0, In::Assumed(8.0)),
        HouseField::MeanTemperature => spec(Unit::Fahrenheit, 0.0, 90.0, In::Required),
        HouseField::ColdestMonth => spec(Unit::Fahrenheit, -50.0, 85.0, In::Required),
        // Judgement: a usual winter mean at 10 m.
        HouseField::Wind => spec(Unit::MilePerHour, 0.0, 60.0, In::Assumed(9.0)),
        HouseField::Margin => spec(Unit::Percent, 0.0, 50.0, In::Assumed(0.0)),
    }
}

fn air(field: AirField) -> Spec {
    match field {
        AirField::BlowerFlow => spec(Unit::AirCubicFootPerMinute, 20.0, 20_000.0, In::Required),
        // METHODS of blower-door practice: 0.65 unless measured.
        AirField::BlowerExponent => spec(Unit::One, 0.5, 1.0, In::Assumed(0.65)),
        AirField::LeakageArea => spec(Unit::SquareInch, 1.0, 5000.0, In::Follows),
        AirField::Supply | AirField::Exhaust => {
            spec(Unit::AirCubicFootPerMinute, 0.0, 2000.0, In::Assumed(0.0))
        }
        AirField::Recovery => spec(Unit::Percent, 0.0, 95.0, In::Assumed(0.0)),
    }
}

fn ground(field: GroundField) -> Spec {
    match field {
        // Judgement: a foundation wall of 8 in.
        GroundField::WallThickness => spec(Unit::InchSmall, 2.0, 60.0, In::Assumed(8.0)),
        GroundField::EdgeDepth => spec(Unit::Foot, 0.25, 12.0, In::Assumed(2.0)),
        GroundField::EdgeR => spec(Unit::UsR, 0.5, 60.0, In::Assumed(10.0)),
        GroundField::EdgeThickness => spec(Unit::InchSmall, 0.25, 24.0, In::Assumed(2.0)),
        GroundField::FFactor => spec(Unit::BtuPerHourFootFahrenheit, 0.05, 3.0, In::Follows),
    }
}

/// Judgement throughout, but for the design temperature.
fn certainty(field: CertaintyField) -> Spec {
    let share = |percent| spec(Unit::Percent, 0.0, 90.0, In::Assumed(percent));
    match field {
        CertaintyField::Measured => share(2.0),
        CertaintyField::Label => share(10.0),
        CertaintyField::Listed => share(20.0),
        CertaintyField::Assumed => share(40.0),
        CertaintyField::Air => share(40.0),
        // The station's distance from two sources of data: about 3 F.
        CertaintyField::Outdoors => spec(Unit::FahrenheitDegree, 0.0, 20.0, In::Assumed(3.0)),
        CertaintyField::Soil => share(30.0),
    }
}

fn bill(field: BillField) -> Spec {
    match field {
        // Chosen on a calendar; the numbers are never read.
        BillField::From | BillField::To => spec(Unit::Piece, 0.0, 1.0, In::Follows),
        BillField::Amount => spec(Unit::One, 0.01, 1_000_000.0, In::Required),
        BillField::DegreeDays => spec(Unit::FahrenheitDay, 0.0, 20_000.0, In::Follows),
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

/// Blank: not known, and then not counted.
fn price(field: PriceField) -> Spec {
    match field {
        field if field.is_by_length() => spec(Unit::CurrencyPerFoot, 0.0, 1000.0, In::Follows),
        PriceField::Insulation => spec(Unit::CurrencyPerSquareFoot, 0.0, 1000.0, In::Follows),
        _ => spec(Unit::Currency, 0.0, 10_000.0, In::Follows),
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

/// Common practice, no source, but for what says judgement.
fn part(field: PartField) -> Spec {
    match field {
        PartField::ZoneValveCv => spec(Unit::One, 0.2, 100.0, In::Assumed(3.5)),
        PartField::FlowCheckCv => spec(Unit::One, 0.2, 100.0, In::Assumed(8.0)),
        PartField::BalancingCv => spec(Unit::One, 0.2, 100.0, In::Assumed(5.0)),
        // Judgement, on the velocity in the main: what drives the branch.
        PartField::DiverterK => spec(Unit::One, 0.1, 100.0, In::Assumed(6.0)),
        // Judgement: small wet-rotor circulators turn a fifth of their power into moving water.
        PartField::PumpEfficiency => spec(Unit::Percent, 1.0, 90.0, In::Assumed(20.0)),
        PartField::InsulationThickness => spec(Unit::InchSmall, 0.1, 6.0, In::Assumed(0.5)),
    }
}

fn plant(field: PlantField) -> Spec {
    match field {
        // Blank: not known, and then not judged.
        PlantField::Output | PlantField::LeastOutput => {
            spec(Unit::BtuPerHour, 1000.0, 1_000_000.0, In::Follows)
        }
        PlantField::BoilerVolume => spec(Unit::LiquidGallon, 0.0, 500.0, In::Follows),
        // Common practice, no source: 10 to 20 F between start and stop.
        PlantField::Differential => spec(Unit::FahrenheitDegree, 1.0, 60.0, In::Assumed(20.0)),
        // As `plant::return_protection::LEAST_RETURN` has it.
        PlantField::LeastReturn => spec(Unit::Fahrenheit, 60.0, 180.0, In::Assumed(130.0)),
        // Judgement: the coil of a tank of 40 gal.
        PlantField::TankOutput => spec(Unit::BtuPerHour, 1000.0, 500_000.0, In::Assumed(60_000.0)),
        PlantField::TopHeight => spec(Unit::Foot, 0.0, 150.0, In::Follows),
        PlantField::Fill => spec(Unit::Psi, 0.0, 100.0, In::Follows),
        // As `plant::fill::USUAL_RELIEF` has it.
        PlantField::Relief => spec(Unit::Psi, 5.0, 150.0, In::Assumed(30.0)),
        PlantField::OtherVolume => spec(Unit::LiquidGallon, 0.0, 2000.0, In::Assumed(0.0)),
        // Judgement: water from the main in winter.
        PlantField::ColdFill => spec(Unit::Fahrenheit, 33.0, 100.0, In::Assumed(50.0)),
        // Judgement: begins to freeze near 8 F. Less than a tenth is no antifreeze.
        PlantField::GlycolShare => spec(Unit::Percent, 10.0, 50.0, In::Assumed(30.0)),
        // The base of US degree days.
        PlantField::Balance => spec(Unit::Fahrenheit, 30.0, 80.0, In::Assumed(65.0)),
    }
}

/// Common practice, no source: [`super::Setback::USUAL`] says the same.
fn control(field: ControlField) -> Spec {
    match field {
        ControlField::Setback => spec(Unit::FahrenheitDegree, 0.0, 30.0, In::Assumed(8.0)),
        ControlField::SetbackHours => spec(Unit::Hour, 0.0, 24.0, In::Assumed(8.0)),
        ControlField::Recover => spec(Unit::Hour, 0.5, 24.0, In::Assumed(2.0)),
    }
}

fn room(field: RoomField) -> Spec {
    match field {
        RoomField::FloorLength | RoomField::FloorWidth => {
            spec(Unit::Foot, 1.0, 200.0, In::Required)
        }
        RoomField::FloorArea => spec(Unit::SquareFoot, 1.0, 20_000.0, In::Follows),
        RoomField::CutLength | RoomField::CutWidth => spec(Unit::Foot, 0.5, 200.0, In::Required),
        RoomField::Height => spec(Unit::Foot, 1.0, 40.0, In::Follows),
        RoomField::Temperature => spec(Unit::Fahrenheit, -60.0, 90.0, In::Follows),
        RoomField::AirChanges => spec(Unit::PerHour, 0.0, 60.0, In::Follows),
        RoomField::PipeTo | RoomField::PipeBack => spec(Unit::Foot, 0.0, 1000.0, In::Follows),
        RoomField::Elbows | RoomField::ElbowsBack => spec(Unit::Piece, 0.0, 100.0, In::Follows),
        // Judgement: an element beside its main.
        RoomField::BranchPipe => spec(Unit::Foot, 0.0, 500.0, In::Assumed(6.0)),
        RoomField::BranchElbows => spec(Unit::Piece, 0.0, 100.0, In::Assumed(4.0)),
        RoomField::TeeSpacing => spec(Unit::Foot, 0.0, 200.0, In::Assumed(4.0)),
        RoomField::FromLeft | RoomField::FromFront => spec(Unit::Foot, 0.0, 500.0, In::Follows),
        RoomField::OtherHeat => spec(Unit::BtuPerHour, 0.0, 100_000.0, In::Assumed(0.0)),
        // Open. Judgement: a damper that is shut still lets a tenth through.
        RoomField::Damper => spec(Unit::Percent, 10.0, 100.0, In::Assumed(100.0)),
        RoomField::VentArea => spec(Unit::SquareInch, 0.0, 20_000.0, In::Assumed(0.0)),
    }
}

fn surface(field: SurfaceField) -> Spec {
    match field {
        SurfaceField::Length => spec(Unit::Foot, 0.5, 200.0, In::Required),
        SurfaceField::Height => spec(Unit::Foot, 0.5, 60.0, In::Follows),
        SurfaceField::Area => spec(Unit::SquareFoot, 0.1, 20_000.0, In::Follows),
        SurfaceField::Behind => spec(Unit::Piece, 0.0, 1.0, In::Follows),
        SurfaceField::Depth => spec(Unit::Foot, 0.0, 30.0, In::Follows),
        SurfaceField::Perimeter => spec(Unit::Foot, 0.0, 2000.0, In::Follows),
        SurfaceField::BehindTemperature => spec(Unit::Fahrenheit, -80.0, 120.0, In::Follows),
        SurfaceField::U => spec(Unit::UsU, 0.005, 3.0, In::Required),
        SurfaceField::R => spec(Unit::UsR, 0.3, 200.0, In::Required),
        SurfaceField::Fixed => spec(Unit::Piece, 0.0, 1.0, In::Follows),
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

/// Blank: not measured, and then not judged.
fn measured(field: MeasuredField) -> Spec {
    match field {
        MeasuredField::Outdoors => spec(Unit::Fahrenheit, -80.0, 120.0, In::Follows),
        MeasuredField::BoilerSupply | MeasuredField::BoilerBack => {
            spec(Unit::Fahrenheit, 32.0, 250.0, In::Follows)
        }
        MeasuredField::Fill | MeasuredField::PreCharge => spec(Unit::Psi, 0.0, 150.0, In::Follows),
    }
}

/// Blank: not measured, and then not judged.
fn spot(field: SpotField) -> Spec {
    match field {
        SpotField::Supply | SpotField::Back | SpotField::WaterIn | SpotField::WaterOut => {
            spec(Unit::Fahrenheit, 32.0, 250.0, In::Follows)
        }
        SpotField::Flow => spec(Unit::GallonPerMinute, 0.0, 60.0, In::Follows),
        SpotField::Valve => spec(Unit::One, 0.0, 100.0, In::Follows),
        SpotField::Air => spec(Unit::Fahrenheit, 32.0, 120.0, In::Follows),
    }
}

/// As of what it changes.
fn change(field: ChangeField) -> Spec {
    match field {
        // Blank: not known, and then not counted.
        ChangeField::Cost => spec(Unit::Currency, 0.0, 1_000_000.0, In::Follows),
        ChangeField::U => surface(SurfaceField::U),
        ChangeField::R => surface(SurfaceField::R),
        ChangeField::AirChanges => house(HouseField::AirChanges),
        ChangeField::BlowerFlow => air(AirField::BlowerFlow),
        ChangeField::LeakageArea => air(AirField::LeakageArea),
        ChangeField::FloorLength => room(RoomField::FloorLength),
        ChangeField::FloorWidth => room(RoomField::FloorWidth),
        ChangeField::Height => room(RoomField::Height),
        // Judgement: a room has a window.
        ChangeField::Windows => spec(Unit::Piece, 0.0, 20.0, In::Assumed(1.0)),
        ChangeField::Whose => spec(Unit::Piece, 0.0, 1.0, In::Follows),
    }
}

/// Width and height in metres that an unmeasured opening is taken to have: common sizes, judgement.
pub(super) fn usual_opening(kind: OpeningKind) -> (f64, f64) {
    match kind {
        OpeningKind::Window => (0.9144, 1.2192),
        OpeningKind::Door => (0.9144, 2.032),
    }
}
