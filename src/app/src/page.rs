//! Where the reader is: an own hash router, because nothing else of the address is ours to use.

use finrun_engine::building::RoomId;
use finrun_text as text;

/// A job's key in storage.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct JobKey(pub String);

/// The four stations of a job.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Station {
    Rooms,
    HeatLoss,
    Lengths,
    Loop,
}

impl Station {
    pub const ALL: [Station; 4] =
        [Station::Rooms, Station::HeatLoss, Station::Lengths, Station::Loop];

    /// As the reader sees it.
    pub fn label(self) -> &'static str {
        match self {
            Station::Rooms => text::station_rooms(),
            Station::HeatLoss => text::station_heat_loss(),
            Station::Lengths => text::station_lengths(),
            Station::Loop => text::station_loop(),
        }
    }

    const fn name(self) -> &'static str {
        match self {
            Station::Rooms => "rooms",
            Station::HeatLoss => "heat-loss",
            Station::Lengths => "lengths",
            Station::Loop => "loop",
        }
    }
}

/// What belongs to a station but has a page of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Section {
    Place,
    Air,
    Ground,
    Assemblies,
    Certainty,
    Bills,
    WhatIf,
    Prices,
    Piping,
    Circulator,
    Plant,
    Drawings,
    Compare,
    Materials,
    Share,
    Install,
    Commission,
    Existing,
    Report,
    Season,
    DesignDay,
    Cooler,
}

impl Section {
    pub const ALL: [Section; 22] = [
        Section::Place,
        Section::Air,
        Section::Ground,
        Section::Assemblies,
        Section::Certainty,
        Section::Bills,
        Section::WhatIf,
        Section::Prices,
        Section::Piping,
        Section::Circulator,
        Section::Plant,
        Section::Drawings,
        Section::Compare,
        Section::Materials,
        Section::Share,
        Section::Install,
        Section::Commission,
        Section::Existing,
        Section::Report,
        Section::Season,
        Section::DesignDay,
        Section::Cooler,
    ];

    /// The station that it belongs to.
    pub fn station(self) -> Station {
        match self {
            Section::Place | Section::Air | Section::Ground | Section::Assemblies => Station::Rooms,
            Section::Certainty | Section::Bills | Section::WhatIf => Station::HeatLoss,
            Section::Prices => Station::Lengths,
            Section::Piping
            | Section::Circulator
            | Section::Plant
            | Section::Drawings
            | Section::Compare
            | Section::Materials
            | Section::Share
            | Section::Install
            | Section::Commission
            | Section::Existing
            | Section::Report
            | Section::Season
            | Section::DesignDay
            | Section::Cooler => Station::Loop,
        }
    }

    /// As the reader sees it.
    pub fn label(self) -> &'static str {
        match self {
            Section::Place => text::section_place(),
            Section::Air => text::section_air(),
            Section::Ground => text::section_ground(),
            Section::Assemblies => text::section_assemblies(),
            Section::Certainty => text::section_certainty(),
            Section::Bills => text::section_bills(),
            Section::WhatIf => text::section_what_if(),
            Section::Prices => text::section_prices(),
            Section::Piping => text::section_piping(),
            Section::Circulator => text::section_circulator(),
            Section::Plant => text::section_plant(),
            Section::Drawings => text::section_drawings(),
            Section::Compare => text::section_compare(),
            Section::Materials => text::section_materials(),
            Section::Share => text::section_share(),
            Section::Install => text::section_install(),
            Section::Commission => text::section_commission(),
            Section::Existing => text::section_existing(),
            Section::Report => text::section_report(),
            Section::Season => text::section_season(),
            Section::DesignDay => text::section_design_day(),
            Section::Cooler => text::section_cooler(),
        }
    }

    const fn name(self) -> &'static str {
        match self {
            Section::Place => "place",
            Section::Air => "air",
            Section::Ground => "ground",
            Section::Assemblies => "assemblies",
            Section::Certainty => "certainty",
            Section::Bills => "bills",
            Section::WhatIf => "what-if",
            Section::Prices => "prices",
            Section::Piping => "piping",
            Section::Circulator => "circulator",
            Section::Plant => "plant",
            Section::Drawings => "drawings",
            Section::Compare => "compare",
            Section::Materials => "materials",
            Section::Share => "share",
            Section::Install => "install",
            Section::Commission => "commission",
            Section::Existing => "existing",
            Section::Report => "report",
            Section::Season => "season",
            Section::DesignDay => "design-day",
            Section::Cooler => "cooler",
        }
    }
}

