//! What is wrong with something typed or opened: the field, the value, the remedy.

use crate::fields::{bounds_hint, field_label, field_owner, limit};
use crate::in_units;
use crate::language::{either, say};
use finrun_engine::emitter::{FitError, PointFault};
use finrun_engine::job::{BillField, Draft, Field, FieldError, OpenError, Problem};
use finrun_engine::quantity::{Kind, ReadError, System, Value};

/// One field's error in a sentence or two.
pub fn problem(error: &FieldError, system: System) -> String {
    let typed = &error.typed;
    let text = |value: Value| crate::value(value, system);
    match &error.problem {
        Problem::Missing => say!("Missing. Type {}.", "Falta. Escriba {}."; what(error)),
        Problem::Unreadable(reason) => unreadable(typed, reason, error),
        Problem::BelowLeast { least } => {
            say!(
                "“{typed}” is less than {}. {}",
                "«{typed}» es menos que {}. {}";
                limit(*least, system), takes(error, system)
            )
        }
        Problem::AboveMost { most } => {
            say!(
                "“{typed}” is more than {}. {}",
                "«{typed}» es más que {}. {}";
                limit(*most, system), takes(error, system)
            )
        }
        Problem::NotWhole => say!(
            "“{typed}” is no whole number. Count them: 0, 1, 2 …",
            "«{typed}» no es un número entero. Cuente: 0, 1, 2 …"
        ),
        Problem::OpeningsTooLarge { openings, surface } => say!(
            "The windows and doors come to {}, the surface to {}. Make one smaller, or correct the \
             surface.",
            "Las ventanas y puertas suman {}, la superficie {}. Haga una más pequeña, o corrija la \
             superficie.";
            text(*openings), text(*surface)
        ),
        Problem::TallerThanWall { wall } => {
            say!(
                "It is taller than its wall of {}. Make it lower, or the wall higher.",
                "Es más alta que su pared de {}. Hágala más baja, o la pared más alta.";
                text(*wall)
            )
        }
        Problem::PastWallEnd { end, wall } => say!(
            "It ends {} from the left corner, and the wall is {} long. Make it narrower, or move \
             it to the left.",
            "Termina a {} de la esquina izquierda, y la pared mide {}. Hágala más angosta, o \
             muévala a la izquierda.";
            text(*end), text(*wall)
        ),
        Problem::Overlaps { ends } => say!(
            "It overlaps another one that ends {} from the left corner. Move one, or make one \
             narrower.",
            "Se encima con otra que termina a {} de la esquina izquierda. Mueva una, o haga una \
             más angosta.";
            text(*ends)
        ),
        Problem::LongerThanWall { wall } => {
            say!(
                "It is longer than the wall of {}. Shorten it, or correct the wall.",
                "Es más largo que la pared de {}. Acórtelo, o corrija la pared.";
                text(*wall)
            )
        }
        Problem::DeeperThanWall { wall } => say!(
            "It reaches deeper than its wall of {}. Make the depth less, or the wall higher.",
            "Llega más hondo que su pared de {}. Ponga menos profundidad, o la pared más alta.";
            text(*wall)
        ),
        Problem::CutTooLarge { room } => say!(
            "The cut takes the room's whole {}. Make the cut smaller, or the room larger.",
            "El corte se lleva los {} enteros de la habitación. Haga el corte más pequeño, o la \
             habitación más grande.";
            text(*room)
        ),
        Problem::NotAboveOutdoors { outdoors } => say!(
            "The room must be warmer than the design day of {}. Correct one of the two.",
            "La habitación debe estar más caliente que el día de diseño de {}. Corrija uno de los \
             dos.";
            text(*outdoors)
        ),
        Problem::ColdestAboveMean { mean } => say!(
            "The coldest month cannot be warmer than the year's mean of {}. Correct one of the two.",
            "El mes más frío no puede ser más caliente que la media del año de {}. Corrija uno de \
             los dos.";
            text(*mean)
        ),
        Problem::BehindItself => either((
            "This leads to its own room. Choose what lies on the other side.",
            "Esto lleva a su propia habitación. Elija lo que hay al otro lado.",
        ))
        .to_string(),
        Problem::NeighbourGone => either((
            "The room or space behind it is gone. Choose what lies there now, or undo.",
            "La habitación o el espacio al otro lado ya no existe. Elija lo que hay ahora, o \
             deshaga.",
        ))
        .to_string(),
        Problem::AssemblyGone => either((
            "The assembly that it was built of is gone. Choose another, or undo.",
            "La construcción de la que estaba hecha ya no existe. Elija otra, o deshaga.",
        ))
        .to_string(),
        Problem::RoomGone => crate::room_gone().to_string(),
        Problem::NoLayers => either((
            "It has no layers yet. Add them, or type its U-value or R-value.",
            "Todavía no tiene capas. Agréguelas, o escriba su valor U o su valor R.",
        ))
        .to_string(),
        Problem::NotADate => either((
            "That is no date. Write year, month and day: 2025-12-31.",
            "Eso no es una fecha. Escriba año, mes y día: 2025-12-31.",
        ))
        .to_string(),
        Problem::PeriodTooShort => either((
            "Less than a week shows the weather, not the house. Take a longer bill.",
            "Menos de una semana muestra el clima, no la casa. Tome una factura más larga.",
        ))
        .to_string(),
        Problem::PeriodTooLong => either((
            "A bill of more than 400 days is two bills. Split it, or correct a day.",
            "Una factura de más de 400 días son dos facturas. Divídala, o corrija un día.",
        ))
        .to_string(),
        Problem::UnlikelyDegreeDays => either((
            "No weather of this place has such degree days in those days. Leave it blank, or \
             correct it.",
            "Ningún clima de este lugar tiene esos grados-día en esos días. Déjelo en blanco, o \
             corríjalo.",
        ))
        .to_string(),
        Problem::EndsBeforeStart => either((
            "The bill ends before it begins. Correct one of the two days.",
            "La factura termina antes de empezar. Corrija uno de los dos días.",
        ))
        .to_string(),
        Problem::BillsOverlap { other } => say!(
            "These days are on bill {other} too. Let one bill end on the day the next begins.",
            "Estos días también están en la factura {other}. Haga que una termine el día en que \
             empieza la siguiente."
        ),
        Problem::NotAboveAir { air } => say!(
            "The water must be warmer than the entering air of {}. Type the average water \
             temperature of the rating.",
            "El agua debe estar más caliente que el aire de entrada de {}. Escriba la temperatura \
             media del agua de la potencia nominal.";
            text(*air)
        ),
        Problem::TooFewPoints => either((
            "Two rows at least, with different water temperatures, make a curve. Add a row.",
            "Una curva necesita dos renglones por lo menos, con distintas temperaturas del agua. \
             Agregue un renglón.",
        ))
        .to_string(),
        Problem::NoFit(reason) => no_fit(*reason).to_string(),
        Problem::TooFewPumpPoints => either((
            "A curve takes three points at least, from no flow to the most. Add a point.",
            "Una curva necesita tres puntos por lo menos, desde caudal cero hasta el mayor. \
             Agregue un punto.",
        ))
        .to_string(),
        Problem::PumpFlowRepeated => either((
            "Another point has this flow. Change one of the two, or remove it.",
            "Otro punto tiene este caudal. Cambie uno de los dos, o quítelo.",
        ))
        .to_string(),
        Problem::PumpCurveRises { head } => say!(
            "The curve rises to {} here: no circulator gives more head at more flow. Correct one \
             of the points.",
            "La curva sube a {} aquí: ningún circulador da más altura con más caudal. Corrija uno \
             de los puntos.";
            text(*head)
        ),
        Problem::PumpWithoutHead => either((
            "The curve has no head at any flow. Type the head at no flow.",
            "La curva no tiene altura en ningún caudal. Escriba la altura con caudal cero.",
        ))
        .to_string(),
        Problem::NoStock => either((
            "There is no piece to choose: no stock length is chosen, or the shop has none of them. \
             Choose a length, or correct how many there are.",
            "No hay pieza que elegir: no se eligió ningún largo en venta, o la tienda no tiene \
             ninguno. Elija un largo, o corrija cuántos hay.",
        ))
        .to_string(),
        Problem::FixedRunGone => either((
            "Pieces were kept on a stretch of this wall that is gone. Let them go.",
            "Se fijaron piezas en un tramo de esta pared que ya no existe. Suéltelas.",
        ))
        .to_string(),
        Problem::FixedTooLong { pieces, run } => say!(
            "The pieces kept here are {} long and the stretch of wall takes {}. Let them go, or \
             correct the wall.",
            "Las piezas fijadas aquí miden {} y el tramo de pared admite {}. Suéltelas, o corrija \
             la pared.";
            text(*pieces), text(*run)
        ),
    }
}

