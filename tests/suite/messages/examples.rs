//! One of each thing that is said of a design: findings and remedies. A new one does not compile until
//! it stands here.

mod problems;

pub(super) use problems::{open_errors, problems};

use finrun_engine::building::{RoomId, ZoneId};
use finrun_engine::check::{Finding, Remedy, Severity, Subject};
use finrun_engine::network::NotSolved;
use finrun_engine::pipe::Tube;
use finrun_engine::quantity::{
    Kind, Length, Power, Pressure, Temperature, TemperatureDifference, Unit, Value, Velocity,
    Volume, VolumeFlow,
};

/// Each finding in every state that its words tell apart.
pub(super) fn findings() -> Vec<(String, Severity, Subject, Finding)> {
    use Severity::{Holds, Stop, Watch};
    let bath = Subject::Room(RoomId(18));
    let speed = |velocity| Finding::Velocity {
        velocity: feet_a_second(velocity),
        least: feet_a_second(2.0),
        most: feet_a_second(4.0),
    };
    let drop =
        |drop| Finding::Drop { planned: degrees(20.0), drop: degrees(drop), limit: degrees(25.0) };
    let carries = |element| Finding::TubeCarries {
        element: feet(element),
        carries: feet(72.0),
        practice: feet(200.0 / 3.0),
    };
    let supply = |limit| Finding::Supply { supply: fahrenheit(180.0), limit: fahrenheit(limit) };
    let boiler = |output| Finding::BoilerSize {
        output: power(output),
        needed: power(40_000.0),
        most: power(56_000.0),
    };
    let short = power(420.0);
    let kept = |fixed, there| Finding::FixedExceedsStock { length: feet(5.0), fixed, there };
    let density = |w_m2| Value::new(Kind::PowerDensity, w_m2);
    let per_area = |w_m2| Finding::PerArea {
        per_area: density(w_m2),
        least: density(30.0),
        most: density(190.0),
    };
    let all = [
        (Holds, Subject::House, Finding::RoomsHeated { rooms: 1 }),
        (Holds, Subject::House, Finding::RoomsHeated { rooms: 4 }),
        (Stop, bath, Finding::DoesNotFit { needed: feet(6.25), fitted: feet(5.0), short }),
        (
            Stop,
            bath,
            Finding::WaterTooCool { water: fahrenheit(110.0), room: fahrenheit(70.0), short },
        ),
        (Stop, bath, Finding::NoWall { load: power(1200.0) }),
        (Watch, bath, Finding::NoLoad { load: power(0.0) }),
        (Watch, bath, Finding::NoLoad { load: power(-350.0) }),
        (Watch, bath, Finding::OtherHeatCovers { load: power(1200.0), other: power(5000.0) }),
        (Stop, bath, Finding::WallsRuledOut { free: feet(12.0), short }),
        (Stop, bath, Finding::NoPieceFits { shortest: feet(8.0), takes: feet(4.75) }),
        (Stop, bath, Finding::StockUsedUp { needed: feet(6.25), fitted: feet(5.0), short }),
        (Watch, Subject::House, Finding::PricesMissing { lengths: 1 }),
        (Watch, Subject::House, Finding::PricesMissing { lengths: 3 }),
        (Watch, Subject::House, kept(1, 0)),
        (Watch, Subject::House, kept(4, 3)),
        (Holds, Subject::House, per_area(90.0)),
        (Watch, Subject::House, per_area(250.0)),
        (Watch, bath, Finding::EnteredTwice { other: RoomId(100) }),
        (Holds, Subject::Loop, drop(21.0)),
        (Watch, Subject::Loop, drop(31.0)),
        (Watch, Subject::Loop, speed(1.1)),
        (Holds, Subject::Loop, speed(2.5)),
        (Watch, Subject::Loop, speed(4.9)),
        (Holds, Subject::Loop, carries(40.0)),
        (Watch, Subject::Loop, carries(90.0)),
        (Holds, Subject::Boiler, supply(200.0)),
        (Stop, Subject::Boiler, supply(170.0)),
        (
            Watch,
            Subject::Boiler,
            Finding::ReturnCool { back: fahrenheit(118.0), least: fahrenheit(130.0) },
        ),
        (
            Stop,
            Subject::Boiler,
            Finding::OutsideData { water: fahrenheit(230.0), most: fahrenheit(221.0) },
        ),
        (Stop, bath, Finding::NotFinite),
        (Stop, Subject::Loop, Finding::NotSolved { reason: NotSolved::NoConvergence }),
        (Stop, Subject::Loop, Finding::NotSolved { reason: NotSolved::NotFinite }),
        (Stop, Subject::Loop, Finding::NotSolved { reason: NotSolved::NoFixedNode }),
        (Watch, Subject::Zone(ZoneId(0)), Finding::EmptyZone),
        (
            Watch,
            Subject::Zone(ZoneId(0)),
            Finding::MainSmaller { main: Tube::CopperMHalf, branch: Tube::CopperMThreeQuarter },
        ),
        (
            Watch,
            Subject::Circulator,
            Finding::PumpShort { meant: gpm(6.0), flow: gpm(4.5), head: feet(9.0) },
        ),
        (
            Watch,
            Subject::Circuit(ZoneId(0), RoomId(18)),
            Finding::Uneven { flow: gpm(2.5), meant: gpm(1.2) },
        ),
        (Stop, Subject::Circuit(ZoneId(0), RoomId(18)), Finding::NoFlow { meant: gpm(1.2) }),
        (
            Watch,
            Subject::Zone(ZoneId(0)),
            Finding::FastAlone { velocity: feet_a_second(4.8), most: feet_a_second(4.0) },
        ),
        (Watch, bath, Finding::ShutOff { load: power(1200.0) }),
        (Stop, Subject::Boiler, boiler(30_000.0)),
        (Holds, Subject::Boiler, boiler(50_000.0)),
        (Watch, Subject::Boiler, boiler(90_000.0)),
        (
            Watch,
            Subject::Boiler,
            Finding::ShortCycle {
                on_s: 70.0,
                least_s: 600.0,
                load: power(6000.0),
                output: power(50_000.0),
            },
        ),
        (
            Stop,
            Subject::Boiler,
            Finding::Boils { supply: fahrenheit(220.0), boils_at: fahrenheit(213.0) },
        ),
        (
            Watch,
            Subject::Boiler,
            Finding::FillLow { fill: psi(8.0), at_top: psi(0.2), least: psi(4.0) },
        ),
        (Watch, Subject::Boiler, Finding::ReliefNear { pressure: psi(28.5), setting: psi(30.0) }),
        (
            Watch,
            Subject::Loop,
            Finding::MayFreeze { air: fahrenheit(20.0), freezes_at: fahrenheit(32.0) },
        ),
    ];
    all.into_iter()
        .map(|(severity, subject, finding)| {
            let name = finding_name(finding);
            (format!("{severity:?} {name}"), severity, subject, finding)
        })
        .collect()
}