#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Page {
    Jobs,
    Station(JobKey, Station),
    Section(JobKey, Section),
    Room(JobKey, RoomId),
    Safety,
    About,
    /// Words of the trade.
    Terms,
    /// A job that came with a link, packed.
    Offered(String),
}

impl Page {
    /// The page that a hash names; an unknown one leads to the job list.
    pub fn from_hash(hash: &str) -> Page {
        let path = hash.trim_start_matches('#').trim_matches('/');
        let parts: Vec<&str> = path.split('/').collect();
        match parts.as_slice() {
            ["safety"] => Page::Safety,
            ["about"] => Page::About,
            ["words"] => Page::Terms,
            ["open", packed] => Page::Offered(packed.to_string()),
            ["job", key] => Page::Station(JobKey(key.to_string()), Station::Rooms),
            ["job", key, "room", id] => match id.parse() {
                Ok(id) => Page::Room(JobKey(key.to_string()), RoomId(id)),
                Err(_) => Page::Station(JobKey(key.to_string()), Station::Rooms),
            },
            ["job", key, name] => {
                let key = JobKey(key.to_string());
                let station = Station::ALL.into_iter().find(|station| station.name() == *name);
                match Section::ALL.into_iter().find(|section| section.name() == *name) {
                    Some(section) => Page::Section(key, section),
                    None => Page::Station(key, station.unwrap_or(Station::Rooms)),
                }
            }
            _ => Page::Jobs,
        }
    }

    pub fn to_hash(&self) -> String {
        match self {
            Page::Jobs => "#/".to_string(),
            Page::Safety => "#/safety".to_string(),
            Page::About => "#/about".to_string(),
            Page::Terms => "#/words".to_string(),
            Page::Offered(packed) => format!("#/open/{packed}"),
            Page::Station(job, station) => format!("#/job/{}/{}", job.0, station.name()),
            Page::Section(job, section) => format!("#/job/{}/{}", job.0, section.name()),
            Page::Room(job, room) => format!("#/job/{}/room/{}", job.0, room.0),
        }
    }

    /// The job that the page belongs to.
    pub fn job(&self) -> Option<&JobKey> {
        match self {
            Page::Station(job, _) | Page::Section(job, _) | Page::Room(job, _) => Some(job),
            Page::Jobs | Page::Safety | Page::About | Page::Terms | Page::Offered(_) => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_page_survives_its_hash() {
        let key = JobKey("k3x".to_string());
        let mut pages =
            vec![Page::Jobs, Page::Safety, Page::About, Page::Room(key.clone(), RoomId(7))];
        pages.extend(Station::ALL.map(|station| Page::Station(key.clone(), station)));
        pages.extend(Section::ALL.map(|section| Page::Section(key.clone(), section)));
        for page in pages {
            assert_eq!(Page::from_hash(&page.to_hash()), page);
        }
    }

    #[test]
    fn strange_hashes_lead_somewhere() {
        let rooms = Page::Station(JobKey("a".to_string()), Station::Rooms);
        for (hash, page) in [
            ("", Page::Jobs),
            ("#", Page::Jobs),
            ("#/nowhere/at/all/x", Page::Jobs),
            ("#/job/a", rooms.clone()),
            ("#/job/a/attic", rooms.clone()),
            ("#/job/a/room/x", rooms),
        ] {
            assert_eq!(Page::from_hash(hash), page, "{hash}");
        }
    }
}
