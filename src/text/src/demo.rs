//! The names in the houses to look around in.

use crate::language::{Both, either};

/// A name in a demo's file, which is English, in the language that is spoken; None for any other name.
pub fn demo_name(english: &str) -> Option<&'static str> {
    NAMES.iter().find(|names| names.0 == english).map(|names| either(*names))
}

/// A wall is called by where it looks or what it stands against; its kind is set before or behind that.
const NAMES: &[Both] = &[
    ("Heron Lane bungalow (demo)", "Casa de un piso, vereda de la Garza (ejemplo)"),
    ("Alder Street two-storey (demo)", "Casa de dos pisos, calle del Aliso (ejemplo)"),
    ("Sandpiper Point cottage (demo)", "Casita de Punta Correlimos (ejemplo)"),
    ("Bath", "Baño"),
    ("Bedroom", "Dormitorio"),
    ("Dining room", "Comedor"),
    ("East bedroom", "Dormitorio este"),
    ("Great room", "Sala grande"),
    ("Hall", "Recibidor"),
    ("Kitchen", "Cocina"),
    ("Living room", "Sala de estar"),
    ("Main bedroom", "Dormitorio principal"),
    ("North bedroom", "Dormitorio norte"),
    ("South bedroom", "Dormitorio sur"),
    ("Study", "Estudio"),
    ("West bedroom", "Dormitorio oeste"),
    ("Attic", "Ático"),
    ("Basement", "Sótano"),
    ("Crawl space", "Espacio de poca altura"),
    ("Garage", "Garaje"),
    ("north", "norte"),
    ("east", "este"),
    ("south", "sur"),
    ("west", "oeste"),
    ("gable east", "del hastial este"),
    ("gable west", "del hastial oeste"),
    ("bath", "del baño"),
    ("bath front", "frontal del baño"),
    ("bath side", "lateral del baño"),
    ("garage", "del garaje"),
    ("west bedroom", "del dormitorio oeste"),
    ("Walls of 2 x 6 with foam", "Paredes de 2 x 6 con espuma"),
];
