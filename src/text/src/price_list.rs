//! Words for the list of prices: as a table, kept for other jobs, opened and saved.

use crate::fields::field_label;
use crate::install::lower_first;
use crate::language::{either, say};
use crate::{in_units, problem};
use finrun_engine::csv::{Fault, LONGEST_CELL, MOST_CELLS, MOST_ROWS};
use finrun_engine::job::{Entry, Field, ListFault, RowFault, RowProblem};
use finrun_engine::quantity::{Kind, System, display_unit};

/// What a price is for, as it stands in the table.
pub fn price_item(field: Field) -> String {
    match field {
        Field::Stocked(feet, _) => say!("Piece of {feet} ft", "Pieza de {feet} pies"),
        Field::SizedPrice(tube, _) => {
            format!("{}, {}", field_label(field), lower_first(crate::tube(tube)))
        }
        _ => field_label(field).to_string(),
    }
}

/// How many kinds of material the job needs that have no price.
pub fn kinds_unpriced(count: usize) -> String {
    match count {
        0 => either((
            "Everything that this job needs has a price.",
            "Todo lo que este proyecto necesita tiene precio.",
        ))
        .to_string(),
        1 => either((
            "One kind of material that this job needs has no price.",
            "Una clase de material que este proyecto necesita no tiene precio.",
        ))
        .to_string(),
        count => say!(
            "{count} kinds of material that this job needs have no price.",
            "{count} clases de material que este proyecto necesita no tienen precio."
        ),
    }
}

/// The list kept for other jobs beside what is typed here.
pub fn kept_prices(kept: usize, missing: usize, otherwise: usize) -> String {
    if kept == 0 {
        return either((
            "None are kept for other jobs yet.",
            "Todavía no se guarda ninguno para otros proyectos.",
        ))
        .to_string();
    }
    let mut said = say!(
        "Kept for other jobs: {}.",
        "Guardados para otros proyectos: {}.";
        prices(kept)
    );
    if missing > 0 {
        said += &say!(" Blank here: {missing}.", " En blanco aquí: {missing}.");
    }
    if otherwise > 0 {
        said += &say!(" Different here: {otherwise}.", " Distintos aquí: {otherwise}.");
    }
    if missing + otherwise == 0 {
        said += either((" All of them stand here.", " Todos están aquí."));
    }
    said
}

/// After keeping: how many, and how many of them were kept otherwise before.
pub fn prices_kept(count: usize, changed: usize) -> String {
    let changed = match changed {
        0 => String::new(),
        1 => either((" One of them was different before.", " Uno de ellos era distinto antes."))
            .to_string(),
        changed => say!(
            " {changed} of them were different before.",
            " {changed} de ellos eran distintos antes."
        ),
    };
    match count {
        0 => either(("There is no price here to keep.", "Aquí no hay ningún precio que guardar."))
            .to_string(),
        1 => say!(
            "One price is kept for other jobs. A new job starts with it.{changed}",
            "Un precio queda guardado para otros proyectos. Un proyecto nuevo empieza con \
             él.{changed}"
        ),
        count => {
            say!(
                "{count} prices are kept for other jobs. A new job starts with them.{changed}",
                "{count} precios quedan guardados para otros proyectos. Un proyecto nuevo empieza \
                 con ellos.{changed}"
            )
        }
    }
}

/// Storage refused.
pub fn cannot_keep_prices(reason: &str) -> String {
    let reason = if reason.is_empty() { String::new() } else { format!(" ({reason})") };
    say!(
        "The browser's storage is full or blocked{reason}: the prices are not kept for other \
         jobs. Save them as CSV to keep them.",
        "El almacenamiento del navegador está lleno o bloqueado{reason}: los precios no se \
         guardan para otros proyectos. Guárdelos como CSV para conservarlos."
    )
}

/// After filling in from a list.
pub fn prices_filled(count: usize) -> String {
    match count {
        0 => either(("There was nothing to fill in.", "No había nada que llenar.")).to_string(),
        1 => either((
            "One price was filled in. Undo takes it out again.",
            "Se llenó un precio. Deshacer lo quita.",
        ))
        .to_string(),
        count => say!(
            "{count} prices were filled in. Undo takes them out again.",
            "Se llenaron {count} precios. Deshacer los quita."
        ),
    }
}

/// Over the prices that stayed because something else was typed.
pub fn prices_otherwise(count: usize) -> String {
    match count {
        1 => either((
            "One price is typed here and different on the list. It was left as it is:",
            "Un precio está escrito aquí y es distinto en la lista. Se dejó como está:",
        ))
        .to_string(),
        count => {
            say!(
                "{count} prices are typed here and different on the list. They were left as they \
                 are:",
                "{count} precios están escritos aquí y son distintos en la lista. Se dejaron como \
                 están:"
            )
        }
    }
}

/// One price that is typed otherwise on a list. The list says its unit where the page has another.
pub fn price_otherwise(field: Field, here: &str, listed: &Entry, system: System) -> String {
    let unit = match display_unit(field.spec().kind, system) {
        shown if shown == listed.unit => String::new(),
        _ => format!(" {}", in_units(listed.unit.symbol())),
    };
    say!(
        "{}: {here} here, {}{unit} on the list",
        "{}: {here} aquí, {}{unit} en la lista";
        price_item(field), listed.text.trim()
    )
}

/// Over the rows that were not taken.
pub fn rows_not_taken(count: usize) -> String {
    match count {
        1 => either(("One row of the list was not taken:", "Una fila de la lista no se tomó:"))
            .to_string(),
        count => say!(
            "{count} rows of the list were not taken:",
            "{count} filas de la lista no se tomaron:"
        ),
    }
}

