//! The job file: a version, and the draft.
//!
//! A change that only adds, with defaults that mean what older files meant, raises the version and
//! leaves the structs to read both. For any other the old struct is frozen in a module of its own and
//! a `From` step leads to the next version. One committed fixture of each version is read by the tests.

use super::draft::Draft;
use super::piping::{MOST_ZONES, ZoneDraft};
use crate::building::ZoneId;
use crate::stored::stored;

pub const CURRENT_VERSION: u32 = 6;

/// The oldest version that the current structs still read: since then things were only added, and
/// what a file does not have means what it meant when it was written.
const OLDEST_READ: u32 = 1;

/// Read first: it has the same shape in every version.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Header {
    pub version: u32,
}

stored!(Header { version as "finrun" });

/// A whole file of the current version.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct File {
    version: u32,
    job: Draft,
}

stored!(File { version as "finrun", job });

/// Why a file is no job.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum OpenError {
    /// Written by a newer Finrun.
    Newer { version: u32 },
    /// No version that ever existed.
    UnknownVersion { version: u32 },
    /// Two things with one id, or an id still to be given out.
    RepeatedId { id: u32 },
    /// More rooms or surfaces than a house has.
    TooLarge { count: usize, most: usize },
    /// A stock length outside 2 to 10 ft.
    StockLength { feet: u8 },
    /// A climate station with a number that no place on earth has.
    Station,
}

/// More rooms than any job for this tool.
const MOST_ROOMS: usize = 200;
/// More surfaces, or openings, than any one room.
const MOST_PARTS: usize = 100;
/// More steps of an installation than any job has, those that went away with its rooms included.
const MOST_STEPS: usize = 5000;

impl Header {
    /// Whether [`File`] can read a file with this header.
    pub fn check(self) -> Result<(), OpenError> {
        match self.version {
            OLDEST_READ..=CURRENT_VERSION => Ok(()),
            version if version > CURRENT_VERSION => Err(OpenError::Newer { version }),
            version => Err(OpenError::UnknownVersion { version }),
        }
    }
}

impl File {
    pub fn new(job: Draft) -> File {
        File { version: CURRENT_VERSION, job }
    }

    /// The draft, once its ids and sizes are known to be sound.
    pub fn open(self) -> Result<Draft, OpenError> {
        let File { version, mut job } = self;
        Header { version }.check()?;
        // Older files know of one loop only.
        if job.zones.is_empty() {
            job.zones.push(ZoneDraft::series(ZoneId(0), job.tube));
        }
        let routes = job.rooms.iter().map(|room| room.route.len());
        let layers = job.assemblies.iter().map(|assembly| assembly.layers.len());
        let limits = [
            (job.rooms.len(), MOST_ROOMS),
            (job.spaces.len(), MOST_PARTS),
            (job.assemblies.len(), MOST_PARTS),
            (layers.max().unwrap_or(0), MOST_PARTS),
            (job.bills.list.len(), MOST_ROOMS),
            (job.zones.len(), MOST_ZONES),
            (routes.max().unwrap_or(0), MOST_PARTS),
            (job.pump.points.len(), MOST_PARTS),
            (job.element.stock.len(), MOST_PARTS),
            (job.sized_prices.len(), MOST_PARTS),
            (job.progress.steps.len(), MOST_STEPS),
            (job.progress.spots.len(), MOST_STEPS),
            (job.what_if.len(), MOST_PARTS),
        ];
        if let Some(&(count, most)) = limits.iter().find(|(count, most)| count > most) {
            return Err(OpenError::TooLarge { count, most });
        }
        if let Some(&feet) =
            job.element.stock_ft.iter().find(|feet| !super::draft::STOCK_FT.contains(feet))
        {
            return Err(OpenError::StockLength { feet });
        }
        if job.station.as_ref().is_some_and(|station| !station.is_on_earth()) {
            return Err(OpenError::Station);
        }
        for (at, zone) in job.zones.iter().enumerate() {
            if job.zones[..at].iter().any(|other| other.id == zone.id) {
                return Err(OpenError::RepeatedId { id: zone.id.0 });
            }
        }
        let mut seen: Vec<u32> = Vec::new();
        let mut fresh = |id: u32| match seen.binary_search(&id) {
            Err(place) if id < job.next_id => {
                seen.insert(place, id);
                Ok(())
            }
            _ => Err(OpenError::RepeatedId { id }),
        };
        for assembly in &job.assemblies {
            fresh(assembly.id.0)?;
        }
        for bill in &job.bills.list {
            fresh(bill.id.0)?;
        }
        for change in &job.what_if {
            fresh(change.id.0)?;
        }
        for room in job.all_rooms() {
            fresh(room.id.0)?;
            if room.surfaces.len() > MOST_PARTS {
                return Err(OpenError::TooLarge { count: room.surfaces.len(), most: MOST_PARTS });
            }
            for surface in &room.surfaces {
                fresh(surface.id.0)?;
                let fixed = surface.fixed.iter().map(|fixed| fixed.pieces_ft.len() + 1).sum();
                if fixed > MOST_PARTS {
                    return Err(OpenError::TooLarge { count: fixed, most: MOST_PARTS });
                }
                if surface.openings.len() > MOST_PARTS {
                    let count = surface.openings.len();
                    return Err(OpenError::TooLarge { count, most: MOST_PARTS });
                }
                for opening in &surface.openings {
                    fresh(opening.id.0)?;
                }
            }
        }
        Ok(job)
    }
}
