//! What the owner should know once the system runs.

use crate::language::{Both, either};

/// What the owner should know, each with a heading.
pub fn care_items() -> Vec<(&'static str, &'static str)> {
    CARE.iter().map(|&(title, how)| (either(title), either(how))).collect()
}

const CARE: &[(Both, Both)] = &[
    (
        ("Bleeding", "Sacar el aire"),
        (
            "Gurgling, or an element that is cool along its top, is air. With the water cool, \
             open its vent a little over a cup until water comes, close it, and look at the gauge.",
            "Si gorgotea, o un elemento está frío por arriba, es aire. Con el agua fría, abra un \
             poco su purgador sobre una taza hasta que salga agua, ciérrelo y mire el manómetro.",
        ),
    ),
    (
        ("The gauge", "El manómetro"),
        (
            "Cold, it should stand near the fill pressure on this sheet. If it falls again and \
             again, there is a leak: call. Water that is topped up again and again rusts the \
             system.",
            "En frío debe estar cerca de la presión de llenado de esta hoja. Si baja una y otra \
             vez, hay una fuga: llame. El agua que se repone una y otra vez oxida el sistema.",
        ),
    ),
    (
        ("Fins", "Aletas"),
        (
            "Once a year, cold, take the front off and vacuum the fins with a soft brush; \
             straighten bent ones. Never paint fins.",
            "Una vez al año, en frío, quite el frente y aspire las aletas con un cepillo suave; \
             enderece las dobladas. Nunca pinte las aletas.",
        ),
    ),
    (
        ("Enclosures", "Carcasas"),
        (
            "They may be painted, with paint for warm metal. Keep the slot below and the damper \
             above free: no carpet, no furniture or curtain against them.",
            "Se pueden pintar, con pintura para metal caliente. Deje libres la ranura de abajo y \
             la compuerta de arriba: ni alfombra, ni muebles, ni cortina contra ellas.",
        ),
    ),
    (
        ("Water", "Agua"),
        (
            "No fresh water without need. Inhibitor, or glycol and its protection, is tested once \
             a year as its maker says.",
            "No ponga agua nueva sin necesidad. El inhibidor, o el glicol y su protección, se \
             prueba una vez al año como diga su fabricante.",
        ),
    ),
    (
        ("Cold weather", "Tiempo frío"),
        (
            "Leave the heating on, at 55 °F (13 °C) or more, when nobody is at home. A loop that \
             stood frozen is not heated before it was looked at.",
            "Deje la calefacción encendida, a 55 °F (13 °C) o más, cuando no haya nadie en casa. \
             Un circuito que se heló no se calienta antes de revisarlo.",
        ),
    ),
    (
        ("If a room is cold", "Si una habitación está fría"),
        (
            "Thermostat up? Damper open, inlet free? Gauge as it should be? Pipe to the room hot? \
             If only the pipe is hot, bleed. If nothing is hot, or more rooms are cold, call.",
            "¿Termostato alto? ¿Compuerta abierta, entrada libre? ¿Manómetro como debe ser? ¿Tubo \
             a la habitación caliente? Si solo el tubo está caliente, saque el aire. Si nada está \
             caliente, o hay más habitaciones frías, llame.",
        ),
    ),
    (
        ("Every year", "Cada año"),
        (
            "Burner, flue and combustion by someone licensed; relief valve, tank and carbon \
             monoxide alarms tested.",
            "Quemador, chimenea y combustión por alguien con licencia; válvula de alivio, tanque \
             y alarmas de monóxido de carbono probados.",
        ),
    ),
    (
        ("At once", "De inmediato"),
        (
            "Water from the relief valve, a gauge in the red, a smell of gas or an alarm: off at \
             the switch if it is safe, out of the house for gas and alarms, and call.",
            "Agua de la válvula de alivio, el manómetro en rojo, olor a gas o una alarma: apague \
             con el interruptor si es seguro, salga de la casa si es gas o una alarma, y llame.",
        ),
    ),
];
