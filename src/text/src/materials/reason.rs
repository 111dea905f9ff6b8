//! Why something is on the materials list.

use super::{amount, subject_of};
use crate::language::{either, say};
use crate::value;
use finrun_engine::job::Draft;
use finrun_engine::quantity::{System, Value};
use finrun_engine::takeoff::item::{Amount, Reason, Whose};
use finrun_engine::takeoff::list::Because;

/// Why something is there, and for whom how much.
pub fn because(draft: &Draft, because: &Because, system: System) -> String {
    let mut said = reason(because.reason, system);
    if let [(Whose::House, of)] = because.parts[..] {
        // Where others have a share of the line the number tells, elsewhere it is the line's.
        if let Reason::BoilerRoom | Reason::ColdReturn | Reason::Threads = because.reason {
            said += &format!(": {}", amount(of, system));
        }
        return said;
    }
    let one = |(whose, of): &(Whose, Amount)| {
        let times = if let Amount::Count(_) = of { "× " } else { "" };
        format!("{} {times}{}", subject_of(draft, *whose), amount(*of, system))
    };
    said += ": ";
    said += &because.parts.iter().map(one).collect::<Vec<_>>().join("; ");
    said
}

fn reason(reason: Reason, system: System) -> String {
    match reason {
        Reason::Every(spacing) => say!("every {}", "cada {}"; value(spacing, system)),
        Reason::Feeds { volt_amperes } => format!("24 V, {volt_amperes:.0} VA"),
        Reason::TakesUp { volume: Some(volume) } => {
            say!(
                "takes up what the water grows; {}",
                "recibe lo que crece el agua; {}";
                value(Value::liquid(volume), system)
            )
        }
        Reason::Joints(joints) => {
            say!("for {joints} soldered joints", "para {joints} uniones soldadas")
        }
        Reason::Threaded(threads) => say!("for {threads} threads", "para {threads} roscas"),
        Reason::Freezing { glycol } => {
            say!(
                "against freezing, {}",
                "contra la congelación, {}";
                value(Value::liquid(glycol), system)
            )
        }
        plain => plain_reason(plain).to_string(),
    }
}

fn plain_reason(reason: Reason) -> &'static str {
    either(match reason {
        Reason::Heats => ("heats", "calienta"),
        Reason::OverPieces => ("over the pieces", "sobre las piezas"),
        Reason::OverPipe => ("over pipe that runs on", "sobre el tubo que sigue"),
        Reason::EnclosureEnds => ("ends of enclosures", "extremos de las carcasas"),
        Reason::EnclosureTurns => ("where the wall turns", "donde la pared dobla"),
        Reason::EnclosureRunsOn => ("where the enclosure runs on", "donde la carcasa sigue"),
        Reason::BetweenPieces => ("between two pieces", "entre dos piezas"),
        Reason::AtPieces => ("at the pieces", "en las piezas"),
        Reason::Holes => ("where pipe passes a floor", "donde el tubo cruza un piso"),
        Reason::HolesTaken => (
            "where pipe passes a floor, taken as twice",
            "donde el tubo cruza un piso, tomado como dos veces",
        ),
        Reason::Way => ("on the way", "en el camino"),
        Reason::LongStraight => {
            ("in straights longer than a stick", "en rectas más largas que una barra")
        }
        Reason::Parts => ("where the water parts and joins", "donde el agua se divide y se junta"),
        Reason::FurtherZone => ("to a further zone", "a otra zona"),
        Reason::BoilerRoom => (
            "in the boiler room, as typed or taken there",
            "en el cuarto de caldera, como se escribió o se supuso",
        ),
        Reason::SizesMeet => ("where sizes meet", "donde cambia el tamaño"),
        Reason::MaterialsMeet => ("where copper and PEX meet", "donde se unen cobre y PEX"),
        Reason::Threads => {
            ("at boiler, air eliminator and flanges", "en caldera, eliminador de aire y bridas")
        }
        Reason::Purges => {
            ("to shut, purge and drain it alone", "para cerrarlo, purgarlo y vaciarlo solo")
        }
        Reason::Balances => ("sets the flow", "fija el caudal"),
        Reason::StartsZone => ("starts the zone", "arranca la zona"),
        Reason::Switches => ("starts a circulator", "arranca un circulador"),
        Reason::MeasuredWire => ("as measured", "según medida"),
        Reason::MovesWater => ("moves the water", "mueve el agua"),
        Reason::KeepsWay => {
            ("keeps water from running backward", "evita que el agua corra al revés")
        }
        Reason::ColdReturn => (
            "warms the return, too cool for this boiler",
            "calienta el retorno, demasiado frío para esta caldera",
        ),
        Reason::Manifold => ("a room's two tubes", "los dos tubos de una habitación"),
        Reason::TakesAirOut => ("takes air out", "saca el aire"),
        Reason::HighPoint => (
            "where air gathers: the highest element",
            "donde se junta el aire: el elemento más alto",
        ),
        Reason::TakesUp { .. } => ("takes up what the water grows", "recibe lo que crece el agua"),
        Reason::Fills => (
            "fills and guards; may come with the boiler",
            "llena y protege; puede venir con la caldera",
        ),
        Reason::Every(_)
        | Reason::Feeds { .. }
        | Reason::Joints(_)
        | Reason::Threaded(_)
        | Reason::Freezing { .. } => ("", ""),
    })
}
