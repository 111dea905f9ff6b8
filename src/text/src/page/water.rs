//! Words of the element and its lengths, of the loop, its piping and circulator, and of the boiler.

use crate::language::{either, say, sentences};

sentences! { pub(super) ELEMENT;
    element: "The baseboard element", "El elemento de zócalo";
    element_note: "As the maker's label or table says. Invented or remembered numbers give invented lengths.",
        "Como lo dice la etiqueta o la tabla del fabricante. Números inventados o de memoria dan largos inventados.";
    rating: "Rating", "Potencia nominal";
    heating_effect_question: "Is the rating certified with a heating effect?",
        "¿La potencia nominal está certificada con efecto de calefacción?";
    stock: "Pieces your shop has", "Piezas que tiene su tienda";
    prices_and_counts: "Price and count of each length", "Precio y cantidad de cada largo";
    prices_and_counts_note: "Blank: without a price, as many in the shop as are wanted, none bought already. What was bought already costs nothing more and is used first.",
        "En blanco: sin precio, en la tienda hay cuantas se quieran, ninguna comprada. Lo ya comprado no cuesta nada más y se usa primero.";
}

sentences! { pub(super) PIPING;
    keep_pieces: "Keep these pieces", "Fijar estas piezas";
    let_pieces_go: "Let them go", "Soltarlas";
    kept_wrong: "Kept pieces that no longer fit", "Piezas fijadas que ya no caben";
    table_row_add: "Add a row", "Agregar renglón";
    more_of_element: "Derating, bare tube, end caps", "Reducción, tubo sin aletas, tapas finales";
    needs: "needs", "necesita";
    gets: "gets", "recibe";
    beside: "beside", "además de";
    from_elsewhere: "from elsewhere", "de otra fuente";
    no_element: "No element", "Sin elemento";
    finned_needed: "finned length needed at this water", "largo con aletas necesario con esta agua";
    short_word: "short by", "le faltan";
    over_load: "over the load", "sobre la carga";
    rule_of_thumb: "load over rated output would say", "carga entre potencia nominal daría";
    no_lengths_yet: "Lengths follow from the rooms.", "Los largos salen de las habitaciones.";
    in_pieces: "in", "en";
    water_in_out: "water", "agua";

    follow_the_water: "Follow the water", "Siga el agua";
    loop_settings: "Water and flow", "Agua y caudal";
    piping: "Piping", "Tubería";
    add_zone: "Add a zone", "Agregar zona";
    zone_name_label: "Name of the zone", "Nombre de la zona";
    zone_rooms: "Its rooms, in the order in which the water passes them",
        "Sus habitaciones, en el orden en que el agua pasa por ellas";
    zone_rooms_note: "Drag a room by its handle, or use the buttons and lists.",
        "Arrastre una habitación por su asa, o use los botones y las listas.";
    zone_empty: "No room hangs here. Move one here by its list or its handle.",
        "Aquí no hay ninguna habitación. Mueva una aquí con su lista o su asa.";
    trunk: "Pipe between the boiler and where the rooms' pipes begin",
        "Tubería entre la caldera y donde empiezan las de las habitaciones";
    where_it_hangs: "Tees and shut-off", "Tes y cierre";
    from_elements: "of element", "de elemento";
    return_default: "Unless a room's own page says otherwise", "Salvo que la página de una habitación diga otra cosa";
    way_there: "The way there, step by step", "El camino hasta allí, paso por paso";
    way_there_note: "Along the walls and round corners the pipe stays in the enclosure and warms the room.",
        "A lo largo de las paredes y en las esquinas la tubería va dentro de la carcasa y calienta la habitación.";
    add_step: "Add a step", "Agregar paso";
    other_pipe: "Other pipe", "Otra tubería";
    valves_and_parts: "Valves, tees and efficiency", "Válvulas, tes y eficiencia";
    circulator: "Circulator", "Circulador";
    curve_points: "Points of its curve", "Puntos de su curva";
    curve_note: "From the maker's chart, from no flow to the last: three points or more. The head falls as the flow grows.",
        "De la gráfica del fabricante, desde caudal cero hasta el último: tres puntos o más. La altura baja cuando el caudal crece.";
    zones_running: "Zones together and alone", "Zonas juntas y solas";
    calling: "Calling", "Piden calor";
    all_zones: "All zones", "Todas las zonas";
    whole_system: "The whole system", "Todo el sistema";
    try_zones: "Try any of them", "Pruebe las que quiera";
    draws: "Draws", "Consume";
    head_short: "Head", "Altura";
    fastest: "Fastest water", "Agua más rápida";
    balancing: "Balancing", "Balanceo";
    circuit_word: "Circuit", "Circuito";
    meant: "Meant", "Previsto";
    now: "Now", "Ahora";
    valve_takes: "Valve takes", "Toma la válvula";
    valve_order_word: "In turn", "Orden";
    flow_coefficient: "Cv", "Cv";
    return_word: "Return", "Retorno";
    return_reads: "Return reads", "Lectura del retorno";
    balancing_how: "Begin with every valve open and set the most throttled first; the last one stays open. Read the return of each circuit when the system has run long enough that no reading changes, and throttle further where the return is warmer than here, open where it is cooler.",
        "Empiece con todas las válvulas abiertas y ajuste primero la que más se cierra; la última queda abierta. Lea el retorno de cada circuito cuando el sistema haya trabajado hasta que ninguna lectura cambie; cierre más donde el retorno esté más caliente que aquí y abra donde esté más frío.";
    one_circuit: "One circuit has the whole flow: there is nothing to balance.",
        "Un solo circuito tiene todo el caudal: no hay nada que balancear.";
    not_fitted: "No balancing valves are chosen: the column of the valves says what they would have to take.",
        "No se eligieron válvulas de balanceo: la columna de las válvulas dice cuánto tendrían que tomar.";
    side_by_side: "Every arrangement side by side", "Todos los arreglos lado a lado";
}

