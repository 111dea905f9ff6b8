//! A system that stands: what is entered of it, what its rooms get, and what the readings tell.

use crate::language::{Both, either, say, sentences};
use crate::{circuit_at, room_name, value};
use finrun_engine::existing::{At, Explanation, Limit, NoExplanation, Order, Scale, Sure};
use finrun_engine::job::{Draft, Ran, Standing};
use finrun_engine::quantity::{System, Value};

sentences! { EXISTING_WORDS;
    section_existing: "Existing system", "Sistema existente";
    existing_note: "For a system that stands already: what each room gets of it, and from a few measured temperatures what is likely the matter.",
        "Para un sistema que ya existe: qué recibe cada habitación y, con unas pocas temperaturas medidas, qué es lo que probablemente pasa.";
    existing_entered: "What is installed", "Lo instalado";
    existing_entered_note: "Rooms in the order of the water, their tube and the circulator are entered on the pages below. Here the pieces, stretch of wall by stretch of wall; a stretch without pieces has none.",
        "Las habitaciones en el orden del agua, su tubo y el circulador se escriben en las páginas de abajo. Aquí van las piezas, tramo por tramo de pared; un tramo sin piezas no tiene ninguna.";
    existing_not_built: "The pieces are chosen for this job. Say above that it is built, to enter what stands.",
        "Las piezas de este proyecto se calculan. Diga arriba que ya está construido para escribir lo que hay.";
    existing_none: "no piece", "ninguna pieza";
    existing_add: "Add a piece", "Agregar pieza";
    existing_take: "Take the last away", "Quitar la última";
    existing_as_planned: "Enter the pieces of the plan", "Poner las piezas calculadas";
    existing_gets: "What each room gets", "Lo que recibe cada habitación";
    existing_gets_note: "On the design day, all zones running without a stop. A room comes to rest where its loss is what it gets, its neighbors with it.",
        "En el día de diseño, con todas las zonas en marcha sin parar. Una habitación se estabiliza donde pierde lo que recibe, junto con sus vecinas.";
    existing_no_design: "This comes with the first room that has a heat loss and a loop whose flow is found.",
        "Esto aparece con la primera habitación que tenga pérdida de calor y un circuito cuyo caudal se encuentre.";
    head_wants: "Loses", "Pierde";
    head_gets: "Gets", "Recibe";
    head_reaches: "Comes to rest at", "Se estabiliza a";
    head_limit: "What limits it", "Qué la limita";
    existing_read: "Readings", "Mediciones";
    existing_read_note: "All zones calling, water hot and steady. Clean the copper, strap the thermometer to it, cover it with insulation and wait until it no longer changes.",
        "Todas las zonas pidiendo calor, agua caliente y estable. Limpie el cobre, sujete el termómetro, cúbralo con aislamiento y espere a que ya no cambie.";
    existing_read_least: "Needed are the boiler's supply and two places more; each one more tells more. A thermometer so placed is taken to be right within 1 °F two times in three: judgement.",
        "Hacen falta el suministro de la caldera y dos lugares más; cada uno más dice más. Se supone que un termómetro así acierta con 1 °F dos de cada tres veces: criterio propio.";
    existing_explained: "What is likely the matter", "Lo que probablemente pasa";
    existing_weighing: "Weighing what may be the matter …", "Sopesando lo que puede pasar …";
    existing_how: "Each explanation is the system as entered with one thing changed, by as much as meets the readings best. Weighed are how well it does so, how much of its range would, and how common it is: judgement where no source is. Two things wrong at once are not looked for.",
        "Cada explicación es el sistema tal como se escribió con una sola cosa cambiada, en la medida que mejor cumple las mediciones. Cuenta qué tan bien lo hace, cuánto de su rango lo haría y qué tan común es: criterio propio donde no hay fuente. No se buscan dos fallas a la vez.";
    existing_alike: "These readings cannot tell it from the first.", "Estas mediciones no permiten distinguirla de la primera.";
    existing_fits_none: "No explanation meets all readings: one of them is wrong, or more than one thing is the matter, or the system is not as entered. Read again where the table below differs most.",
        "Ninguna explicación cumple todas las mediciones: una está mal, o pasa más de una cosa, o el sistema no es como se escribió. Mida otra vez donde más difiere la tabla de abajo.";
    existing_rooms_left_out: "The rooms' temperatures are not counted: for that it must have run until the rooms no longer change, and the outdoor temperature be read. Until then more loss than thought cannot show.",
        "Las temperaturas de las habitaciones no cuentan: para eso debe haber funcionado hasta que ya no cambien, y medirse la de afuera. Mientras tanto no puede verse si se pierde más de lo pensado.";
    existing_house_left_out: "With a thermostat, a house that loses more only runs longer: whether all rooms lose more cannot show.",
        "Con termostato, una casa que pierde más solo funciona más tiempo: no puede verse si pierden más todas las habitaciones.";
    existing_next: "What to measure next", "Qué medir ahora";
    existing_next_none: "No further reading would tell the likely ones apart: look instead.",
        "Ninguna otra medición distinguiría las probables: hay que mirar.";
    existing_compared: "Readings beside what is calculated", "Mediciones junto a lo calculado";
    head_place: "Place", "Lugar";
    head_read: "Read", "Medido";
    head_as_entered: "As entered", "Según lo escrito";
    head_if_first: "By the first explanation", "Según la primera explicación";
    existing_caution: "Before you reach for it", "Antes de poner la mano";
    existing_hot: "Pipes and fins burn: water is up to 180 °F and more. Let them cool before you lift a cover; fins cut, so wear gloves.",
        "Los tubos y las aletas queman: el agua llega a 180 °F y más. Deje que se enfríen antes de levantar una tapa; las aletas cortan, use guantes.";
    existing_pressure: "Never open a vent, plug, union or valve body of a system that is hot and under pressure: hot water becomes steam. Bleed at a vent made for it, with a cup and a cloth.",
        "Nunca abra un purgador, tapón, unión o cuerpo de válvula de un sistema caliente y con presión: el agua caliente se vuelve vapor. Purgue solo por un purgador hecho para eso, con un vaso y un trapo.";
    existing_electric: "Switch the circulator, zone valves and controls off at the breaker before you open one. Gas, burner and electric work belong to those whom the local code allows.",
        "Desconecte en el interruptor el circulador, las válvulas de zona y los controles antes de abrirlos. El gas, el quemador y la electricidad son para quien permita el código local.";
}