fn takes(error: &FieldError, system: System) -> String {
    say!("It takes {}.", "Admite {}."; bounds_hint(error.field, system))
}

fn what(error: &FieldError) -> &'static str {
    if let Field::Bill(_, BillField::From | BillField::To) = error.field {
        return either(("a date: 2025-12-31", "una fecha: 2025-12-31"));
    }
    either(match error.field.spec().kind {
        Kind::Length => ("feet and inches, or metres", "pies y pulgadas, o metros"),
        Kind::SmallLength => ("inches, or millimetres", "pulgadas, o milímetros"),
        Kind::Temperature => ("degrees", "grados"),
        Kind::Area => ("square feet, or square metres", "pies cuadrados, o metros cuadrados"),
        _ => ("a number", "un número"),
    })
}

fn unreadable(typed: &str, reason: &ReadError, error: &FieldError) -> String {
    let example = in_units(either(match error.field.spec().kind {
        Kind::Length => {
            ("Write 7' 6 1/2\", 7.5 ft or 2.3 m.", "Escriba 7' 6 1/2\", 7.5 pies o 2.3 m.")
        }
        Kind::SmallLength => ("Write 4 in or 100 mm.", "Escriba 4 pulg o 100 mm."),
        Kind::Temperature => ("Write 70, 70 °F or 21 °C.", "Escriba 70, 70 °F o 21 °C."),
        Kind::Power | Kind::LinearPower => (
            "Write a number, with its unit if it is another.",
            "Escriba un número, con su unidad si es otra.",
        ),
        _ => ("Write a number, such as 12 or 12.5.", "Escriba un número, como 12 o 12.5."),
    }));
    match reason {
        ReadError::Empty => say!("Nothing is typed. {example}", "No hay nada escrito. {example}"),
        ReadError::TooLong => say!(
            "That is too long for a number. {example}",
            "Es demasiado largo para un número. {example}"
        ),
        ReadError::NotANumber { part } => {
            say!(
                "“{typed}” cannot be read: “{part}” is no number. {example}",
                "«{typed}» no se puede leer: «{part}» no es un número. {example}"
            )
        }
        ReadError::AmbiguousComma { part, thousands, decimal } => {
            say!(
                "“{part}” may be {thousands} or {decimal}. Write the one you mean.",
                "«{part}» puede ser {thousands} o {decimal} con punto decimal. Escriba el que \
                 quiere decir."
            )
        }
        ReadError::UnknownUnit { part } => {
            say!(
                "“{typed}” cannot be read: “{part}” is no unit for this. {example}",
                "«{typed}» no se puede leer: «{part}» no es una unidad para esto. {example}"
            )
        }
        ReadError::UnitsMissing => {
            say!(
                "“{typed}” has two numbers without marks between. {example}",
                "«{typed}» tiene dos números sin marcas en medio. {example}"
            )
        }
        ReadError::OutOfOrder => {
            say!(
                "“{typed}” mixes units in an order that cannot be read. {example}",
                "«{typed}» mezcla unidades en un orden que no se puede leer. {example}"
            )
        }
        ReadError::ZeroDenominator => {
            say!("“{typed}” divides by zero. {example}", "«{typed}» divide entre cero. {example}")
        }
    }
}