sentences! { pub(super) LOOP;
    tube_label: "Tube", "Tubo";
    flow_from: "How is the flow fixed?", "¿Cómo se fija el caudal?";
    pipes: "Pipes and boiler room", "Tuberías y cuarto de caldera";
    boiler: "Boiler", "Caldera";
    drop_word: "drop", "de caída";
    length_word: "Length", "Largo";
    head_word: "Head", "Altura";
    supply: "supply", "suministro";
    back_to_boiler: "return", "retorno";
    checks: "Checks", "Comprobaciones";
    remedies: "Ways out", "Soluciones";
    working_out: "Working out what would help and what it costs…", "Calculando qué ayudaría y cuánto cuesta…";
    oversize_title: "What is built beyond the loads", "Lo que se instala más allá de las cargas";
    oversize_note: "Whole pieces are longer than what is needed, and a margin asks for more. Both cost feet; in return cooler water does.",
        "Las piezas enteras son más largas de lo necesario, y un margen pide más. Las dos cosas cuestan pies; a cambio basta agua menos caliente.";
    pieces_add: "Pieces add", "Agregan las piezas";
    pieces_give: "They give", "Dan las piezas";
    margin_gives: "Margin", "Margen";
    return_exact: "Return, were elements just long enough", "Retorno, si los elementos fueran apenas suficientes";
    numbers: "The same in numbers", "Lo mismo en números";
    stretch: "Stretch", "Tramo";
    water_in: "Water in", "Entra agua a";
    water_out: "Water out", "Sale agua a";
    heat: "Heat", "Calor";
    boiler_room: "Boiler room", "Cuarto de caldera";
    back_pipe: "Pipe back", "Tubería de retorno";
    flow: "Flow", "Caudal";
    velocity: "Velocity", "Velocidad";
    head: "Head for the circulator", "Altura para el circulador";
    drop: "Temperature drop", "Caída de temperatura";
    boiler_gives: "The boiler gives", "La caldera da";
    no_loop_yet: "The loop follows from the rooms.", "El circuito sale de las habitaciones.";
    symbol_circulator: "Circulator", "Circulador";
    symbol_expansion_tank: "Expansion tank", "Tanque de expansión";
    symbol_air_eliminator: "Air eliminator", "Eliminador de aire";
    symbol_flow_check: "Flow check", "Válvula de retención";
    symbol_zone_valve: "Zone valve", "Válvula de zona";
    symbol_balancing_valve: "Balancing valve", "Válvula de balanceo";
    symbol_diverter_tee: "Diverter tee", "Te desviadora";
    symbol_shut_valve: "Shut valve", "Válvula cerrada";
    water_along: "Water along each circuit", "El agua a lo largo de cada circuito";
    temperature_picture: "Water temperature along each circuit, from the circulator on, over the air of its rooms",
        "Temperatura del agua a lo largo de cada circuito, desde el circulador, sobre el aire de sus habitaciones";
    air_of_rooms: "air of the rooms", "aire de las habitaciones";
    pump_and_system: "Circulator and system", "Circulador y sistema";
    circulator_curve: "What the circulator gives", "Lo que da el circulador";
    the_system: "The system", "El sistema";
}

