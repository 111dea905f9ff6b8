//! The readings, and what they tell: what was found, how it was judged, what to do. What the owner
//! should know is in `care`.

mod care;

pub use care::care_items;

use crate::language::{either, say};
use crate::{circuit_at, existing, room_name, value};
use finrun_engine::commission::{AtTop, Beside, By, CircuitFinding, FillingFinding, RoomFinding};
use finrun_engine::job::{Draft, MeasuredField, SpotField};
use finrun_engine::quantity::{System, TemperatureDifference, Value};

fn percent(share: f64, system: System) -> String {
    value(Value::share(share), system)
}

pub fn filling_finding(finding: FillingFinding, system: System) -> String {
    let at = |pressure| value(pressure, system);
    match finding {
        FillingFinding::FillFits { .. } => {
            either(("The fill pressure is as planned.", "La presión de llenado es la del plan."))
                .to_string()
        }
        FillingFinding::FillLow { measured, planned, at_top, air_comes_in } => {
            let then = either(match air_comes_in {
                AtTop::TooLittle => (
                    "too little to keep air out. Top it up, and look for a leak.",
                    "muy poco para que no entre aire. Complétela y busque una fuga.",
                ),
                AtTop::Enough => (
                    "which will do; top it up all the same.",
                    "lo que alcanza; complétela de todos modos.",
                ),
            });
            say!(
                "The fill pressure of {} is below the planned {}: {} is left at the top, {then}",
                "La presión de llenado de {} está por debajo de los {} del plan: arriba quedan \
                 {}, {then}";
                at(measured),
                at(planned),
                at(at_top)
            )
        }
        FillingFinding::FillHigh { measured, planned, relief } => say!(
            "The fill pressure of {} is above the planned {}: warm, it may come to the relief \
             valve's {}. Let some water off, and see whether the fill valve leaks.",
            "La presión de llenado de {} está por encima de los {} del plan: en caliente puede \
             llegar a los {} de la válvula de alivio. Saque algo de agua y vea si la válvula de \
             llenado deja pasar.";
            at(measured),
            at(planned),
            at(relief)
        ),
        FillingFinding::ChargeFits { .. } => {
            either(("The tank's air is as planned.", "El aire del tanque es el del plan."))
                .to_string()
        }
        FillingFinding::ChargeLow { measured, planned } => say!(
            "The tank's air of {} is below the planned {}: it fills with water cold, and the \
             relief valve may drip when it is hot. Pump it up with no water pressing on it.",
            "El aire del tanque, de {}, está por debajo de los {} del plan: en frío se llena de \
             agua, y la válvula de alivio puede gotear en caliente. Ínflelo sin que ninguna agua \
             lo presione.";
            at(measured),
            at(planned)
        ),
        FillingFinding::ChargeHigh { measured, planned } => say!(
            "The tank's air of {} is above the planned {}: it holds no water to give back, and \
             the pressure falls when the system cools. Let some air off.",
            "El aire del tanque, de {}, está por encima de los {} del plan: no guarda agua para \
             devolver, y la presión cae cuando el sistema se enfría. Sáquele algo de aire.";
            at(measured),
            at(planned)
        ),
        FillingFinding::ColderThanPlanned { measured, planned } => say!(
            "It is {} outside, colder than the design day's {}: rooms may be cool, and nothing is \
             wrong.",
            "Afuera hay {}, más frío que los {} del día de diseño: las habitaciones pueden estar \
             frescas, y nada está mal.";
            value(measured, system),
            value(planned, system)
        ),
    }
}

