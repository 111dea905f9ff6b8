//! Words of the rooms, of what lies around them, of place and climate, and of the heat loss.

use crate::language::{either, say, sentences};
use crate::value;
use finrun_engine::building::{Band, RoomUse, SlabCompared};
use finrun_engine::job::GroundMethod;
use finrun_engine::quantity::{Power, System};

sentences! { pub(super) HOUSE;
    house: "The house", "La casa";
    rooms_order: "Rooms, in the order in which the water passes them",
        "Habitaciones, en el orden en que el agua pasa por ellas";
    add_room: "Add a room", "Agregar habitación";
    new_room_name: "Name of the new room", "Nombre de la habitación nueva";
    no_rooms: "No rooms yet. Name the first one the water will reach.",
        "Todavía no hay habitaciones. Escriba el nombre de la primera a la que llega el agua.";
    change: "Change", "Cambiar";
    remove: "Remove", "Quitar";
    earlier: "Earlier", "Antes";
    later: "Later", "Después";
    room_name_label: "Name", "Nombre";
    size: "Size", "Medidas";
    more_of_room: "Shape, temperature and air", "Forma, temperatura y aire";
    pipe_to_room: "Pipe to this room", "Tubería hasta esta habitación";
    surfaces: "Walls, ceiling, floor", "Paredes, techo, piso";
    surfaces_note: "Enter what lies between this room and somewhere colder, and every wall that baseboard may stand on.",
        "Anote lo que hay entre esta habitación y un lugar más frío, y cada pared donde pueda ir zócalo.";
    add_four_walls: "Add its four walls", "Agregar sus cuatro paredes";
    add_outside_wall: "Add an outside wall", "Agregar pared exterior";
    add_inside_wall: "Add an inside wall", "Agregar pared interior";
    add_ceiling: "Add a ceiling", "Agregar techo";
    add_floor: "Add a floor", "Agregar piso";
    add_window: "Add a window", "Agregar ventana";
    add_door: "Add a door", "Agregar puerta";
    which_side: "Which wall (north, street side …)", "Qué pared (norte, lado de la calle …)";
    more_of_surface: "Area, free length", "Área, largo libre";
    done_room: "Done with this room", "Habitación lista";
    no_such_room: "This room is gone. Undo brings it back.", "Esta habitación ya no existe. Deshacer la recupera.";
    next_room: "Next room", "Habitación siguiente";
    complete: "complete", "completa";
    nothing_between: "no surfaces yet", "sin superficies todavía";

    house_loses: "on the design day", "en el día de diseño";
    no_load_yet: "Enter the outdoor temperature and a room, and its heat loss stands here.",
        "Escriba la temperatura exterior y una habitación, y aquí aparece su pérdida de calor.";
    path_air: "Air that leaks in", "Aire que se cuela";
    plans: "Plan by storey", "Plano por piso";
    room: "Room", "Habitación";
    floor_word: "Floor", "Piso";
    load: "Load", "Carga";
    per_area_short: "Per floor", "Por área";
    band_head: "10 to 90 %", "10 a 90 %";
    room_by_room: "Room by room", "Habitación por habitación";
    measure_next: "Measure this next", "Lo próximo que conviene medir";
    ranges: "How far off each kind of input may be", "Cuánto puede fallar cada clase de dato";
    certainty_method: "Every input's 10 to 90 % range is carried through to the load by exact derivatives, to first order; inputs are taken as independent of each other.",
        "El intervalo de 10 a 90 % de cada dato se lleva hasta la carga con derivadas exactas, a primer orden; los datos se toman como independientes entre sí.";
    zip_or_town: "ZIP code or town", "Código ZIP o ciudad";
    zip_or_town_note: "Stations are airports and weather offices; type a larger town nearby if yours is not found.",
        "Las estaciones son aeropuertos y oficinas meteorológicas; escriba una ciudad cercana más grande si no aparece la suya.";
    outside_the_us: "Stations are in the United States alone, since no design data for other countries may be passed on freely. Elsewhere type the temperatures: your national standard or building authority publishes them.",
        "Solo hay estaciones en los Estados Unidos, porque los datos de diseño de otros países no se pueden repartir libremente. En otros lugares escriba las temperaturas: las publica la norma nacional o la autoridad de construcción.";
    chosen_station: "Chosen station", "Estación elegida";
    forget_station: "Choose none", "No elegir ninguna";
    stations_coming: "The table of stations is on its way …", "La tabla de estaciones está en camino …";
    no_such_place: "No station of that name. Try a larger town nearby, or a ZIP code.",
        "No hay estación con ese nombre. Pruebe con una ciudad cercana más grande, o con un código ZIP.";
    neighbours: "Nearby:", "Cerca:";
    choose: "Choose", "Elegir";
    assemblies_note: "Built up here once, then found in every list where a wall, ceiling or floor is built. Give it a name that says what it is.",
        "Se arman aquí una vez y luego aparecen en cada lista donde se elige cómo está hecha una pared, un techo o un piso. Póngale un nombre que diga qué es.";
    add_assembly: "Add an assembly", "Agregar construcción";
    assembly_name_label: "Name of the assembly", "Nombre de la construcción";
    layers_note: "From inside to outside. Air films are added.",
        "De adentro hacia afuera. Las películas de aire se suman solas.";
    add_layer: "Add a layer", "Agregar capa";
    or_typed: "Or type its value", "O escriba su valor";
    no_u_yet: "no value yet", "sin valor todavía";
    u_from_layers: "How the U follows from the layers", "Cómo sale el valor U de las capas";
    bills: "Bills", "Facturas";
    bills_note: "From one reading or filling to the next. Four or more, with a mild month among them, tell the most.",
        "De una lectura o llenado al siguiente. Cuatro o más, con un mes templado entre ellas, dicen más.";
    add_bill: "Add a bill", "Agregar factura";
    bills_heating: "What was heated with", "Con qué se calentó";
    bills_need_a_station: "Choose a climate station first: bills are held against its year.",
        "Elija primero una estación de clima: las facturas se comparan con su año.";
    no_bills_yet: "Add the fuel bills of a winter, and the loss they tell of stands here beside the calculated one.",
        "Agregue las facturas de combustible de un invierno, y aquí aparece la pérdida que indican junto a la calculada.";
    notices: "Notices of the data's owners", "Avisos de los dueños de los datos";
    spaces: "Unheated spaces", "Espacios sin calefacción";
    spaces_note: "Attic, garage, crawl space, cellar: each finds its own temperature between the rooms beside it and outdoors.",
        "Ático, garaje, espacio de poca altura, sótano: cada uno halla su propia temperatura entre las habitaciones vecinas y el exterior.";
    no_station: "No station chosen yet", "Todavía no hay estación elegida";
    plan_place: "Place on the plan", "Lugar en el plano";
    add_shell: "Add walls, ceiling and floor", "Agregar paredes, techo y piso";
    air_leaked: "Outdoor air through gaps on the design day, with what fans draw in",
        "Aire exterior que entra por rendijas en el día de diseño, con el que aspiran los ventiladores";
    leaks: "How it leaks", "Por dónde se cuela";
    drives: "What drives the air", "Qué empuja el aire";
    fans: "Fans", "Ventiladores";
    two_methods: "The F-factor takes the whole difference to the design day, and so comes out well above ISO 13370, for which the ground stays warmer.",
        "El factor F toma toda la diferencia hasta el día de diseño, y por eso da bastante más que ISO 13370, para la cual el suelo se mantiene más caliente.";
    path_ventilation: "Air that fans bring in, less the heat recovered",
        "Aire que meten los ventiladores, menos el calor recuperado";
    from_neighbour: "To the room next door", "A la habitación vecina";
    path_by_path: "Path by path", "Camino por camino";
    per_area: "Load on each part of the floor", "Carga por área de piso";
}