sentences! { pub(super) PLANT;
    needed_output: "The boiler must give", "La caldera debe dar";
    system_holds: "The system holds", "El sistema contiene";
    fill_cold: "Fill pressure, cold", "Presión de llenado, en frío";
    tank_least: "Expansion tank, at least", "Tanque de expansión, por lo menos";
    more_of_plant: "Water, burner, tank and control", "Agua, quemador, tanque y control";
    reset_title: "Outdoor reset", "Compensación exterior";
    reset_note: "The supply that just heats every room, from the design day to the mildest on which the house is heated. A control is set to a straight line: room + shift + slope × (room − outdoors).",
        "El suministro que apenas calienta todas las habitaciones, desde el día de diseño hasta el más templado en que se calienta la casa. Un control se ajusta a una recta: habitación + desplazamiento + pendiente × (habitación − exterior).";
    outdoors_word: "Outdoors", "Exterior";
    air_eliminator: "Air eliminator: in the supply pipe at the boiler's outlet, where the water is hottest. Behind it the expansion tank, and then the circulator, which so pumps away from the tank: the pressure at the tank stays, and rises everywhere else.",
        "Eliminador de aire: en el tubo de suministro a la salida de la caldera, donde el agua está más caliente. Detrás va el tanque de expansión y luego el circulador, que así bombea alejándose del tanque: la presión en el tanque se mantiene y sube en todo lo demás.";
}

pub fn pieces(count: usize) -> String {
    match count {
        1 => either(("1 piece", "1 pieza")).to_string(),
        count => say!("{count} pieces", "{count} piezas"),
    }
}

pub fn rooms_short(count: usize) -> String {
    match count {
        0 => either(("no room short", "ninguna habitación sin su calor")).to_string(),
        1 => either(("1 room short", "1 habitación sin su calor")).to_string(),
        count => say!("{count} rooms short", "{count} habitaciones sin su calor"),
    }
}

pub fn short_by(power: &str) -> String {
    say!("{power} short", "faltan {power}")
}

pub fn table_row(number: usize) -> String {
    say!("Row {number}", "Renglón {number}")
}

pub fn table_row_remove(number: usize) -> String {
    say!("Remove row {number}", "Quitar renglón {number}")
}

pub fn fitted(output: &str, water: &str, exponent: &str, worst: &str) -> String {
    say!(
        "Fitted by least squares: {output} at {water}, exponent {exponent}; no row strays more \
         than {worst} from it. Rows are taken at the rating flow.",
        "Ajustado por mínimos cuadrados: {output} a {water}, exponente {exponent}; ningún renglón \
         se aparta más de {worst}. Los renglones se toman con el caudal de la potencia nominal."
    )
}

pub fn assumed_value(value: &str) -> String {
    say!("assumed {}", "supuesto {}"; value.replace(' ', "\u{a0}"))
}

pub fn pipe_to(room: &str) -> String {
    say!("Pipe to {room}", "Tubería hasta {room}")
}

pub fn pressure_lost(stretch: &str) -> String {
    say!("Pressure lost, {stretch}", "Presión perdida, {stretch}")
}

pub fn water_after(stretch: &str) -> String {
    say!("Water after {stretch}", "Agua después de {stretch}")
}

pub fn loop_picture(supply: &str, back: &str) -> String {
    say!(
        "The piping from boiler to boiler, water from {supply} to {back}",
        "La tubería de caldera a caldera, agua de {supply} a {back}"
    )
}

pub fn checks_to_see(count: usize) -> String {
    match count {
        0 => either(("all hold", "todo cumple")).to_string(),
        count => say!("{count} to see", "{count} por ver"),
    }
}

pub fn checks_hold(count: usize) -> String {
    match count {
        1 => either(("1 check holds", "1 cumple")).to_string(),
        count => say!("{count} checks hold", "{count} cumplen"),
    }
}
