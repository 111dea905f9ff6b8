//! Words of sharing a job: as a file, a link or a code, and what is offered by a link.

use crate::language::{either, say, sentences};
use finrun_engine::job::Draft;

sentences! { pub(super) SHARE;
    share_note: "Nothing is sent anywhere by this page: the whole job is in the file, in the link, or in the code, and you pass it on yourself.",
        "Esta página no envía nada a ninguna parte: el proyecto entero está en el archivo, en el enlace o en el código, y usted mismo lo entrega.";
    share_fact: "as a file, a link or a code", "como archivo, enlace o código";
    share_file: "File", "Archivo";
    share_file_note: "For keeping, and for mail. Whoever gets it opens it from the list of jobs.",
        "Para guardar y para el correo. Quien lo reciba lo abre desde la lista de proyectos.";
    keep_in_place: "Choose where to keep it", "Elegir dónde guardarlo";
    file_kept: "The file is kept where you chose", "El archivo quedó donde usted eligió";
    hand_over_file: "Send the file", "Enviar el archivo";
    share_link: "Link", "Enlace";
    share_link_note: "The job stands behind the # of the address, which no browser sends to a server. Whoever opens it sees the job first and keeps it only on wish; nothing of theirs is replaced.",
        "El proyecto va detrás del # de la dirección, que ningún navegador envía a un servidor. Quien lo abra ve primero el proyecto y lo guarda solo si quiere; nada de lo suyo se reemplaza.";
    no_link_from_a_file: "This page was opened from a file, so there is no address for a link or a QR code. Send the file of the job.",
        "Esta página se abrió desde un archivo, así que no hay dirección para un enlace ni un código QR. Envíe el archivo del proyecto.";
    copy_link: "Copy the link", "Copiar el enlace";
    link_copied: "Link copied", "Enlace copiado";
    link_failed: "This browser cannot pack a link. Send the file.",
        "Este navegador no puede armar un enlace. Envíe el archivo.";
    share_code: "QR code of the link", "Código QR del enlace";
    share_code_note: "For a phone beside you: point its camera here.",
        "Para un teléfono a su lado: apunte aquí su cámara.";
    code_too_long: "The job is too long for a QR code. Send the file or the link.",
        "El proyecto es demasiado largo para un código QR. Envíe el archivo o el enlace.";
    offered_title: "A job that came with a link", "Un proyecto que llegó con un enlace";
    offered_note: "It is not kept yet. Nothing that you have is replaced.",
        "Todavía no está guardado. Nada de lo que usted tiene se reemplaza.";
    offered_same_name: "You have a job of this name already. Both are kept.",
        "Ya tiene un proyecto con este nombre. Se guardan los dos.";
    keep_offered: "Keep it among my jobs", "Guardarlo entre mis proyectos";
    to_the_jobs: "To my jobs", "A mis proyectos";
    unpacking: "Unpacking", "Desempacando";
    link_damaged: "The link is damaged: it was cut off or changed on its way. Ask for it again, or for the file.",
        "El enlace está dañado: se cortó o cambió en el camino. Pídalo otra vez, o pida el archivo.";
}

/// How long a link is.
pub fn link_letters(letters: usize) -> String {
    say!("{letters} letters", "{letters} letras")
}

/// What a job holds, before it is kept.
pub fn offered_facts(draft: &Draft) -> String {
    let rooms = match draft.rooms.len() {
        1 => either(("1 room", "1 habitación")).to_string(),
        count => say!("{count} rooms", "{count} habitaciones"),
    };
    let zones = match draft.zones.len() {
        1 => either(("1 zone", "1 zona")).to_string(),
        count => say!("{count} zones", "{count} zonas"),
    };
    let mut facts = vec![rooms];
    match draft.spaces.len() {
        0 => {}
        1 => facts.push(either(("1 unheated space", "1 espacio sin calefacción")).to_string()),
        count => facts.push(say!("{count} unheated spaces", "{count} espacios sin calefacción")),
    }
    facts.push(zones);
    facts.join(", ")
}