pub fn bill_name(index: usize) -> String {
    say!("Bill {}", "Factura {}"; index + 1)
}

pub fn through_ground(surface: &str) -> String {
    say!("{surface}, through the ground", "{surface}, por el suelo")
}

pub fn coldest_month_adds(surface: &str) -> String {
    say!("{surface}, what the coldest month adds", "{surface}, lo que agrega el mes más frío")
}

pub fn slab_edge_of(surface: &str) -> String {
    say!("{surface}, slab's edge by F-factor", "{surface}, borde de la losa por factor F")
}

/// A range of heat, such as a 10 to 90 % band.
pub fn from_to(low: Power, high: Power, system: System) -> String {
    say!("{} to {}", "{} a {}"; value(low, system), value(high, system))
}

pub fn band(band: Band, system: System) -> String {
    say!(
        "Eight times in ten between {}.",
        "Ocho de cada diez veces entre {}.";
        from_and(band, system)
    )
}

fn from_and(band: Band, system: System) -> String {
    say!("{} and {}", "{} y {}"; value(band.low, system), value(band.high, system))
}

pub fn plan_picture(level: &str) -> String {
    say!(
        "{level}: each room, shaded by the heat that a part of its floor loses",
        "{level}: cada habitación, sombreada según el calor que pierde cada parte de su piso"
    )
}

/// What a slab loses, by either way.
pub fn slabs_compared(slabs: SlabCompared, method: GroundMethod, system: System) -> String {
    let (used, other) = (value(slabs.used, system), value(slabs.other, system));
    match method {
        GroundMethod::Iso => {
            say!(
                "Slabs on the ground: {used} by ISO 13370; F-factors would say {other}.",
                "Losas sobre el suelo: {used} por ISO 13370; los factores F dirían {other}."
            )
        }
        GroundMethod::FFactor => {
            say!(
                "Slabs on the ground: {used} by F-factor; ISO 13370 would say {other}.",
                "Losas sobre el suelo: {used} por factor F; ISO 13370 diría {other}."
            )
        }
    }
}

pub fn add_space(used: RoomUse) -> String {
    // Of the capitals that names of spaces begin with, only one has an accent.
    let space = crate::room_use(used).to_ascii_lowercase().replace('Á', "á");
    say!("Add: {space}", "Agregar: {space}")
}

pub fn space_at(temperature: &str) -> String {
    say!("{temperature} on the design day", "{temperature} en el día de diseño")
}

pub fn layer_name(row: usize) -> String {
    say!("Layer {}", "Capa {}"; row + 1)
}

pub fn own_assemblies(count: usize) -> String {
    match count {
        0 => either((
            "Walls and roofs of your own, layer by layer",
            "Paredes y techos propios, capa por capa",
        ))
        .to_string(),
        1 => either(("1 of your own", "1 propia")).to_string(),
        count => say!("{count} of your own", "{count} propias"),
    }
}

pub fn rooms_done(done: usize, all: usize) -> String {
    match (done, all) {
        (_, 0) => either(("none yet", "ninguna todavía")).to_string(),
        (done, all) if done == all => say!("{done} done", "listas: {done}"),
        (done, all) => say!("{done} of {all}", "{done} de {all}"),
    }
}

pub fn free_for_baseboard(length: &str) -> String {
    say!("free for baseboard {length}", "libre para zócalo {length}")
}

pub fn wall_picture(name: &str) -> String {
    say!("{name}, as you stand before it", "{name}, vista de frente")
}