/// The cautions of the page.
pub fn existing_cautions() -> [&'static str; 3] {
    [existing_hot(), existing_pressure(), existing_electric()]
}

pub(crate) const STANDING: Both = ("Is this system built?", "¿Ya está construido este sistema?");

pub(crate) fn standing(standing: Standing) -> &'static str {
    either(match standing {
        Standing::Planned => {
            ("No: the pieces are to be chosen", "No: las piezas están por calcularse")
        }
        Standing::Installed => (
            "Yes: only the pieces entered on the walls stand there",
            "Sí: solo están las piezas escritas en las paredes",
        ),
    })
}

pub(crate) const RAN: Both = ("Before the readings it ran", "Antes de medir funcionó");

pub(crate) fn ran(ran: Ran) -> &'static str {
    either(match ran {
        Ran::AWhile => (
            "For a while: the water is steady, the rooms are not",
            "Un rato: el agua está estable, las habitaciones no",
        ),
        Ran::Throughout => (
            "Without a stop, until the rooms no longer changed",
            "Sin parar, hasta que las habitaciones ya no cambiaron",
        ),
        Ran::ByThermostat => (
            "On and off by the thermostat, as on any day",
            "A ratos, por el termostato, como cualquier día",
        ),
    })
}

pub(crate) const BOILER_SUPPLY: Both = ("Boiler's supply", "Suministro de la caldera");

pub(crate) const BOILER_BACK: Both = ("Boiler's return", "Retorno de la caldera");

pub(crate) const WATER_BEFORE: Both = ("Pipe before the element", "Tubo antes del elemento");

pub(crate) const WATER_BEHIND: Both = ("Pipe behind the element", "Tubo después del elemento");

pub fn limit_said(limit: Limit) -> &'static str {
    either(match limit {
        Limit::None => ("Nothing: it has enough", "Nada: tiene suficiente"),
        Limit::NotConnected => ("No water reaches it", "No le llega agua"),
        Limit::Element => ("Too little element", "Falta elemento"),
        Limit::Water => (
            "The water has cooled in the rooms and pipes before it",
            "El agua ya se enfrió en las habitaciones y tubos anteriores",
        ),
        Limit::Flow => (
            "Too little flow: the water cools too much within it",
            "Poco caudal: el agua se enfría demasiado dentro de ella",
        ),
    })
}

pub fn nothing_explained(why: NoExplanation) -> &'static str {
    either(match why {
        NoExplanation::NotSolved => (
            "The flows of the system as entered were not found: see the Loop page.",
            "No se encontraron los caudales del sistema escrito: vea la página Circuito.",
        ),
        NoExplanation::NoSupply => (
            "Measure the boiler's supply first: everything else follows from it.",
            "Mida primero el suministro de la caldera: todo lo demás depende de él.",
        ),
        NoExplanation::TooFew => (
            "Measure two places more beside the supply, such as the boiler's return and the pipe behind \
             the element of the room that is cold.",
            "Mida dos lugares más además del suministro, como el retorno de la caldera y el tubo después \
             del elemento de la habitación fría.",
        ),
    })
}

pub fn sure(sure: Sure) -> &'static str {
    either(match sure {
        Sure::AlmostCertain => ("Almost certain", "Casi seguro"),
        Sure::Likely => ("Likely", "Probable"),
        Sure::Rather => ("More likely than not", "Más probable que no"),
        Sure::Possible => ("Possible", "Posible"),
        Sure::Unlikely => ("Unlikely", "Poco probable"),
    })
}

