//! Words of the installation and of the commissioning sheet.

use crate::language::sentences;

sentences! { pub(super) SITE;
    to_heed: "To heed here", "Cuidado aquí";
    on_site: "On site", "En la obra";
    install_note: "From this job, in working order. Local codes and the makers' instructions stand above it; what the law keeps for licensed hands stays with them.",
        "Sale de este proyecto, en orden de trabajo. Los códigos locales y las instrucciones de los fabricantes están por encima; lo que la ley reserva a manos con licencia sigue siendo de ellas.";
    no_steps_yet: "The steps follow from the rooms and the loop.",
        "Los pasos salen de las habitaciones y del circuito.";
    all_phases: "Phases", "Etapas";
    step_more: "Note, photo, date", "Nota, foto, fecha";
    step_note: "Note", "Nota";
    step_photo: "Number of the photo", "Número de la foto";
    step_date: "Date", "Fecha";
    commission_note: "With every zone calling and the water hot, once no reading changes. A blank is not judged. Thermometers on the pipe under insulation read to about 2 °F (1 °C), and the judgement allows for that.",
        "Con todas las zonas pidiendo calor y el agua caliente, cuando ninguna lectura cambie. Lo que queda en blanco no se juzga. Los termómetros sobre el tubo, bajo aislamiento, leen con unos 2 °F (1 °C) de error, y el juicio lo toma en cuenta.";
    readings_whole: "Pressures and weather", "Presiones y clima";
    readings_circuits: "Circuits", "Circuitos";
    readings_circuits_note: "Supply where the circuit leaves the boiler room, return where it comes back, before it joins others.",
        "Suministro donde el circuito sale del cuarto de caldera, retorno donde vuelve, antes de juntarse con otros.";
    readings_rooms: "Rooms", "Habitaciones";
    readings_rooms_note: "In the middle of the room, about 5 ft (1.5 m) up, out of the sun.",
        "En medio de la habitación, a unos 5 pies (metro y medio) de altura, fuera del sol.";
    calculated: "calculated", "calculado";
    planned_for: "planned for", "previsto para";
    valve_open: "open", "abierta";
    hand_over: "Hand-over", "Entrega";
    care: "Care", "Cuidado";
    hand_over_said: "The system was shown, with its gauge, shut-offs, switch and thermostats. Findings above that were not mended are known to both.",
        "Se mostró el sistema, con su manómetro, válvulas de paso, interruptor y termostatos. Ambos conocen los defectos de arriba que no se corrigieron.";
    signed_by_installer: "Installed by: name, signature, date", "Instalado por: nombre, firma, fecha";
    signed_by_licensed: "Boiler and electrical by: name, licence, signature, date",
        "Caldera y electricidad por: nombre, licencia, firma, fecha";
    signed_by_owner: "Received by: name, signature, date", "Recibido por: nombre, firma, fecha";
    print_sheet: "Print", "Imprimir";
}
