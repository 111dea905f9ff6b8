//! Words around the stations: jobs, files, what was saved, working offline, and what the stations and
//! their sections are called.

use crate::language::{either, say, sentences};
use finrun_engine::quantity::System;

sentences! { pub(super) JOBS;
    app_name: "Finrun", "Finrun";
    app_job: "Hot-water baseboard for your house: heat loss, lengths, and a loop that works.",
        "Calefacción por zócalo con agua caliente para su casa: pérdida de calor, largos y un circuito que funciona.";
    skip_to_content: "Skip to content", "Ir al contenido";

    jobs_title: "Jobs", "Proyectos";
    new_job: "New job", "Proyecto nuevo";
    new_job_name: "My house", "Mi casa";
    demos: "Houses to look around in", "Casas de ejemplo para mirar";
    demo_note: "Of our own invention; their numbers are invented too.",
        "Las inventamos nosotros; sus números también son inventados.";
    demo_bungalow: "Bungalow on a slab", "Casa de un piso sobre losa";
    demo_two_storey: "Two storeys, basement, garage and attic", "Dos pisos, sótano, garaje y ático";
    demo_cottage: "Cottage over a crawl space", "Casita sobre un espacio de poca altura";
    open_file: "Open a job file", "Abrir un proyecto guardado";
    no_jobs: "Nothing here yet. Start with a new job, or look around in a house of ours.",
        "Todavía no hay nada aquí. Empiece un proyecto nuevo, o mire una de nuestras casas de ejemplo.";
    copy: "Copy", "Copiar";
    rename: "Rename", "Renombrar";
    delete: "Delete", "Borrar";
    undo_delete: "Bring it back", "Recuperarlo";
    download: "Download", "Descargar";
    job_name: "Name of the job", "Nombre del proyecto";
    kept_here: "Jobs are kept in this browser, on this device. Download the ones you cannot lose.",
        "Los proyectos se guardan en este navegador, en este aparato. Descargue los que no pueda perder.";
    cannot_open: "Cannot be opened", "No se puede abrir";
    download_raw: "Download what is stored", "Descargar lo guardado";

    station_rooms: "Rooms", "Habitaciones";
    station_heat_loss: "Heat loss", "Pérdida";
    station_lengths: "Lengths", "Largos";
    station_loop: "Loop", "Circuito";
    section_place: "Place and climate", "Lugar y clima";
    section_air: "Air", "Aire";
    section_ground: "Ground", "Suelo";
    section_assemblies: "Own assemblies", "Construcciones propias";
    section_certainty: "How sure", "Qué tan seguro";
    section_bills: "Against the bills", "Comparar con facturas";
    section_prices: "Prices", "Precios";
    section_piping: "Zones and piping", "Zonas y tubería";
    section_circulator: "Circulator and balancing", "Circulador y balanceo";
    section_plant: "Boiler and fill", "Caldera y llenado";
    section_drawings: "Drawings", "Dibujos";
    section_install: "Installation", "Instalación";
    section_commission: "Commissioning sheet", "Hoja de puesta en marcha";
    section_compare: "Compare arrangements", "Comparar arreglos";
    section_share: "Share", "Compartir";
    section_materials: "Materials list", "Lista de materiales";
}