/// Does not compile while a finding is missing here, and so perhaps above.
fn finding_name(finding: Finding) -> &'static str {
    match finding {
        Finding::RoomsHeated { .. } => "rooms heated",
        Finding::DoesNotFit { .. } => "does not fit",
        Finding::WaterTooCool { .. } => "water too cool",
        Finding::NoWall { .. } => "no wall",
        Finding::NoLoad { .. } => "no load",
        Finding::OtherHeatCovers { .. } => "other heat covers",
        Finding::WallsRuledOut { .. } => "walls ruled out",
        Finding::NoPieceFits { .. } => "no piece fits",
        Finding::StockUsedUp { .. } => "stock used up",
        Finding::PricesMissing { .. } => "prices missing",
        Finding::FixedExceedsStock { .. } => "fixed exceeds stock",
        Finding::PerArea { .. } => "per area",
        Finding::EnteredTwice { .. } => "entered twice",
        Finding::Drop { .. } => "drop",
        Finding::Velocity { .. } => "velocity",
        Finding::TubeCarries { .. } => "tube carries",
        Finding::Supply { .. } => "supply",
        Finding::ReturnCool { .. } => "return cool",
        Finding::OutsideData { .. } => "outside data",
        Finding::NotFinite => "not finite",
        Finding::NotSolved { .. } => "not solved",
        Finding::EmptyZone => "empty zone",
        Finding::MainSmaller { .. } => "main smaller",
        Finding::PumpShort { .. } => "pump short",
        Finding::Uneven { .. } => "uneven",
        Finding::NoFlow { .. } => "no flow",
        Finding::FastAlone { .. } => "fast alone",
        Finding::ShutOff { .. } => "shut off",
        Finding::BoilerSize { .. } => "boiler size",
        Finding::ShortCycle { .. } => "short cycle",
        Finding::Boils { .. } => "boils",
        Finding::FillLow { .. } => "fill low",
        Finding::ReliefNear { .. } => "relief near",
        Finding::MayFreeze { .. } => "may freeze",
    }
}