/// The finding in short, for its heading.
pub fn circuit_verdict(finding: &CircuitFinding) -> &'static str {
    either(match finding {
        CircuitFinding::HalfRead => ("Half read", "Leído a medias"),
        CircuitFinding::TooCool { .. } => ("Too cool to judge", "Muy frío para juzgar"),
        CircuitFinding::Fits { .. } | CircuitFinding::FlowFits { .. } => {
            ("As it should be", "Como debe ser")
        }
        CircuitFinding::FlowLow { .. } => ("Low flow", "Poco caudal"),
        CircuitFinding::FlowHigh { .. } => ("More flow than meant", "Más caudal del previsto"),
        CircuitFinding::Still { .. } => ("Air, or shut", "Aire, o cerrado"),
        CircuitFinding::HardlyCools { .. } => ("Gives hardly any heat", "Casi no da calor"),
        CircuitFinding::Backward { .. } => {
            ("Return hotter than supply", "Retorno más caliente que el suministro")
        }
        CircuitFinding::LessHeat { .. } => {
            ("Less heat than calculated", "Menos calor que lo calculado")
        }
        CircuitFinding::MoreHeat { .. } => ("Readings disagree", "Las lecturas no concuerdan"),
        CircuitFinding::Reversed { .. } => ("Reversed flow", "Caudal al revés"),
        CircuitFinding::ValveFits { .. } => ("Valve as it should be", "Válvula como debe ser"),
        CircuitFinding::ValveOff { .. } => ("Wrong setting", "Mal ajustada"),
    })
}

pub fn circuit_finding(draft: &Draft, finding: &CircuitFinding, system: System) -> String {
    let degrees = |drop: TemperatureDifference| value(drop, system);
    match *finding {
        CircuitFinding::HalfRead => either((
            "Read supply and return both, at the same time: one alone tells nothing.",
            "Lea suministro y retorno, los dos al mismo tiempo: uno solo no dice nada.",
        ))
        .to_string(),
        CircuitFinding::TooCool { supply } => say!(
            "Water of {} is too little warmer than the rooms. Read again once it is hot and no \
             reading changes.",
            "El agua de {} está muy poco más caliente que las habitaciones. Lea otra vez cuando \
             esté caliente y ninguna lectura cambie.";
            value(supply, system)
        ),
        CircuitFinding::Fits { drop, expected } => say!(
            "The water loses {}; at this supply {} was calculated.",
            "El agua pierde {}; con este suministro se calcularon {}.";
            degrees(drop),
            degrees(expected)
        ),
        CircuitFinding::FlowFits { measured, meant } => say!(
            "{} flow, where {} is meant. Read supply and return too: they tell of the heat.",
            "{} de caudal, donde se prevén {}. Lea también suministro y retorno: ellos hablan del \
             calor.";
            value(measured, system),
            value(meant, system)
        ),
        CircuitFinding::FlowLow { share, by } => say!(
            "About {} of the flow that is meant, {}. Bleed it, open what is throttled or half \
             shut, clean the strainer, see the circulator's speed.",
            "Cerca del {} del caudal previsto, {}. Saque el aire, abra lo que esté estrangulado o \
             medio cerrado, limpie el filtro, vea la velocidad del circulador.";
            percent(share, system),
            judged_by(by, system)
        ),
        CircuitFinding::FlowHigh { share, by } => say!(
            "About {} of the flow that is meant, {}. Throttle its valve or slow the circulator; \
             other circuits may be short of it.",
            "Cerca del {} del caudal previsto, {}. Estrangule su válvula o baje la velocidad del \
             circulador; a otros circuitos les puede faltar.";
            percent(share, system),
            judged_by(by, system)
        ),
        CircuitFinding::Still { share, by } => say!(
            "About {} of the flow that is meant, {}. Most often air stands at a high point, or a \
             valve is shut, or its zone valve does not open. Purge it again.",
            "Cerca del {} del caudal previsto, {}. Casi siempre hay aire en un punto alto, o una \
             válvula cerrada, o su válvula de zona no abre. Púrguelo otra vez.";
            percent(share, system),
            judged_by(by, system)
        ),
        CircuitFinding::HardlyCools { drop, expected } => say!(
            "The water loses only {} where {} was calculated. It goes another way (a bypass, a \
             valve that leaks past), or the elements give no heat: dampers shut, inlets or fins \
             blocked.",
            "El agua pierde solo {} donde se calcularon {}. Se va por otro lado (un bypass, una \
             válvula que deja pasar), o los elementos no dan calor: compuertas cerradas, entradas \
             o aletas tapadas.";
            degrees(drop),
            degrees(expected)
        ),
        CircuitFinding::Backward { supply, back } => say!(
            "The return of {} is hotter than the supply of {}. Either the two were read the wrong \
             way round, or the water runs backward: circulator the wrong way round, no flow check.",
            "El retorno de {} está más caliente que el suministro de {}. O los dos se leyeron \
             cambiados, o el agua corre al revés: circulador puesto al revés, sin válvula de \
             retención.";
            value(back, system),
            value(supply, system)
        ),
        CircuitFinding::LessHeat { share } => say!(
            "The measured flow is right, and flow times drop comes to {} of the heat calculated. \
             Look at dampers, at carpet and furniture before the inlets, at bent and dusty fins.",
            "El caudal medido es correcto, y el caudal por la caída da el {} del calor calculado. Mire las \
             compuertas, la alfombra y los muebles delante de las entradas, las aletas dobladas y \
             con polvo.";
            percent(share, system)
        ),
        CircuitFinding::MoreHeat { share } => say!(
            "Flow times drop comes to {} of the heat calculated, more than the elements can give. \
             Read flow and temperatures again.",
            "El caudal por la caída da el {} del calor calculado, más de lo que los elementos pueden dar. \
             Lea otra vez caudal y temperaturas.";
            percent(share, system)
        ),
        CircuitFinding::Reversed { first, last } => say!(
            "{} is cooler and {} warmer than the plan has them beside each other, and it fits \
             water that enters from the other end. Feel which end is hotter; if it is the last \
             room's, supply and return are crossed.",
            "{} está más fría y {} más caliente de lo que el plan las tiene una frente a otra, y \
             eso encaja con agua que entra por el otro extremo. Toque qué extremo está más \
             caliente; si es el de la última habitación, suministro y retorno están cruzados.";
            room_name(draft, first),
            room_name(draft, last)
        ),
        CircuitFinding::ValveFits { set } => {
            say!(
                "The valve stands at a Cv of {}, as planned.",
                "La válvula está en un Cv de {}, como en el plan.";
                value(Value::number(set), system)
            )
        }
        CircuitFinding::ValveOff { set, planned } => {
            let turn = either(match set > planned {
                true => ("Throttle", "Ciérrela un poco"),
                false => ("Open", "Ábrala más"),
            });
            say!(
                "The valve stands at a Cv of {}; the plan has {}. {turn} it, then read again.",
                "La válvula está en un Cv de {}; el plan tiene {}. {turn}, luego lea otra vez.";
                value(Value::number(set), system),
                value(Value::number(planned), system)
            )
        }
    }
}

