//! Runs the engine on check data made outside it, and says how far the two are apart.
//!
//! A file's kind is read from the start of its name (`a1_`, `b_` and so on), so other files of the
//! same kinds, with other cases, can be given in place of `tests/reference`.

pub mod cuts;
pub mod element;
mod emission;
mod friction;
mod glycol;
pub mod houses;
pub mod hydraulic;
mod series;
pub mod stock;
mod table;
mod tally;
mod tube;
mod water;

use std::fmt;
use std::path::{Path, PathBuf};
use tally::Tally;

/// What a file of check data is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    Water,
    Glycol,
    Friction,
    Tube,
    Series,
    Network,
    Emission,
    StockLengths,
    CutPlan,
}

impl Kind {
    pub const ALL: [Kind; 9] = [
        Kind::Water,
        Kind::Glycol,
        Kind::Friction,
        Kind::Tube,
        Kind::Series,
        Kind::Network,
        Kind::Emission,
        Kind::StockLengths,
        Kind::CutPlan,
    ];

    /// How the name of such a file begins.
    pub fn prefix(self) -> &'static str {
        match self {
            Kind::Water => "a1_",
            Kind::Glycol => "a2_",
            Kind::Friction => "b_",
            Kind::Tube => "c_",
            Kind::Series => "d_",
            Kind::Network => "e_",
            Kind::Emission => "f_",
            Kind::StockLengths => "g_",
            Kind::CutPlan => "h_",
        }
    }

    /// The kind of the file with this name, if it is check data at all.
    pub fn of(file_name: &str) -> Option<Kind> {
        let data = file_name.ends_with(".csv") || file_name.ends_with(".json");
        Kind::ALL.into_iter().find(|kind| data && file_name.starts_with(kind.prefix()))
    }

    fn checker(self) -> Checker {
        match self {
            Kind::Water => water::check,
            Kind::Glycol => glycol::check,
            Kind::Friction => friction::check,
            Kind::Tube => tube::check,
            Kind::Series => series::check,
            Kind::Network => hydraulic::check,
            Kind::Emission => emission::check,
            Kind::StockLengths => stock::check,
            Kind::CutPlan => cuts::check,
        }
    }
}

/// Compares the engine with a file's text; an error says why the text cannot be read.
type Checker = fn(&str) -> Result<Tally, String>;

/// How the engine stands against a file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Verdict {
    /// Every case within its tolerance.
    Within,
    /// At least one case outside.
    Out,
    /// No verdict: why the file cannot be used.
    Unreadable(String),
}

/// One file of check data against the engine.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Report {
    pub file: String,
    /// `None` where the file (or the folder) could not be told to be of a kind.
    pub kind: Option<Kind>,
    pub cases: usize,
    /// The case nearest to its tolerance, or furthest beyond.
    pub worst: String,
    /// Each quantity's tolerance, with the part of it that its worst case takes.
    pub tolerance: String,
    pub verdict: Verdict,
}

impl fmt::Display for Report {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Report { file, cases, worst, tolerance, verdict, .. } = self;
        match verdict {
            Verdict::Within => write!(f, "{file}: {cases} cases, within; {worst}; {tolerance}"),
            Verdict::Out => write!(f, "{file}: {cases} cases, OUT; {worst}; {tolerance}"),
            Verdict::Unreadable(why) => write!(f, "{file}: UNREADABLE, {why}"),
        }
    }
}

/// Runs the engine on every file of check data in `folder`, in order of their names.
///
/// A folder that cannot be read, or holds no such file, is itself reported as unreadable: nothing
/// checked must not look like everything well.
pub fn run_all(folder: &Path) -> Vec<Report> {
    match data_files(folder) {
        Ok(files) if files.is_empty() => {
            vec![unreadable(folder.display().to_string(), None, "no check data in it".into())]
        }
        Ok(files) => files.into_iter().map(|(kind, file)| run(kind, &file)).collect(),
        Err(error) => vec![unreadable(folder.display().to_string(), None, error.to_string())],
    }
}

fn data_files(folder: &Path) -> std::io::Result<Vec<(Kind, PathBuf)>> {
    let mut files = Vec::new();
    for entry in std::fs::read_dir(folder)? {
        let path = entry?.path();
        if let Some(kind) = path.file_name().and_then(|name| name.to_str()).and_then(Kind::of) {
            files.push((kind, path));
        }
    }
    files.sort();
    Ok(files)
}

fn run(kind: Kind, path: &Path) -> Report {
    let file = path.file_name().unwrap_or(path.as_os_str()).to_string_lossy().into_owned();
    let check = kind.checker();
    match std::fs::read_to_string(path).map_err(|error| error.to_string()).and_then(|t| check(&t)) {
        Err(why) => unreadable(file, Some(kind), why),
        Ok(tally) if tally.cases() == 0 => unreadable(file, Some(kind), "no cases in it".into()),
        Ok(tally) => Report {
            cases: tally.cases(),
            worst: tally.worst(),
            tolerance: tally.tolerances(),
            ..report(file, Some(kind), if tally.within() { Verdict::Within } else { Verdict::Out })
        },
    }
}

fn unreadable(file: String, kind: Option<Kind>, why: String) -> Report {
    report(file, kind, Verdict::Unreadable(why))
}

fn report(file: String, kind: Option<Kind>, verdict: Verdict) -> Report {
    Report { file, kind, cases: 0, worst: String::new(), tolerance: String::new(), verdict }
}
