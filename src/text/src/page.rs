//! Headings, buttons and sentences of the page, in a file for each of its parts.

mod about;
mod buying;
mod compare;
mod house;
mod share;
mod shell;
mod site;
mod water;

pub use about::about_paragraphs;
pub use buying::*;
pub use compare::*;
pub use house::*;
pub use share::*;
pub use shell::*;
pub use site::*;
pub use water::*;

/// A fixed sentence with its name.
type Named = (&'static str, fn() -> &'static str);

/// All fixed ones with their names, in the order of the page.
pub const WORDS: &[Named] = &in_one::<{ count(PARTS) }>(PARTS);

const PARTS: &[&[Named]] = &[
    shell::JOBS,
    buying::MATERIALS,
    shell::FRAME,
    house::HOUSE,
    water::ELEMENT,
    buying::PRICES,
    water::PIPING,
    share::SHARE,
    compare::COMPARE,
    water::PLANT,
    site::SITE,
    water::LOOP,
    shell::REST,
];

const fn count(parts: &[&[Named]]) -> usize {
    let (mut all, mut part) = (0, 0);
    while part < parts.len() {
        all += parts[part].len();
        part += 1;
    }
    all
}

const fn in_one<const ALL: usize>(parts: &[&[Named]]) -> [Named; ALL] {
    let mut all = [parts[0][0]; ALL];
    let (mut at, mut part) = (0, 0);
    while part < parts.len() {
        let mut nth = 0;
        while nth < parts[part].len() {
            all[at] = parts[part][nth];
            at += 1;
            nth += 1;
        }
        part += 1;
    }
    all
}