pub fn more_rows(count: usize) -> String {
    say!("and {count} more like these", "y {count} más como estas")
}

/// Why a row was not taken, and what to do.
pub fn row_problem(row: &RowProblem, system: System) -> String {
    let line = row.line;
    match &row.fault {
        RowFault::UnknownKey { key } if key.is_empty() => say!(
            "Line {line}: the key is missing. Save these prices as CSV and take the key from there.",
            "Línea {line}: falta la clave. Guarde estos precios como CSV y tome la clave de allí."
        ),
        RowFault::UnknownKey { key } => say!(
            "Line {line}: “{}” is no key of a price. Save these prices as CSV and take the key \
             from there.",
            "Línea {line}: «{}» no es la clave de ningún precio. Guarde estos precios como CSV y \
             tome la clave de allí.";
            short(key)
        ),
        RowFault::Price(error) => {
            say!(
                "Line {line}, {}: {}",
                "Línea {line}, {}: {}";
                price_item(error.field), problem(error, system)
            )
        }
        RowFault::UnitMissing { field } => say!(
            "Line {line}, {}: the unit is missing. Write {}.",
            "Línea {line}, {}: falta la unidad. Escriba {}.";
            price_item(*field),
            units(*field)
        ),
        RowFault::UnknownUnit { field, unit } => say!(
            "Line {line}, {}: “{}” is no unit for this price. Write {}. If the price has a \
             decimal comma, put it in quotes or separate the cells by semicolons.",
            "Línea {line}, {}: «{}» no es una unidad para este precio. Escriba {}. Si el precio \
             tiene coma decimal, póngalo entre comillas o separe las celdas con punto y coma.";
            price_item(*field),
            short(unit),
            units(*field)
        ),
        RowFault::Repeated { field, before } => say!(
            "Line {line}, {}: it has a price on line {before} already, which counts. Take one of \
             the two out.",
            "Línea {line}, {}: ya tiene un precio en la línea {before}, y ese cuenta. Quite uno \
             de los dos.";
            price_item(*field)
        ),
    }
}

/// Why a text is no list of prices, and what to do.
pub fn list_fault(fault: ListFault) -> String {
    match fault {
        ListFault::NoColumns => either((
            "This is no list of prices: its first row must name the columns key, price and unit. \
             Save these prices as CSV to see how it looks.",
            "Esto no es una lista de precios: su primera fila debe nombrar las columnas «key», \
             «price» y «unit». Guarde estos precios como CSV para ver cómo es.",
        ))
        .to_string(),
        ListFault::Table(fault) => table_fault(fault),
    }
}

fn table_fault(fault: Fault) -> String {
    match fault {
        Fault::TooLarge => either((
            "That file is too large for a list of prices: more than 1 MB.",
            "Ese archivo es demasiado grande para una lista de precios: más de 1 MB.",
        ))
        .to_string(),
        Fault::TooManyRows => {
            say!(
                "That list has more than {MOST_ROWS} rows. Take out what is no price.",
                "Esa lista tiene más de {MOST_ROWS} filas. Quite lo que no sea un precio."
            )
        }
        Fault::TooManyCells { line } => say!(
            "Line {line} has more than {MOST_CELLS} cells. Choose a list of prices, saved as CSV.",
            "La línea {line} tiene más de {MOST_CELLS} celdas. Elija una lista de precios, \
             guardada como CSV."
        ),
        Fault::LongCell { line } => say!(
            "A cell that begins on line {line} is longer than {LONGEST_CELL} characters. Choose a \
             list of prices, saved as CSV.",
            "Una celda que empieza en la línea {line} tiene más de {LONGEST_CELL} caracteres. \
             Elija una lista de precios, guardada como CSV."
        ),
        Fault::OpenQuote { line } => {
            say!(
                "A quote mark opens on line {line} and never closes. Close it, or take it out.",
                "En la línea {line} se abren comillas que nunca se cierran. Ciérrelas o quítelas."
            )
        }
        Fault::AfterQuote { line } => say!(
            "On line {line} something stands between a closing quote mark and the next cell. Take \
             it out, or write the quote mark twice.",
            "En la línea {line} hay algo entre unas comillas de cierre y la celda siguiente. \
             Quítelo, o escriba las comillas dos veces."
        ),
        Fault::NotText { line } => say!(
            "This is no text (line {line}). Save the list as CSV in UTF-8, then open it again.",
            "Esto no es texto (línea {line}). Guarde la lista como CSV en UTF-8 y ábrala otra vez."
        ),
    }
}

/// Of the list in the browser's storage.
pub fn kept_prices_damaged(reason: &str) -> String {
    say!(
        "The prices kept for other jobs cannot be read. {reason} They stay as they are until you \
         keep others instead; download them first if you can mend them.",
        "Los precios guardados para otros proyectos no se pueden leer. {reason} Se quedan como \
         están hasta que usted guarde otros en su lugar; descárguelos antes si los puede corregir."
    )
}

fn prices(count: usize) -> String {
    if count == 1 {
        either(("1 price", "1 precio")).to_string()
    } else {
        say!("{count} prices", "{count} precios")
    }
}

fn units(field: Field) -> &'static str {
    either(match field.spec().kind {
        Kind::LinearMoney => ("per ft or per m", "«por pie» o «por m»"),
        Kind::AreaMoney => ("per ft² or per m²", "«por pie²» o «por m²»"),
        _ => ("each", "«each»"),
    })
}

fn short(text: &str) -> String {
    let short: String = text.chars().take(40).collect();
    if short.len() < text.len() { format!("{short}…") } else { short }
}
