//! The second line of a finding: its value, the limit it is held against, and why it matters.

use crate::language::{either, say};
use crate::piping::not_solved;
use crate::plant::minutes;
use crate::{in_units, tube, value};
use finrun_engine::check::{Check, Finding, Severity};
use finrun_engine::quantity::{Kind, Length, System, Unit, Value};

/// The value, the limit it is held against, and why it matters.
pub fn check_detail(check: &Check, system: System) -> String {
    let holds = check.severity == Severity::Holds;
    match check.finding {
        Finding::RoomsHeated { .. } => either((
            "Each at the water temperature that reaches it.",
            "Cada una con la temperatura del agua que le llega.",
        ))
        .to_string(),
        Finding::DoesNotFit { needed, fitted, .. } => say!(
            "It needs {} of finned length; the pieces that fit its walls have {}.",
            "Necesita {} de largo con aletas; las piezas que caben en sus paredes tienen {}.";
            value(needed, system), value(fitted, system)
        ),
        Finding::WaterTooCool { water, room, .. } => say!(
            "Water arrives at {} in a room of {}. Before the load is met it has cooled to the \
             room: no length would do.",
            "El agua llega a {} y la habitación está a {}. Antes de cubrir la carga ya se enfrió \
             hasta la habitación: ningún largo bastaría.";
            value(water, system), value(room, system)
        ),
        Finding::NoWall { load } => {
            say!(
                "It loses {} and has no free stretch of wall.",
                "Pierde {} y no tiene ningún tramo de pared libre.";
                value(load, system)
            )
        }
        Finding::NoLoad { load } => say!(
            "Its loss comes to {}. Is everything entered that lies between it and outdoors?",
            "Su pérdida resulta {}. ¿Está anotado todo lo que hay entre ella y el exterior?";
            value(load, system)
        ),
        Finding::OtherHeatCovers { load, other } => say!(
            "It loses {}, and {} of other heat is counted on: no baseboard is chosen. When that \
             heat stops, the room goes cold.",
            "Pierde {}, y se cuenta con {} de otro calor: no se elige zócalo. Cuando ese calor \
             se apaga, la habitación se enfría.";
            value(load, system), value(other, system)
        ),
        Finding::WallsRuledOut { free, .. } => say!(
            "{} of its free wall is ruled out for baseboard; the rest does not take enough.",
            "De su pared libre quedan excluidos {} para zócalo; el resto no alcanza.";
            value(free, system)
        ),
        Finding::NoPieceFits { shortest, takes } => say!(
            "The shortest piece is {} long, and the longest free stretch here takes {} beside its \
             ends.",
            "La pieza más corta mide {}, y el tramo libre más largo aquí admite {} además de sus \
             extremos.";
            value(shortest, system), value(takes, system)
        ),
        Finding::StockUsedUp { needed, fitted, .. } => say!(
            "It needs {} of finned length and gets {}. Its walls would take more, but no more \
             pieces are in the shop or bought.",
            "Necesita {} de largo con aletas y recibe {}. En sus paredes cabría más, pero no hay \
             más piezas en la tienda ni compradas.";
            value(needed, system), value(fitted, system)
        ),
        Finding::PricesMissing { .. } => either((
            "The least cost is not known without: the fewest pieces were chosen instead.",
            "Sin precios no se conoce el menor costo: se eligió el menor número de piezas.",
        ))
        .to_string(),
        Finding::FixedExceedsStock { there, .. } => {
            say!(
                "In the shop and bought already there are {there}.",
                "En la tienda y ya compradas hay {there}."
            )
        }
        Finding::PerArea { least, most, .. } if holds => say!(
            "A second opinion by floor area: such houses lie between {} and {} on such a day.",
            "Una segunda opinión por área de piso: casas así están entre {} y {} en un día así.";
            value(least, system), value(most, system)
        ),
        Finding::PerArea { least, most, .. } => say!(
            "A second opinion by floor area: such houses lie between {} and {} on such a day. Look \
             for a slip, or for something left out.",
            "Una segunda opinión por área de piso: casas así están entre {} y {} en un día así. \
             Busque un error, o algo que falte.";
            value(least, system), value(most, system)
        ),
        Finding::EnteredTwice { .. } => either((
            "Heat between two rooms is counted from one entry; the other room then knows.",
            "El calor entre dos habitaciones se cuenta de una sola anotación; la otra habitación \
             ya lo sabe.",
        ))
        .to_string(),
        Finding::Drop { planned, limit, .. } if holds => say!(
            "Planned: {}. Up to {} holds: whole feet and pipes add a little.",
            "Previsto: {}. Hasta {} cumple: los pies enteros y las tuberías agregan un poco.";
            value(planned, system), value(limit, system)
        ),
        Finding::Drop { planned, limit, .. } => say!(
            "Planned: {}. Above {} the last rooms get cool water.",
            "Previsto: {}. Por encima de {} las últimas habitaciones reciben agua fría.";
            value(planned, system), value(limit, system)
        ),
        Finding::Velocity { velocity, least, .. } if velocity < least => say!(
            "Below {} water may not carry air to the eliminator (common practice).",
            "Por debajo de {} el agua quizá no lleve el aire hasta el eliminador (práctica común).";
            value(least, system)
        ),
        Finding::Velocity { most, .. } if !holds => {
            say!(
                "Above {} the loop is heard (common practice).",
                "Por encima de {} el circuito se oye (práctica común).";
                value(most, system)
            )
        }
        Finding::Velocity { least, most, .. } => say!(
            "Between {} and {}: quiet, and air is carried along.",
            "Entre {} y {}: silencioso, y el agua se lleva el aire.";
            value(least, system), value(most, system)
        ),
        Finding::TubeCarries { carries, practice, .. } => say!(
            "By physics this tube carries {} at this drop before the loop is heard; practice stops \
             near {}.",
            "Por física este tubo lleva {} con esta caída antes de que el circuito se oiga; la \
             práctica se detiene cerca de {}.";
            rough(carries, system), rough(practice, system)
        ),
        Finding::Supply { limit, .. } if holds => {
            say!(
                "The boiler's limit is {}.",
                "El límite de la caldera es {}.";
                value(limit, system)
            )
        }
        Finding::Supply { limit, .. } => {
            say!(
                "The boiler stops at {}: it cannot make this water.",
                "La caldera se detiene a {}: no puede dar esta agua.";
                value(limit, system)
            )
        }
        Finding::ReturnCool { least, .. } => say!(
            "Below {} flue gas may condense in a boiler that is not made for it, and eat it \
             (common practice).",
            "Por debajo de {} los gases de combustión pueden condensar en una caldera que no está \
             hecha para eso, y corroerla (práctica común).";
            value(least, system)
        ),
        Finding::OutsideData { most, .. } => say!(
            "The water data end at {}. At the pressure of a house, water near there boils.",
            "Los datos del agua terminan a {}. A la presión de una casa, cerca de ahí el agua \
             hierve.";
            value(most, system)
        ),
        Finding::NotSolved { reason } => {
            say!(
                "{} No flow, head or temperature is to be trusted.",
                "{} Ningún caudal, altura ni temperatura es de fiar.";
                not_solved(reason)
            )
        }
        Finding::EmptyZone => either((
            "A zone without rooms heats nothing. Hang rooms on it, or remove it.",
            "Una zona sin habitaciones no calienta nada. Cuélguele habitaciones, o quítela.",
        ))
        .to_string(),
        Finding::MainSmaller { branch, .. } => {
            say!(
                "What hangs on it is {}, and all of that has to pass the main.",
                "Lo que cuelga de ella es de {}, y todo eso tiene que pasar por la principal.";
                tube(branch)
            )
        }
        Finding::PumpShort { meant, head, .. } => say!(
            "It gives {} of head there. Meant are {}: rooms get cooler water than planned.",
            "Allí da {} de altura. Están previstos {}: las habitaciones reciben agua más fría que \
             lo previsto.";
            value(Value::new(Kind::Head, head.si()), system), value(meant, system)
        ),
        Finding::Uneven { meant, .. } => say!(
            "Its fair share is {}. Water takes the easiest way; a balancing valve shares it.",
            "Su parte justa es {}. El agua toma el camino más fácil; una válvula de balanceo la \
             reparte.";
            value(meant, system)
        ),
        Finding::NoFlow { meant } => say!(
            "Its fair share is {}. Something is shut, or the others take all.",
            "Su parte justa es {}. Algo está cerrado, o los otros se lo llevan todo.";
            value(meant, system)
        ),
        Finding::FastAlone { most, .. } => say!(
            "With the others running it is quiet; alone the whole circulator pushes through it. \
             Above {} it is heard (common practice).",
            "Con las otras andando es silencioso; sola, todo el circulador empuja por ella. Por \
             encima de {} se oye (práctica común).";
            value(most, system)
        ),
        Finding::BoilerSize { output, needed, .. } if output < needed => say!(
            "{} is needed: on the coldest days the house stays cool.",
            "Se necesitan {}: en los días más fríos la casa se queda fría.";
            value(needed, system)
        ),
        Finding::BoilerSize { needed, most, .. } if holds => say!(
            "{} is needed; up to {} is usual (from memory).",
            "Se necesitan {}; hasta {} es usual (de memoria).";
            value(needed, system), value(most, system)
        ),
        Finding::BoilerSize { needed, most, .. } => say!(
            "{} is needed. Above {} it starts and stops more often than it must.",
            "Se necesitan {}. Por encima de {} enciende y apaga más de lo debido.";
            value(needed, system), value(most, system)
        ),
        Finding::ShortCycle { least_s, load, output, .. } => say!(
            "The smallest zone alone takes {}, the burner gives {} at least. Runs under {} wear it \
             and waste fuel (common practice).",
            "La zona más pequeña sola toma {}, el quemador da {} por lo menos. Encendidos de menos \
             de {} lo desgastan y gastan combustible (práctica común).";
            value(load, system), value(output, system), minutes(least_s)
        ),
        Finding::Boils { supply, .. } => say!(
            "At the fill pressure the supply of {} is too near to that: it bangs, and steam locks \
             the flow.",
            "A la presión de llenado el suministro de {} está demasiado cerca de eso: golpea, y el \
             vapor traba el caudal.";
            value(supply, system)
        ),
        Finding::FillLow { at_top, least, .. } => say!(
            "That leaves {} at the highest place, where {} are wanted so that air goes out and \
             none comes in (common practice).",
            "Eso deja {} en el lugar más alto, donde se quieren {} para que el aire salga y no \
             entre (práctica común).";
            value(at_top, system), value(least, system)
        ),
        Finding::ReliefNear { setting, .. } => say!(
            "It is set to {}, and begins to weep a tenth below (common practice).",
            "Está ajustada a {}, y empieza a gotear una décima parte antes (práctica común).";
            value(setting, system)
        ),
        Finding::MayFreeze { freezes_at, .. } => say!(
            "What is in them freezes from {} on, whenever the circulator rests.",
            "Lo que llevan se congela desde {}, cada vez que el circulador descansa.";
            value(freezes_at, system)
        ),
        Finding::ShutOff { load } => {
            say!(
                "It loses {} and gets nothing.",
                "Pierde {} y no recibe nada.";
                value(load, system)
            )
        }
        Finding::NotFinite => either((
            "Nothing that follows from it is to be trusted. Look for a zero or a slip of a digit.",
            "Nada de lo que sale de ahí es de fiar. Busque un cero o un dígito equivocado.",
        ))
        .to_string(),
    }
}

/// A length that is an estimate: whole feet, or whole metres.
fn rough(length: Length, system: System) -> String {
    let (unit, name) = match system {
        System::Us => (Unit::Foot, "ft"),
        System::Si => (Unit::Metre, "m"),
    };
    in_units(&format!("{:.0} {name}", length.to(unit)))
}
