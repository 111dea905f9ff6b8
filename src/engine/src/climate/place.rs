//! Which stations a place's name means.

use super::table::{Listed, Table};

/// The stations that match, each with how badly.
pub(super) fn rank<'a>(table: &'a Table, words: &[&str]) -> Vec<(u32, &'a Listed)> {
    let mut out = Vec::new();
    let state = state_at_end(words);
    for listed in &table.stations {
        let of_state = match state {
            Some((code, used)) if code == listed.station.state => {
                Some(&words[..words.len() - used])
            }
            _ => None,
        };
        // A state's name may be a town's as well: New York, Washington, Delaware in Ohio.
        let by_state = of_state.and_then(|words| rank_name(&listed.station.name, words));
        let by_name = rank_name(&listed.station.name, words);
        if let Some(rank) = by_name.into_iter().chain(by_state).min() {
            out.push((rank, listed));
        }
    }
    // `Carlsbad CA` asks for one state, though Carlsbad Cavern in another has its letters too. Such
    // names count only if the state has none.
    if let Some((code, used)) = state
        && used < words.len()
        && out.iter().any(|(_, listed)| listed.station.state == code)
    {
        out.retain(|(_, listed)| listed.station.state == code);
    }
    out
}

/// How badly a name matches, if each word begins one of the name's words.
fn rank_name(name: &str, words: &[&str]) -> Option<u32> {
    let parts = split(name);
    let all = words.iter().all(|word| parts.iter().any(|part| begins(part, word)));
    if !all {
        return None;
    }
    let (Some(first), Some(part)) = (words.first(), parts.first()) else { return Some(4) };
    Some(if words.len() == parts.len() && words.iter().zip(&parts).all(|(w, p)| same(p, w)) {
        0
    } else if words.iter().zip(&parts).all(|(word, part)| same(part, word)) {
        1
    } else if same(part, first) {
        2
    } else if begins(part, first) {
        3
    } else {
        4
    })
}

/// A word that stands short in some names and long in others.
const SHORT: [(&str, &str); 3] = [("saint", "st"), ("fort", "ft"), ("mount", "mt")];

fn same(part: &str, word: &str) -> bool {
    part.eq_ignore_ascii_case(word)
        || SHORT.iter().any(|&(long, short)| {
            let either =
                |text: &str| text.eq_ignore_ascii_case(long) || text.eq_ignore_ascii_case(short);
            either(part) && either(word)
        })
}

fn begins(part: &str, word: &str) -> bool {
    let beginning = part.as_bytes().get(..word.len());
    beginning.is_some_and(|start| start.eq_ignore_ascii_case(word.as_bytes())) || same(part, word)
}

/// Splits at all of ASCII but letters and digits; an accented letter stays within its word.
pub(super) fn split(text: &str) -> Vec<&str> {
    text.split(|c: char| c.is_ascii() && !c.is_ascii_alphanumeric())
        .filter(|word| !word.is_empty())
        .collect()
}

/// The state that the last words name, by its letters or in full, and how many words that takes.
fn state_at_end(words: &[&str]) -> Option<(&'static str, usize)> {
    for (code, name) in STATES {
        let parts = split(name);
        let full = words.len().checked_sub(parts.len()).is_some_and(|start| {
            words[start..].iter().zip(&parts).all(|(word, part)| word.eq_ignore_ascii_case(part))
        });
        if full {
            // Virginia ends West Virginia.
            let west = code == "VA"
                && words.len() > 1
                && words[words.len() - 2].eq_ignore_ascii_case("west");
            return Some(if west { ("WV", 2) } else { (code, parts.len()) });
        }
        if words.last().is_some_and(|word| word.eq_ignore_ascii_case(code)) {
            return Some((code, 1));
        }
    }
    None
}

/// The Postal Service's letters, from memory; those that the table has stations of.
const STATES: [(&str, &str); 53] = [
    ("AK", "Alaska"),
    ("AL", "Alabama"),
    ("AR", "Arkansas"),
    ("AZ", "Arizona"),
    ("CA", "California"),
    ("CO", "Colorado"),
    ("CT", "Connecticut"),
    ("DE", "Delaware"),
    ("FL", "Florida"),
    ("GA", "Georgia"),
    ("GU", "Guam"),
    ("HI", "Hawaii"),
    ("IA", "Iowa"),
    ("ID", "Idaho"),
    ("IL", "Illinois"),
    ("IN", "Indiana"),
    ("KS", "Kansas"),
    ("KY", "Kentucky"),
    ("LA", "Louisiana"),
    ("MA", "Massachusetts"),
    ("MD", "Maryland"),
    ("ME", "Maine"),
    ("MI", "Michigan"),
    ("MN", "Minnesota"),
    ("MO", "Missouri"),
    ("MS", "Mississippi"),
    ("MT", "Montana"),
    ("NC", "North Carolina"),
    ("ND", "North Dakota"),
    ("NE", "Nebraska"),
    ("NH", "New Hampshire"),
    ("NJ", "New Jersey"),
    ("NM", "New Mexico"),
    ("NV", "Nevada"),
    ("NY", "New York"),
    ("OH", "Ohio"),
    ("OK", "Oklahoma"),
    ("OR", "Oregon"),
    ("PA", "Pennsylvania"),
    ("PR", "Puerto Rico"),
    ("RI", "Rhode Island"),
    ("SC", "South Carolina"),
    ("SD", "South Dakota"),
    ("TN", "Tennessee"),
    ("TX", "Texas"),
    ("UT", "Utah"),
    ("VA", "Virginia"),
    ("VI", "Virgin Islands"),
    ("VT", "Vermont"),
    ("WA", "Washington"),
    ("WI", "Wisconsin"),
    ("WV", "West Virginia"),
    ("WY", "Wyoming"),
];
