//! Words for stock, prices, and what the pieces are chosen for.

use crate::language::{Both, either, say};
use finrun_engine::arrangement::{Counted, Proof, Together};
use finrun_engine::building::WallUse;
use finrun_engine::job::{Draft, Group, Objective, PriceField, Sticks, StockField};
use finrun_engine::quantity::{Money, Power, System, Value};

pub fn objective(objective: Objective) -> &'static str {
    either(match objective {
        Objective::Closest => ("As little element as does it", "El mínimo de elemento que alcance"),
        Objective::LeastCost => ("Least cost", "Menor costo"),
        Objective::FewestJoints => ("Fewest joints", "Menos uniones"),
        Objective::MostEven => {
            ("Rooms evenly warm in mild weather", "Habitaciones parejas en tiempo templado")
        }
    })
}

/// What choosing for it comes to.
pub fn objective_note(objective: Objective) -> &'static str {
    either(match objective {
        Objective::Closest => (
            "The least heat beyond what the rooms lose on the design day, room by room.",
            "El menor calor por encima de lo que pierden las habitaciones en el día de diseño, \
             habitación por habitación.",
        ),
        Objective::LeastCost => (
            "By your prices of pieces, enclosure, end caps and joints, for all rooms together; \
             where the price of a length is missing, the fewest pieces.",
            "Según sus precios de piezas, carcasa, tapas finales y uniones, para todas las \
             habitaciones juntas; donde falta el precio de un largo, el menor número de piezas.",
        ),
        Objective::FewestJoints => (
            "Long pieces rather than short ones, and few stretches of wall: less to solder.",
            "Piezas largas antes que cortas, y pocos tramos de pared: menos que soldar.",
        ),
        Objective::MostEven => (
            "In mild weather, when the water is cooler, each room gets nearly the same share of \
             its heat. It may take more element.",
            "En tiempo templado, con el agua menos caliente, cada habitación recibe casi la misma \
             parte de su calor. Puede llevar más elemento.",
        ),
    })
}

pub fn wall_use(wall_use: WallUse) -> &'static str {
    either(match wall_use {
        WallUse::AsNeeded => {
            ("As needed, outside walls first", "Según haga falta, primero paredes exteriores")
        }
        WallUse::Only => (
            "Here, and not at the room's other walls",
            "Aquí, y no en las otras paredes de la habitación",
        ),
        WallUse::Never => ("Not at this wall", "No en esta pared"),
    })
}

pub(crate) fn stock_label(field: StockField) -> &'static str {
    either(match field {
        StockField::Price => ("Price of one", "Precio de una"),
        StockField::Available => ("In the shop", "En la tienda"),
        StockField::Have => ("Bought already", "Ya compradas"),
    })
}