fn judged_by(by: By, system: System) -> String {
    match by {
        By::Meter { measured, meant } => {
            say!(
                "by {} measured, where {} is meant",
                "por {} medidos, donde se prevén {}";
                value(measured, system),
                value(meant, system)
            )
        }
        By::Drop { drop, expected } => say!(
            "by its drop of {}, where {} was calculated at this supply",
            "por su caída de {}, donde se calcularon {} con este suministro";
            value(drop, system),
            value(expected, system)
        ),
    }
}

/// The finding in short, for its heading.
pub fn room_verdict(finding: &RoomFinding) -> &'static str {
    either(match finding {
        RoomFinding::Fits { .. } => ("Warm enough", "Bastante caliente"),
        RoomFinding::Warm { .. } => ("Too warm", "Demasiado caliente"),
        RoomFinding::NotJudged { .. } => ("Cool", "Fría"),
        RoomFinding::BehindCircuit { .. } => ("Cool, as its circuit", "Fría, como su circuito"),
        RoomFinding::Undersized { .. } => ("Undersized here", "Insuficiente aquí"),
        RoomFinding::LosesMore { .. } => ("Loses more, or gives less", "Pierde más, o da menos"),
        RoomFinding::WithZone { .. } => ("Cool with its zone", "Fría con su zona"),
    })
}