pub(super) fn remedies() -> Vec<Remedy> {
    let all = vec![
        Remedy::MoreWall { length: feet(1.25) },
        Remedy::HigherOutputElement,
        Remedy::ReduceLoss,
        Remedy::AddFreeWall,
        Remedy::AllowWall,
        Remedy::LetPiecesGo,
        Remedy::ShorterPieces,
        Remedy::MorePieces,
        Remedy::CorrectStock,
        Remedy::TypePrices,
        Remedy::LessOtherHeat,
        Remedy::AddSurfaces,
        Remedy::RemoveOneEntry,
        Remedy::MoreFlow { flow: gpm(3.3) },
        Remedy::LessFlow { flow: gpm(6.4) },
        Remedy::OtherTube { tube: Tube::CopperMHalf },
        Remedy::SmallerDrop,
        Remedy::LargerDrop,
        Remedy::SecondCircuit,
        Remedy::LowerSupply { supply: fahrenheit(170.0) },
        Remedy::Bypass { share: 0.2 },
        Remedy::MixingValve,
        Remedy::HotterBoiler,
        Remedy::CondensingBoiler,
        Remedy::LargerBoiler,
        Remedy::SmallerBoiler,
        Remedy::ModulatingBoiler,
        Remedy::Buffer { volume: Volume::of(25.0, Unit::Gallon) },
        Remedy::JoinZones,
        Remedy::Fill { pressure: psi(16.0) },
        Remedy::Glycol { share: 0.35 },
        Remedy::WarmPipes,
        Remedy::PurgeAtHighFlow,
        Remedy::OpenValve,
        Remedy::AddRooms,
        Remedy::LargerPump,
        Remedy::SmallerPump,
        Remedy::VariablePump,
        Remedy::BalancingValves,
    ];
    for remedy in &all {
        // A new one is to be added above.
        match remedy {
            Remedy::MoreWall { .. }
            | Remedy::HigherOutputElement
            | Remedy::ReduceLoss
            | Remedy::AddFreeWall
            | Remedy::AllowWall
            | Remedy::LetPiecesGo
            | Remedy::ShorterPieces
            | Remedy::MorePieces
            | Remedy::CorrectStock
            | Remedy::TypePrices
            | Remedy::LessOtherHeat
            | Remedy::AddSurfaces
            | Remedy::RemoveOneEntry
            | Remedy::MoreFlow { .. }
            | Remedy::LessFlow { .. }
            | Remedy::OtherTube { .. }
            | Remedy::SmallerDrop
            | Remedy::LargerDrop
            | Remedy::SecondCircuit
            | Remedy::LowerSupply { .. }
            | Remedy::Bypass { .. }
            | Remedy::MixingValve
            | Remedy::HotterBoiler
            | Remedy::CondensingBoiler
            | Remedy::LargerBoiler
            | Remedy::SmallerBoiler
            | Remedy::ModulatingBoiler
            | Remedy::Buffer { .. }
            | Remedy::JoinZones
            | Remedy::Fill { .. }
            | Remedy::Glycol { .. }
            | Remedy::WarmPipes
            | Remedy::PurgeAtHighFlow
            | Remedy::OpenValve
            | Remedy::AddRooms
            | Remedy::LargerPump
            | Remedy::SmallerPump
            | Remedy::VariablePump
            | Remedy::BalancingValves => {}
        }
    }
    all
}

pub(super) fn feet(value: f64) -> Length {
    Length::of(value, Unit::Foot)
}

pub(super) fn fahrenheit(value: f64) -> Temperature {
    Temperature::of(value, Unit::Fahrenheit)
}

fn degrees(value: f64) -> TemperatureDifference {
    TemperatureDifference::of(value, Unit::FahrenheitDegree)
}

fn power(value: f64) -> Power {
    Power::of(value, Unit::BtuPerHour)
}

fn psi(value: f64) -> Pressure {
    Pressure::of(value, Unit::Psi)
}

pub(super) fn gpm(value: f64) -> VolumeFlow {
    VolumeFlow::of(value, Unit::GallonPerMinute)
}

fn feet_a_second(value: f64) -> Velocity {
    Velocity::of(value, Unit::FootPerSecond)
}