pub(crate) fn price_label(field: PriceField) -> &'static str {
    either(match field {
        PriceField::Joint => {
            ("Soldered joint, with coupling and time", "Unión soldada, con acople y tiempo")
        }
        PriceField::Enclosure => (
            "Enclosure, if not in the price of a piece",
            "Carcasa, si no va en el precio de una pieza",
        ),
        PriceField::EndCap => ("End cap", "Tapa final"),
        PriceField::Corner => ("Corner of the enclosure", "Esquina de la carcasa"),
        PriceField::Pipe => ("Pipe", "Tubo"),
        PriceField::Elbow => ("Elbow, soldered in", "Codo, ya soldado"),
        PriceField::Tee => ("Tee, soldered in", "Te, ya soldada"),
        PriceField::DiverterTee => ("Diverter tee", "Te desviadora"),
        PriceField::BalancingValve => ("Balancing valve", "Válvula de balanceo"),
        PriceField::ZoneValve => ("Zone valve", "Válvula de zona"),
        PriceField::Circulator => {
            ("Circulator, with flanges and relay", "Circulador, con bridas y relé")
        }
        PriceField::Thermostat => ("Thermostat, with its wire", "Termostato, con su cable"),
        PriceField::ManifoldPorts => ("Pair of manifold ports", "Par de salidas de colector"),
        PriceField::LoopValves => (
            "Shut-off, purge and drain valves of a loop",
            "Válvulas de paso, purga y drenaje de un circuito",
        ),
        PriceField::SpliceCover => ("Splice cover", "Tapajuntas"),
        PriceField::Cradle => ("Bracket with cradle", "Soporte con cuna"),
        PriceField::ExpansionPad => ("Expansion pad", "Almohadilla de dilatación"),
        PriceField::Coupling => ("Coupling", "Acople"),
        PriceField::Reducer => ("Reducer", "Reductor"),
        PriceField::Adapter => ("Adapter, solder to thread", "Adaptador, de soldar a rosca"),
        PriceField::Transition => ("Transition, copper to PEX", "Transición, de cobre a PEX"),
        PriceField::Hanger => ("Hanger or clip", "Colgador o abrazadera"),
        PriceField::PipeCover => ("Pipe insulation", "Aislamiento de tubo"),
        PriceField::ShutOffValve => ("Shut-off valve", "Válvula de paso"),
        PriceField::PurgeValve => ("Purge valve", "Válvula de purga"),
        PriceField::DrainValve => ("Drain valve", "Válvula de drenaje"),
        PriceField::FlowCheck => ("Flow-check valve", "Válvula de retención"),
        PriceField::MixingValve => ("Mixing valve", "Válvula mezcladora"),
        PriceField::Flanges => ("Pair of flanges", "Par de bridas"),
        PriceField::Relay => ("Relay", "Relé"),
        PriceField::Transformer => ("Transformer", "Transformador"),
        PriceField::Wire => ("Thermostat wire", "Cable de termostato"),
        PriceField::AirEliminator => ("Air eliminator", "Eliminador de aire"),
        PriceField::AirVent => ("Air vent", "Purgador de aire"),
        PriceField::ExpansionTank => ("Expansion tank", "Tanque de expansión"),
        PriceField::FillValve => ("Fill valve", "Válvula de llenado"),
        PriceField::BackflowPreventer => ("Backflow preventer", "Dispositivo antirreflujo"),
        PriceField::ReliefValve => ("Relief valve", "Válvula de alivio"),
        PriceField::Gauge => ("Pressure and temperature gauge", "Manómetro y termómetro"),
        PriceField::Solder => ("Lead-free solder, a spool", "Soldadura sin plomo, un carrete"),
        PriceField::Flux => ("Flux, a jar", "Fundente, un frasco"),
        PriceField::Sealant => ("Thread sealant, a jar", "Sellador de roscas, un frasco"),
        PriceField::Gas => ("Gas for the torch, a bottle", "Gas para el soplete, un cilindro"),
        PriceField::Glycol => ("Propylene glycol, a can", "Propilenglicol, una lata"),
        PriceField::Insulation => {
            ("Insulating a wall, ceiling or floor", "Aislar una pared, un techo o un piso")
        }
        PriceField::BetterElement => (
            "Higher-output element, above this one",
            "Elemento de más potencia, por encima de este",
        ),
    })
}

/// A kind of material.
pub fn group(group: Group) -> &'static str {
    either(match group {
        Group::Element => ("Element", "Elemento"),
        Group::Enclosure => ("Enclosure", "Carcasa"),
        Group::Pipe => ("Pipe", "Tubo"),
        Group::Fittings => ("Fittings", "Conexiones"),
        Group::Supports => ("Hangers, pads, insulation", "Colgadores, almohadillas, aislamiento"),
        Group::Valves => ("Valves", "Válvulas"),
        Group::BoilerRoom => ("Boiler room", "Cuarto de caldera"),
        Group::Controls => ("Controls", "Controles"),
        Group::Supplies => ("Solder and other supplies", "Soldadura y otros consumibles"),
        Group::Labor => ("Work", "Trabajo"),
    })
}

pub(crate) fn sticks(sticks: Sticks) -> &'static str {
    either(match sticks {
        Sticks::TenAndTwenty => ("10 and 20 ft", "10 y 20 pies"),
        Sticks::Twenty => ("20 ft only", "Solo 20 pies"),
        Sticks::Ten => ("10 ft only", "Solo 10 pies"),
    })
}

/// How many prices are typed.
pub fn prices_fact(draft: &Draft) -> String {
    let fields = draft.price_fields().into_iter();
    match fields.filter(|field| draft.entry(*field).is_some()).count() {
        0 => either(("none typed", "ninguno escrito")).to_string(),
        count => say!("{count} typed", "escritos: {count}"),
    }
}

/// One of several stretches of a wall, counted from zero.
pub fn wall_stretch(nth: usize) -> String {
    say!("stretch {}", "tramo {}"; nth + 1)
}