fn no_fit(reason: FitError) -> &'static str {
    either(match reason {
        FitError::Reference => (
            "The water must be warmer than the entering air. Correct one.",
            "El agua debe estar más caliente que el aire de entrada. Corrija uno.",
        ),
        FitError::Point { fault, .. } => match fault {
            PointFault::NotFinite => {
                ("This row is no number. Correct it.", "Este renglón no es un número. Corríjalo.")
            }
            PointFault::WaterNotAboveAir => (
                "This row's water is no warmer than the entering air. Correct one.",
                "El agua de este renglón no está más caliente que el aire de entrada. Corrija uno.",
            ),
            PointFault::OutputNotPositive => {
                ("This row gives no heat. Correct it.", "Este renglón no da calor. Corríjalo.")
            }
            PointFault::FlowNotPositive => {
                ("This row has no flow. Correct it.", "Este renglón no tiene caudal. Corríjalo.")
            }
        },
        FitError::TooFewTemperatures => (
            "All rows have the same water temperature. Add one at another.",
            "Todos los renglones tienen la misma temperatura del agua. Agregue uno con otra.",
        ),
        FitError::NoConvergence => (
            "No smooth curve goes through these rows. Look for a slip: output must grow with the \
             water's temperature.",
            "Ninguna curva suave pasa por estos renglones. Busque un error: la potencia debe \
             crecer con la temperatura del agua.",
        ),
    })
}

/// An error with the field it belongs to, for a summary: "Kitchen, Wall 1, Length: Missing …".
pub fn problem_at(draft: &Draft, error: &FieldError, system: System) -> String {
    let owner = field_owner(draft, error.field);
    format!("{owner}, {}: {}", field_label(error.field), problem(error, system))
}

/// Why a file is no job.
pub fn file_problem(error: &OpenError) -> String {
    match error {
        OpenError::Newer { version } => say!(
            "This file was written by a newer Finrun (file version {version}). Update this one, \
             then open it again.",
            "Este archivo lo escribió un Finrun más nuevo (versión de archivo {version}). \
             Actualice este y luego ábralo otra vez."
        ),
        OpenError::UnknownVersion { version } => {
            say!(
                "This file says version {version}, which does not exist. It may be damaged.",
                "Este archivo dice versión {version}, que no existe. Puede estar dañado."
            )
        }
        OpenError::RepeatedId { id } => say!(
            "This file is damaged: the number {id} stands for two things. Use an earlier copy.",
            "Este archivo está dañado: el número {id} vale para dos cosas. Use una copia anterior."
        ),
        OpenError::TooLarge { count, most } => {
            say!(
                "This file has {count} of a thing that a house has at most {most} of.",
                "Este archivo tiene {count} de una cosa de la que una casa tiene {most} como \
                 máximo."
            )
        }
        OpenError::StockLength { feet } => {
            say!(
                "This file has a stock length of {feet} ft; pieces are 2 to 10 ft long.",
                "Este archivo tiene un largo en venta de {feet} pies; las piezas miden de 2 a 10 \
                 pies."
            )
        }
        OpenError::Station => either((
            "The climate station in this file has numbers that no place has.",
            "La estación climática de este archivo tiene números que ningún lugar tiene.",
        ))
        .to_string(),
    }
}
