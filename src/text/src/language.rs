//! Which language the messages are in, and how it writes numbers and units.
//!
//! Every message gives its words in all languages, side by side, so that the compiler asks for them:
//! [`either`] chooses between two texts, `say!` between two that numbers or names are set into. What
//! is set in is written by its number or name, since languages order it differently.

use std::cell::Cell;

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Language {
    English,
    Spanish,
}

impl Language {
    pub const ALL: [Language; 2] = [Language::English, Language::Spanish];

    /// As HTML and browsers call it: BCP 47.
    pub const fn tag(self) -> &'static str {
        match self {
            Language::English => "en",
            Language::Spanish => "es",
        }
    }

    /// In itself, since who looks for it reads it.
    pub const fn name(self) -> &'static str {
        match self {
            Language::English => "English",
            Language::Spanish => "Español",
        }
    }

    /// What a browser's tag asks for, such as "es-MX"; None for a language that is not spoken here.
    pub fn of_tag(tag: &str) -> Option<Language> {
        let first = tag.split('-').next().unwrap_or_default();
        Language::ALL.into_iter().find(|language| first.eq_ignore_ascii_case(language.tag()))
    }
}

/// What stands between whole numbers and decimals. Spanish has both: a comma in most countries, a
/// point in Mexico, the United States and Central America.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DecimalMark {
    Point,
    Comma,
}

thread_local! {
    // The page has one thread. Tests have many, each with a language of its own.
    static SPOKEN: Cell<(Language, DecimalMark)> = const { Cell::new((Language::English, DecimalMark::Point)) };
}

/// From here on messages are in `language`.
pub fn speak(language: Language, mark: DecimalMark) {
    SPOKEN.set((language, mark));
}

pub fn language() -> Language {
    SPOKEN.get().0
}

/// English, then Spanish.
pub(crate) type Both = (&'static str, &'static str);

/// The text of the language that is spoken.
pub(crate) fn either((english, spanish): Both) -> &'static str {
    match language() {
        Language::English => english,
        Language::Spanish => spanish,
    }
}

/// `format!` in the language that is spoken: `say!("{name} is short", "Falta calor en {name}")`, or
/// with what is set in behind a semicolon: `say!("{0} of {1}", "{0} de {1}"; part(), whole())`.
macro_rules! say {
    ($english:literal, $spanish:literal $(; $($set_in:tt)+)?) => {
        match $crate::language() {
            $crate::Language::English => format!($english $(, $($set_in)+)?),
            $crate::Language::Spanish => format!($spanish $(, $($set_in)+)?),
        }
    };
}

/// Declares fixed sentences: `name: "English", "Español";`, behind the name of their list.
macro_rules! sentences {
    ($all:ident; $($rest:tt)+) => {
        $crate::language::sentences! { pub $all; $($rest)+ }
    };
    ($seen:vis $all:ident; $($name:ident: $english:literal, $spanish:literal;)+) => {
        $(
            pub fn $name() -> &'static str {
                $crate::language::either(($english, $spanish))
            }
        )+

        /// All of them with their names, for whoever checks or translates them.
        $seen const $all: &[(&str, fn() -> &'static str)] = &[$((stringify!($name), $name)),+];
    };
}

pub(crate) use {say, sentences};

/// Numbers and symbols of units, and nothing else, as the language writes them: "1,250.5 ft" is
/// "1 250,5 pies".
pub fn in_units(text: &str) -> String {
    let (language, mark) = SPOKEN.get();
    match language {
        Language::English => text.to_string(),
        Language::Spanish => spanish_units(text, mark),
    }
}

fn spanish_units(text: &str, mark: DecimalMark) -> String {
    let mut out = String::with_capacity(text.len() + 8);
    let mut rest = text;
    while let Some(first) = rest.chars().next() {
        let word = rest.find(|c: char| !c.is_ascii_alphabetic()).unwrap_or(rest.len());
        if word > 0 {
            let (name, after) = rest.split_at(word);
            out.push_str(spanish_unit(name, &out, after));
            rest = after;
            continue;
        }
        let between = out.ends_with(|c: char| c.is_ascii_digit())
            && rest[first.len_utf8()..].starts_with(|c: char| c.is_ascii_digit());
        out.push(match (first, mark) {
            ('.', DecimalMark::Comma) if between => ',',
            // Thousands are set apart by a space: the Academy's and ISO 80000's rule.
            (',', _) if between => '\u{a0}',
            (other, _) => other,
        });
        rest = &rest[first.len_utf8()..];
    }
    out
}

fn spanish_unit<'a>(name: &'a str, before: &str, after: &str) -> &'a str {
    match name {
        // By itself it is counted, as "7 pies"; as a part of a unit it is not, as in "pie/s".
        "ft" if before.ends_with([' ', '\u{a0}']) && !after.starts_with(['²', '³', '/', '·']) => {
            let number = before.trim_end_matches([' ', '\u{a0}']);
            let one = number == "1" || number == "−1" || number.ends_with("por");
            if one { "pie" } else { "pies" }
        }
        "ft" if before.is_empty() && after.is_empty() => "pies",
        "ft" => "pie",
        "in" => "pulg",
        "cfm" => "pie³/min",
        "mph" => "mi/h",
        "per" => "por",
        "hour" => "hora",
        "day" => "día",
        other => other,
    }
}