pub fn stretch_holds(nth: usize, pieces: &str) -> String {
    say!("Stretch {}: {pieces}", "Tramo {}: {pieces}"; nth + 1)
}

/// Pieces that stay.
pub fn kept_pieces(pieces: &str) -> String {
    say!("Kept: {pieces}", "Se quedan: {pieces}")
}

/// What is known of the choice of pieces: that it is best, or how far off it may be.
pub fn together(together: &Together, system: System) -> String {
    let value = |si: f64| counted(together.counted, si, system);
    let held = value(together.value);
    let mut said = match (together.proof, together.counted) {
        (Proof::Unsettled, _) => {
            return either((
                "These pieces are not known to be the best: the flow depends on the pieces and \
                 the pieces on the flow, and the two came to no rest. Fix the flow by its \
                 temperature drop, or fit balancing valves.",
                "No se sabe si estas piezas son las mejores: el caudal depende de las piezas y \
                 las piezas del caudal, y los dos no llegaron a reposo. Fije el caudal por su \
                 caída de temperatura, o ponga válvulas de balanceo.",
            ))
            .to_string();
        }
        (Proof::Best, Counted::Surplus) => {
            return either((
                "Proven: no other choice heats the rooms with less element.",
                "Demostrado: ninguna otra elección calienta las habitaciones con menos elemento.",
            ))
            .to_string();
        }
        (Proof::Best, Counted::Spread) => say!(
            "Proven: no other choice keeps the rooms closer together in mild weather. The warmest \
             gets {held} times the share of its heat that the coolest gets.",
            "Demostrado: ninguna otra elección deja las habitaciones más parejas en tiempo \
             templado. La más caliente recibe {held} veces la parte de su calor que recibe la más \
             fría."
        ),
        (Proof::Best, Counted::Cost) => say!(
            "Proven: no other choice costs less than {held} for pieces, enclosure, end caps and \
             joints.",
            "Demostrado: ninguna otra elección cuesta menos de {held} en piezas, carcasa, tapas \
             finales y uniones."
        ),
        (Proof::Best, _) => say!(
            "Proven: no other choice has fewer than {held}.",
            "Demostrado: ninguna otra elección tiene menos de {held}."
        ),
        (Proof::Within { bound }, Counted::Spread) => say!(
            "The search was stopped. The warmest room gets {held} times the share of its heat \
             that the coolest gets in mild weather; no choice is below {}.",
            "La búsqueda se detuvo. En tiempo templado la habitación más caliente recibe {held} \
             veces la parte de su calor que recibe la más fría; ninguna elección baja de {}.";
            value(bound)
        ),
        (Proof::Within { bound }, of) => {
            let (verb, more) = match of {
                Counted::Surplus => (
                    either(("gives", "da")),
                    either((
                        " more than the rooms lose",
                        " más de lo que pierden las habitaciones",
                    )),
                ),
                Counted::Cost => (either(("costs", "cuesta")), ""),
                _ => (either(("has", "tiene")), ""),
            };
            let (bound, off) = (value(bound), value(together.value - bound));
            say!(
                "The search was stopped: this choice {verb} {held}{more}, and none {verb} less \
                 than {bound}. It is at most {off} off.",
                "La búsqueda se detuvo: esta elección {verb} {held}{more}, y ninguna {verb} menos \
                 de {bound}. Se aparta a lo más {off}."
            )
        }
    };
    if together.counted == Counted::Pieces {
        said += either((
            " Prices are missing, so the fewest pieces were chosen.",
            " Faltan precios, así que se eligió el menor número de piezas.",
        ));
    }
    said
}

fn counted(counted: Counted, si: f64, system: System) -> String {
    let value = |value: Value| crate::value(value, system);
    let many = |one: Both, many: Both| {
        let number = value(Value::count(si.max(0.0) as usize));
        format!("{number} {}", either(if si == 1.0 { one } else { many }))
    };
    match counted {
        Counted::Surplus => value(Power::from_si(si).into()),
        Counted::Cost => value(Money::from_si(si).into()),
        Counted::Pieces => many(("piece", "pieza"), ("pieces", "piezas")),
        Counted::Joints => many(("joint", "unión"), ("joints", "uniones")),
        Counted::Spread => value(Value::number(si)),
    }
}