pub fn room_finding(draft: &Draft, finding: &RoomFinding, system: System) -> String {
    let degrees = |temperature| value(temperature, system);
    match *finding {
        RoomFinding::Fits { air, wanted } => {
            say!(
                "{}, where {} is wanted.",
                "{}, donde se quieren {}.";
                degrees(air), degrees(wanted)
            )
        }
        RoomFinding::Warm { air, wanted } => say!(
            "{} where {} is wanted. Close its damper a little, or see where the thermostat hangs.",
            "{} donde se quieren {}. Cierre un poco su compuerta, o vea dónde está el termostato.";
            degrees(air),
            degrees(wanted)
        ),
        RoomFinding::NotJudged { air, wanted } => say!(
            "{} where {} is wanted. Type the outdoor temperature and the supply, and it can be \
             judged.",
            "{} donde se quieren {}. Escriba la temperatura exterior y el suministro, y se podrá \
             juzgar.";
            degrees(air),
            degrees(wanted)
        ),
        RoomFinding::BehindCircuit { air, wanted, first } => say!(
            "{} where {} is wanted. Mend {} first, then read again.",
            "{} donde se quieren {}. Primero corrija {}, luego lea otra vez.";
            degrees(air),
            degrees(wanted),
            circuit_at(draft, first)
        ),
        RoomFinding::Undersized { gives, loses, .. } => say!(
            "At this supply the element gives {}, and at this weather the room loses {}. Hotter \
             water, more element, or less loss.",
            "Con este suministro el elemento da {}, y con este tiempo la habitación pierde {}. \
             Agua más caliente, más elemento o menos pérdida.";
            value(gives, system),
            value(loses, system)
        ),
        RoomFinding::LosesMore { times, beside, .. } => {
            let how = either(match beside {
                Beside::Others => (
                    "Beside the other rooms of its zone",
                    "Frente a las otras habitaciones de su zona",
                ),
                Beside::AllTheTime => {
                    ("If the heat ran all the time", "Si la calefacción marchara todo el tiempo")
                }
            });
            say!(
                "{how}, it loses {} times what was calculated, or its element gives so much less. \
                 Look for a draught or missing insulation; for a shut damper, blocked inlet or \
                 dusty fins.",
                "{how}, pierde {} veces lo calculado, o su elemento da tanto menos. Busque una \
                 corriente de aire o aislamiento que falta; una compuerta cerrada, una entrada \
                 tapada o aletas con polvo.";
                value(Value::number((times * 10.0).round() / 10.0), system)
            )
        }
        RoomFinding::WithZone { air, wanted } => say!(
            "{} where {} is wanted, as its whole zone: the thermostat is set lower, or the house \
             is not warm yet.",
            "{} donde se quieren {}, como toda su zona: el termostato está más bajo, o la casa \
             todavía no está caliente.";
            degrees(air),
            degrees(wanted)
        ),
    }
}

/// What should come back at the supply that was measured.
pub fn expected_back(back: &str) -> String {
    say!(
        "At this supply {back} should come back.",
        "Con este suministro el agua debe volver a {back}."
    )
}

/// How many readings were taken, for the list of pages.
pub fn readings(count: usize) -> String {
    match count {
        0 => either(("nothing measured yet", "nada medido todavía")).to_string(),
        1 => either(("1 reading", "1 lectura")).to_string(),
        count => say!("{count} readings", "{count} lecturas"),
    }
}

pub(crate) fn measured_label(field: MeasuredField) -> &'static str {
    either(match field {
        MeasuredField::Outdoors => ("Outdoors meanwhile", "Afuera mientras tanto"),
        MeasuredField::Fill => ("Fill pressure, cold", "Presión de llenado, en frío"),
        MeasuredField::PreCharge => ("Expansion tank's air", "Aire del tanque de expansión"),
        MeasuredField::BoilerSupply => existing::BOILER_SUPPLY,
        MeasuredField::BoilerBack => existing::BOILER_BACK,
    })
}

pub(crate) fn spot_label(field: SpotField) -> &'static str {
    either(match field {
        SpotField::Supply => ("Supply", "Suministro"),
        SpotField::Back => ("Return", "Retorno"),
        SpotField::Flow => ("Flow", "Caudal"),
        SpotField::Valve => ("Valve, Cv", "Válvula, Cv"),
        SpotField::Air => ("Room", "Habitación"),
        SpotField::WaterIn => existing::WATER_BEFORE,
        SpotField::WaterOut => existing::WATER_BEHIND,
    })
}
