//! What a worked-out way out proposes, whether it does, and what it costs; and what is built beyond the
//! loads.

use crate::language::{either, say};
use crate::plant::minutes;
use crate::shop::price_label;
use crate::{room_name, surface_name, value};
use finrun_engine::job::Draft;
use finrun_engine::oversize::{Burner, Oversize};
use finrun_engine::plant::boiler::Running;
use finrun_engine::quantity::{Money, Resistance, System, Unit, Value};
use finrun_engine::remedy::{Circulator, Does, Way, Worked};
use finrun_engine::takeoff::item::Class;

/// A way out in full: what to do, what it does, what it costs.
pub fn worked(worked: &Worked, draft: &Draft, system: System) -> String {
    let mut said = way_out(worked, draft, system);
    said += ": ";
    said += &does(worked.does, system);
    // What does not do is not bought.
    if matches!(worked.does, Does::NotEnough { .. }) {
        said.push('.');
        return said;
    }
    let cost = cost(worked, system);
    if !cost.is_empty() {
        said += "; ";
        said += &cost;
    }
    said.push('.');
    said += note(&worked.way);
    said
}

fn way_out(worked: &Worked, draft: &Draft, system: System) -> String {
    match worked.way {
        Way::HotterWater { supply } => {
            say!(
                "Set the boiler to a supply of {}",
                "Ajuste la caldera a un suministro de {}";
                value(supply, system)
            )
        }
        Way::BetterElement { factor, element } => say!(
            "Element with {} more output a foot, in all rooms ({})",
            "Elemento con {} más de potencia en el mismo largo, en todas las habitaciones ({})";
            value(Value::share(factor - 1.0), system),
            value(element, system)
        ),
        Way::RuledOutWall { wall, pieces } => say!(
            "{} of pieces at a wall that is ruled out now, {}",
            "{} de piezas en una pared que ahora está descartada, {}";
            value(pieces, system),
            surface_name(draft, worked.room, wall)
        ),
        Way::NewWall { length } => {
            say!(
                "{} more of free wall, at an inside wall if need be",
                "{} más de pared libre, en una pared interior si hace falta";
                value(length, system)
            )
        }
        Way::MoreFlow { flow, circulator } => {
            let circulator = either(match circulator {
                Circulator::GivesIt => ("which the circulator gives", "que el circulador da"),
                Circulator::TooSmall => (
                    "for which the circulator is too small",
                    "para el que el circulador es demasiado pequeño",
                ),
            });
            say!("Flow of {}, {circulator}", "Caudal de {}, {circulator}"; value(flow, system))
        }
        Way::SecondCircuit { from, pipe } => say!(
            "A second circuit from {} on, with a balancing valve in each and about {} more pipe",
            "Un segundo circuito desde {}, con una válvula de balanceo en cada uno y unos {} más \
             de tubo";
            room_name(draft, from),
            value(pipe, system)
        ),
        Way::LessLoss { by } => {
            say!(
                "{} less loss: insulate, seal, better glass",
                "{} menos de pérdida: aislar, sellar, mejor vidrio";
                value(by, system)
            )
        }
        Way::Insulate { surface, resistance, area } => say!(
            "Insulate {} ({}) to {} or better",
            "Aísle {} ({}) hasta {} o mejor";
            surface_name(draft, worked.room, surface),
            value(area, system),
            r_value(resistance, system)
        ),
        Way::MoveFirst => either((
            "Make it the first room of its loop",
            "Póngala como la primera habitación de su circuito",
        ))
        .to_string(),
    }
}

/// Of the whole assembly, rounded up.
fn r_value(resistance: Resistance, system: System) -> String {
    match system {
        System::Us => format!("R-{:.0}", resistance.to(Unit::UsR).ceil()),
        System::Si => value(resistance, system),
    }
}

fn does(does: Does, system: System) -> String {
    match does {
        Does::HeatsAll => {
            either(("all rooms are heated", "todas las habitaciones se calientan")).to_string()
        }
        Does::HeatsRoom => either((
            "this room is heated, others stay short",
            "esta habitación se calienta, a otras les sigue faltando",
        ))
        .to_string(),
        Does::NotEnough { remains } => {
            say!("not enough, {} are missing", "no alcanza, faltan {}"; value(remains, system))
        }
    }
}

fn cost(worked: &Worked, system: System) -> String {
    let mut parts: Vec<String> = Vec::new();
    for unpriced in &worked.unpriced {
        parts.push(match unpriced {
            Class::Piece(length) | Class::Kept(length) => {
                say!("pieces of {}", "piezas de {}"; value(*length, system))
            }
            Class::Part(field) => price_label(*field).to_lowercase(),
        });
    }
    let parts = parts.join("; ");
    match (worked.cost, parts.is_empty()) {
        (Some(Money::ZERO), true) => either(("nothing to buy", "nada que comprar")).to_string(),
        (Some(cost), true) => say!("cost {}", "costo {}"; value(cost, system)),
        (Some(cost), false) => say!(
            "cost {} without {parts}",
            "costo {} sin {parts}";
            value(cost, system)
        ),
        (None, false) => {
            say!("no price is typed for {parts}", "ningún precio escrito para {parts}")
        }
        (None, true) => String::new(),
    }
}

/// What to heed.
fn note(way: &Way) -> &'static str {
    either(match way {
        Way::HotterWater { .. } => (
            " Pipes and fins that hot scald: keep enclosures closed.",
            " Tubos y aletas así de calientes queman: mantenga cerradas las carcasas.",
        ),
        Way::MoveFirst => {
            (" Its pipe is counted as it is now.", " Su tubo se cuenta como está ahora.")
        }
        _ => ("", ""),
    })
}

/// Lower supply that the pieces allow, in a sentence.
pub fn supply_enough(oversize: &Oversize, system: System) -> String {
    match oversize.supply_enough {
        Some(enough) if enough < oversize.supply => say!(
            "With these pieces the loads are met at a supply of {} already: an outdoor reset may \
             be set by that.",
            "Con estas piezas las cargas ya se cubren con un suministro de {}: por eso se puede \
             ajustar una compensación exterior.";
            value(enough, system)
        ),
        _ => either((
            "The loads just take this supply.",
            "Las cargas necesitan justo este suministro.",
        ))
        .to_string(),
    }
}

/// How long the thermostats call, in a sentence.
pub fn calls_at_half(oversize: &Oversize, system: System) -> String {
    say!(
        "At half of the load and this supply thermostats call for {} of the time; with elements \
         that just meet the loads for 50 %.",
        "Con la mitad de la carga y este suministro los termostatos piden calor {} del tiempo; \
         con elementos que cubren justo las cargas, 50 %.";
        value(Value::share(oversize.calls_at_half), system)
    )
}

/// What that does to the burner, in a sentence.
pub fn burner_runs(burner: &Burner) -> String {
    say!(
        "While all call, the burner at its least runs {}; with elements that just meet the loads, \
         {}.",
        "Mientras todos piden, el quemador en su mínimo marcha {}; con elementos que cubren justo \
         las cargas, {}.";
        runs(burner.built),
        runs(burner.exact)
    )
}

fn runs(running: Running) -> String {
    match running {
        Running::Throughout => either(("throughout", "todo el tiempo")).to_string(),
        Running::Cycling(cycle) => say!("for {} at a time", "{} cada vez"; minutes(cycle.on_s)),
    }
}