/// What may be the matter, as a heading.
pub fn explanation(draft: &Draft, explanation: Explanation) -> String {
    let name = |room| room_name(draft, room);
    match explanation {
        Explanation::AsCalculated => {
            either(("It works as calculated", "Funciona como se calculó")).to_string()
        }
        Explanation::TooLittle { room } => say!(
            "It works as calculated, with too little element in {0}",
            "Funciona como se calculó, con poco elemento en {0}"; name(room)
        ),
        Explanation::LowFlow => {
            either(("Low flow everywhere", "Poco caudal en todo el sistema")).to_string()
        }
        Explanation::Air { first } => say!(
            "Air, or something shut: {0}",
            "Aire, o algo cerrado: {0}"; circuit_at(draft, first)
        ),
        Explanation::Blocked { room } => say!(
            "The element in {0} gives too little",
            "El elemento de {0} da poco"; name(room)
        ),
        Explanation::WrongOrder { first, order: Order::Reversed } => say!(
            "Supply and return are crossed: {0}",
            "Suministro y retorno están cruzados: {0}"; circuit_at(draft, first)
        ),
        Explanation::WrongOrder { order: Order::Swapped { before, behind }, .. } => say!(
            "The water reaches {1} before {0}",
            "El agua llega a {1} antes que a {0}"; name(before), name(behind)
        ),
        Explanation::MoreLoss { room } => say!(
            "{0} loses more than calculated",
            "{0} pierde más de lo calculado"; name(room)
        ),
        Explanation::HouseLoss => either((
            "The whole house loses more than calculated",
            "Toda la casa pierde más de lo calculado",
        ))
        .to_string(),
    }
}

/// What to look at then.
pub fn look_at(explanation: Explanation) -> &'static str {
    either(match explanation {
        Explanation::AsCalculated => (
            "Nothing is the matter that these readings show.",
            "Nada malo que se vea en estas mediciones.",
        ),
        Explanation::TooLittle { .. } => (
            "More element or hotter water would heat it, or less loss.",
            "La calentaría más elemento o agua más caliente, o perder menos.",
        ),
        Explanation::LowFlow => (
            "Circulator too small, too slow or worn, a valve half shut, a clogged strainer, more pipe \
             than entered.",
            "Circulador chico, lento o gastado, una válvula medio cerrada, un filtro tapado, más tubo del \
             escrito.",
        ),
        Explanation::Air { .. } => (
            "Air at a high point, a valve shut, a zone valve that does not open. Purge, and feel where \
             the pipe turns cold.",
            "Aire en un punto alto, una válvula cerrada, una válvula de zona que no abre. Purgue y sienta \
             dónde se enfría el tubo.",
        ),
        Explanation::Blocked { .. } => (
            "Damper shut, fins bent or full of dust, carpet or furniture before the inlet, or less of the \
             cover's length finned than entered: temperatures cannot tell these apart.",
            "Compuerta cerrada, aletas dobladas o con polvo, alfombra o muebles frente a la entrada, o \
             menos largo con aletas del escrito: las temperaturas no los distinguen.",
        ),
        Explanation::WrongOrder { .. } => (
            "Follow the pipe by hand: which end of each element is hotter?",
            "Siga el tubo con la mano: ¿qué extremo de cada elemento está más caliente?",
        ),
        Explanation::MoreLoss { .. } => (
            "A window that does not close, missing insulation, a cold space beside it, or its walls as \
             entered.",
            "Una ventana que no cierra, falta de aislamiento, un espacio frío al lado, o sus paredes como \
             se escribieron.",
        ),
        Explanation::HouseLoss => (
            "More air than thought, insulation less than entered, wind on the day of the readings.",
            "Más aire del pensado, menos aislamiento del escrito, viento el día de las mediciones.",
        ),
    })
}

/// How strong it would be.
pub fn strength(scale: Scale, share: f64, system: System) -> String {
    let share = value(Value::share(share), system);
    match scale {
        Scale::Flow => say!("{share} of the flow calculated", "{share} del caudal calculado"),
        Scale::Output => say!("{share} of its output", "{share} de su potencia"),
        Scale::Loss => say!("{share} of the loss calculated", "{share} de la pérdida calculada"),
    }
}

/// A place to measure at.
pub fn measured_at(draft: &Draft, at: At) -> String {
    let name = |room| room_name(draft, room);
    match at {
        At::BoilerSupply => either(BOILER_SUPPLY).to_string(),
        At::BoilerBack => either(BOILER_BACK).to_string(),
        At::Supply(first) => say!("{0}, supply", "{0}, suministro"; circuit_at(draft, first)),
        At::Back(first) => say!("{0}, return", "{0}, retorno"; circuit_at(draft, first)),
        At::Flow(first) => say!("{0}, flow", "{0}, caudal"; circuit_at(draft, first)),
        At::WaterIn(room) => {
            say!("{0}, pipe before the element", "{0}, tubo antes del elemento"; name(room))
        }
        At::WaterOut(room) => {
            say!("{0}, pipe behind the element", "{0}, tubo después del elemento"; name(room))
        }
        At::Air(room) => say!("{0}, air", "{0}, aire"; name(room)),
    }
}

/// What the two likeliest explanations expect at a place.
pub fn expected_there(first: &str, second: &str) -> String {
    say!(
        "{first} if it is the first, {second} if it is the second",
        "{first} si es la primera, {second} si es la segunda"
    )
}