sentences! { pub(super) FRAME;
    stations: "Stations of this job", "Páginas de este proyecto";

    undo: "Undo", "Deshacer";
    redo: "Redo", "Rehacer";
    units: "Units", "Unidades";
    units_us: "°F, ft", "°F, pies";
    units_si: "°C, m", "°C, metros";
    saved: "saved", "guardado";
    saving: "saving …", "guardando …";
    not_saved: "not saved", "no guardado";
    last_good: "These results are from before: a field cannot be read.",
        "Estos resultados son de antes: hay un dato que no se puede leer.";
    show_field: "Show the field", "Mostrar el dato";
    another_tab: "This job was changed in another tab. Nothing is saved here until you choose.",
        "Este proyecto cambió en otra pestaña. Aquí no se guarda nada hasta que usted elija.";
    take_theirs: "Show the other one", "Mostrar el otro";
    keep_mine: "Keep mine", "Conservar el mío";
    update_waiting: "A new version of Finrun is ready.", "Hay una versión nueva de Finrun.";
    update_now: "Save and reload", "Guardar y recargar";
    terms_here: "Words on this page", "Palabras de esta página";
    terms_title: "Words of the trade", "Palabras del oficio";
    all_terms: "All words of the trade", "Todas las palabras del oficio";
    newer_tab: "A newer Finrun wrote this job in another tab. From this tab nothing is saved any more: download what you typed here if you need it, then load the page again.",
        "Un Finrun más nuevo escribió este proyecto en otra pestaña. Desde esta pestaña ya no se guarda nada: descargue lo que escribió aquí si lo necesita y luego vuelva a cargar la página.";
    load_again: "Load again", "Volver a cargar";
    kept_for_good: "This browser has promised to keep the jobs until you delete them.",
        "Este navegador prometió conservar los proyectos hasta que usted los borre.";
    kept_perhaps: "This browser may clear the jobs when it runs short of room or is not used for long: install Finrun, or download what you cannot lose.",
        "Este navegador puede borrar los proyectos cuando le falte espacio o no se use por mucho tiempo: instale Finrun, o descargue lo que no pueda perder.";
    install_title: "Keep Finrun on this device", "Tener Finrun en este aparato";
    install_now: "Install", "Instalar";
    install_words: "On an iPhone or iPad: Share, then Add to Home Screen. On Android: the browser's menu, then Install app or Add to home screen. On a computer: the sign for installing beside the address. What is installed keeps its own jobs: download those of the browser first and open them there.",
        "En un iPhone o iPad: Compartir y luego Agregar a pantalla de inicio. En Android: el menú del navegador y luego Instalar aplicación o Agregar a la pantalla principal. En una computadora: el signo de instalar junto a la dirección. Lo instalado guarda sus propios proyectos: descargue antes los del navegador y ábralos allí.";
    offline_ready: "Ready to work offline", "Listo para trabajar sin conexión";
    offline_pending: "Getting ready to work offline …", "Preparándose para trabajar sin conexión …";
    offline_failed: "This browser does not keep the page for offline use.",
        "Este navegador no guarda la página para usarla sin conexión.";
    safety: "Safety", "Seguridad";
    about: "About", "Acerca de";
    back: "Back", "Volver";
}

sentences! { pub(super) REST;
    mend_first: "To mend or fill in", "Por corregir o llenar";
    change_sign: "Change the sign of", "Cambiar el signo de";
    safety_title: "Before you build", "Antes de construir";
    about_title: "About Finrun", "Acerca de Finrun";
    yes: "Yes", "Sí";
    remove_deleted: "Close", "Cerrar";
    no_such_job: "That job is not in this browser.", "Ese proyecto no está en este navegador.";
    storage_full: "The browser's storage is full or blocked. Download the job to keep it.",
        "El espacio del navegador está lleno o bloqueado. Descargue el proyecto para conservarlo.";
    file_too_large: "That file is too large for a job. Choose a Finrun job file.",
        "Ese archivo es demasiado grande para un proyecto. Elija un archivo de proyecto de Finrun.";
    result_line: "Result", "Resultado";
    unit_factor: "(units)", "(unidades)";
    done_with_errors: "This room is not complete yet.", "Esta habitación todavía no está completa.";
    removed_room: "A room that is gone", "Una habitación que ya no existe";
    removed_assembly: "An assembly that is gone", "Una construcción que ya no existe";
}

pub fn back_to(station: &str) -> String {
    say!("Back to {station}", "Volver a {station}")
}

pub fn deleted(name: &str) -> String {
    say!("Deleted {name}.", "Se borró {name}.")
}

pub fn brought_back(name: &str) -> String {
    say!("{name} is back.", "{name} está de vuelta.")
}

pub fn copy_name(name: &str) -> String {
    say!("{name}, copy", "{name}, copia")
}

/// Beside a button that acts on one of many: "Remove Kitchen".
pub fn act_on(act: &str, name: &str) -> String {
    format!("{act} {name}")
}

pub fn cannot_save(reason: &str) -> String {
    match reason.is_empty() {
        true => storage_full().to_string(),
        false => format!("{} ({reason})", storage_full()),
    }
}

pub fn file_not_kept(reason: &str) -> String {
    say!(
        "The file was not kept ({reason}). Choose another place, or press Download.",
        "El archivo no se guardó ({reason}). Elija otro lugar o pulse Descargar."
    )
}

pub fn bad_file(reason: &str) -> String {
    say!(
        "This file is no Finrun job, or it is damaged ({reason}). Nothing was changed.",
        "Este archivo no es un proyecto de Finrun, o está dañado ({reason}). No cambió nada."
    )
}

pub fn units_name(system: System) -> &'static str {
    match system {
        System::Us => units_us(),
        System::Si => units_si(),
    }
}

pub fn missing_count(count: usize) -> String {
    match count {
        1 => either(("1 thing missing", "falta 1 dato")).to_string(),
        count => say!("{count} things missing", "faltan {count} datos"),
    }
}

/// Spoken after a recalculation.
pub fn spoken_result(load: &str, length: &str, checks: &str) -> String {
    say!(
        "House {load}, {length} of element, {checks}.",
        "Casa {load}, {length} de elemento, {checks}."
    )
}

/// The window's title, the nearest thing first.
pub fn title(parts: &[&str]) -> String {
    parts.join(" – ")
}
