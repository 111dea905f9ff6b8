//! What a check says: how grave it is, and in one line what was found. What follows that line is in
//! `detail`, the ways out in `remedy`.

mod detail;
mod remedy;

pub use detail::check_detail;
pub use remedy::remedy;

use crate::language::{either, say};
use crate::plant::minutes;
use crate::{circuit_name, room_name, tube, value, zone_name};
use finrun_engine::check::{Check, Finding, Severity, Subject};
use finrun_engine::job::Draft;
use finrun_engine::quantity::System;

pub fn severity(severity: Severity) -> &'static str {
    either(match severity {
        Severity::Holds => ("holds", "cumple"),
        Severity::Watch => ("look at this", "revise esto"),
        Severity::Stop => ("must change", "debe cambiar"),
    })
}

/// The finding in one line.
pub fn check_title(check: &Check, draft: &Draft, system: System) -> String {
    let subject = match check.subject {
        Subject::House => either(("House", "Casa")).to_string(),
        Subject::Loop => either(("Loop", "Circuito")).to_string(),
        Subject::Zone(id) => zone_name(draft, id),
        Subject::Circuit(zone, room) => circuit_name(draft, zone, &[room]),
        Subject::Circulator => either(("Circulator", "Circulador")).to_string(),
        Subject::Boiler => either(("Boiler", "Caldera")).to_string(),
        Subject::Room(id) => room_name(draft, id),
    };
    match check.finding {
        Finding::RoomsHeated { rooms: 1 } => {
            either(("The room gets its heat", "La habitación recibe su calor")).to_string()
        }
        Finding::RoomsHeated { rooms } => {
            say!("All {rooms} rooms get their heat", "Las {rooms} habitaciones reciben su calor")
        }
        Finding::DoesNotFit { short, .. } | Finding::WaterTooCool { short, .. } => {
            say!("{subject} is {} short", "{subject}: faltan {}"; value(short, system))
        }
        Finding::NoWall { .. } => {
            say!("{subject} has no wall for baseboard", "{subject}: ninguna pared para zócalo")
        }
        Finding::NoLoad { .. } => say!("{subject} loses no heat", "{subject}: no pierde calor"),
        Finding::OtherHeatCovers { .. } => say!(
            "{subject} has all its heat from elsewhere",
            "{subject}: todo su calor viene de otra fuente"
        ),
        Finding::WallsRuledOut { short, .. } | Finding::StockUsedUp { short, .. } => {
            say!("{subject} is {} short", "{subject}: faltan {}"; value(short, system))
        }
        Finding::NoPieceFits { .. } => {
            say!("No piece fits in {subject}", "{subject}: no cabe ninguna pieza")
        }
        Finding::PricesMissing { lengths: 1 } => {
            either(("A stock length has no price", "Un largo en venta no tiene precio")).to_string()
        }
        Finding::PricesMissing { lengths } => say!(
            "{lengths} stock lengths have no price",
            "{lengths} largos en venta no tienen precio"
        ),
        Finding::FixedExceedsStock { length, fixed: 1, .. } => {
            say!("1 piece of {} is kept", "Está fijada 1 pieza de {}"; value(length, system))
        }
        Finding::FixedExceedsStock { length, fixed, .. } => {
            say!(
                "{fixed} pieces of {} are kept",
                "Están fijadas {fixed} piezas de {}";
                value(length, system)
            )
        }
        Finding::PerArea { per_area, .. } => {
            say!("{subject} {} of floor", "{subject}: {} de piso"; value(per_area, system))
        }
        Finding::EnteredTwice { other } => {
            say!(
                "{subject} and {} share a surface entered twice",
                "{subject} y {} comparten una superficie anotada dos veces";
                room_name(draft, other)
            )
        }
        Finding::Drop { drop, .. } => {
            say!(
                "{}: temperature drop {}",
                "{}: caída de temperatura {}";
                subject, value(drop, system)
            )
        }
        Finding::Velocity { velocity, .. } => {
            say!("{}: velocity {}", "{}: velocidad {}"; subject, value(velocity, system))
        }
        Finding::TubeCarries { element, .. } => {
            say!("{}: {} of element", "{}: {} de elemento"; subject, value(element, system))
        }
        Finding::NotSolved { .. } => {
            either(("The flows are not solved", "No se hallaron los caudales")).to_string()
        }
        Finding::EmptyZone => say!("{subject} has no rooms", "{subject}: sin habitaciones"),
        Finding::MainSmaller { main, .. } => say!(
            "{subject}: a main of {}",
            "{subject}: principal de {}";
            tube(main)
        ),
        Finding::PumpShort { flow, .. } => {
            say!(
                "{subject}: its circulator moves {}",
                "{subject}: su circulador mueve {}";
                value(flow, system)
            )
        }
        Finding::Uneven { flow, .. } => say!(
            "{subject} gets {}",
            "{subject}: recibe {}";
            value(flow, system)
        ),
        Finding::NoFlow { .. } => say!("{subject} gets no flow", "{subject}: no recibe caudal"),
        Finding::FastAlone { velocity, .. } => {
            say!(
                "{subject} alone: velocity {}",
                "{subject}, cuando va sola: velocidad {}";
                value(velocity, system)
            )
        }
        Finding::BoilerSize { output, .. } => say!(
            "Boiler of {}",
            "Caldera de {}";
            value(output, system)
        ),
        Finding::ShortCycle { on_s, .. } => {
            say!(
                "The burner runs for {} at a time",
                "El quemador trabaja {} cada vez";
                minutes(on_s)
            )
        }
        Finding::Boils { boils_at, .. } => {
            say!(
                "At the top water boils at {}",
                "Arriba el agua hierve a {}";
                value(boils_at, system)
            )
        }
        Finding::FillLow { fill, .. } => say!(
            "Fill pressure {}",
            "Presión de llenado {}";
            value(fill, system)
        ),
        Finding::ReliefNear { pressure, .. } => {
            say!("{} at the relief valve", "{} en la válvula de alivio"; value(pressure, system))
        }
        Finding::MayFreeze { air, .. } => {
            say!(
                "{subject}: pipes in air of {}",
                "{subject}: tuberías en aire a {}";
                value(air, system)
            )
        }
        Finding::ShutOff { .. } => say!("{subject} is shut off", "{subject}: cerrada"),
        Finding::Supply { supply, .. } => say!("Supply {}", "Suministro {}"; value(supply, system)),
        Finding::ReturnCool { back, .. } => say!("Return {}", "Retorno {}"; value(back, system)),
        Finding::OutsideData { water, .. } => say!(
            "Water at {}",
            "Agua a {}";
            value(water, system)
        ),
        Finding::NotFinite => {
            say!("{subject}: a result is no number", "{subject}: un resultado no es un número")
        }
    }
}
