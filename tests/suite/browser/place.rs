//! Where a person stands in a job, and what the page has stored of it.

use serde_json::{Value, json};

use super::page::Page;

/// A page of a job.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Place {
    Rooms,
    /// Also an unheated space.
    Room(u64),
    HeatLoss,
    Lengths,
    Loop,
    Climate,
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
    Compare,
    Materials,
    Drawings,
    Install,
    Commission,
    Share,
    Report,
    Season,
    DesignDay,
    Cooler,
    Existing,
}

impl Place {
    pub(super) const STATIONS: [Place; 4] =
        [Place::Rooms, Place::HeatLoss, Place::Lengths, Place::Loop];

    /// What belongs to a station and has a page of its own.
    pub(super) const SECTIONS: [Place; 22] = [
        Place::Climate,
        Place::Air,
        Place::Ground,
        Place::Assemblies,
        Place::Certainty,
        Place::Bills,
        Place::WhatIf,
        Place::Prices,
        Place::Piping,
        Place::Circulator,
        Place::Plant,
        Place::Compare,
        Place::Materials,
        Place::Drawings,
        Place::Install,
        Place::Commission,
        Place::Share,
        Place::Report,
        Place::Season,
        Place::DesignDay,
        Place::Cooler,
        Place::Existing,
    ];

    /// All pages of a job but those of its rooms.
    pub(super) fn without_rooms() -> impl Iterator<Item = Place> {
        Place::STATIONS.into_iter().chain(Place::SECTIONS)
    }

    /// The end of its address.
    fn path(self) -> String {
        match self {
            Place::Room(id) => return format!("room/{id}"),
            Place::Rooms => "rooms",
            Place::HeatLoss => "heat-loss",
            Place::Lengths => "lengths",
            Place::Loop => "loop",
            Place::Climate => "place",
            Place::Air => "air",
            Place::Ground => "ground",
            Place::Assemblies => "assemblies",
            Place::Certainty => "certainty",
            Place::Bills => "bills",
            Place::WhatIf => "what-if",
            Place::Prices => "prices",
            Place::Piping => "piping",
            Place::Circulator => "circulator",
            Place::Plant => "plant",
            Place::Compare => "compare",
            Place::Materials => "materials",
            Place::Drawings => "drawings",
            Place::Install => "install",
            Place::Commission => "commission",
            Place::Share => "share",
            Place::Report => "report",
            Place::Season => "season",
            Place::DesignDay => "design-day",
            Place::Cooler => "cooler",
            Place::Existing => "existing",
        }
        .to_owned()
    }

    /// Its name in names of files.
    pub(super) fn word(self) -> String {
        self.path().replace('/', "-")
    }
}

impl Page {
    /// The key of the open job, from the address.
    #[track_caller]
    pub(super) fn job_key(&self) -> String {
        self.wait("the address of a job", || {
            let hash = self.wait_on(self.client.execute("return location.hash", Vec::new()));
            let hash = hash.map_err(|error| error.to_string())?;
            let key = hash.as_str().and_then(|hash| hash.split('/').nth(2));
            key.map(str::to_owned).ok_or_else(|| format!("{hash} is none"))
        })
    }

    /// Goes to another page of the open job, as by its address.
    #[track_caller]
    pub(super) fn go(&self, place: Place) {
        let hash = format!("#/job/{}/{}", self.job_key(), place.path());
        self.script("location.hash = arguments[0]", vec![json!(hash)]);
        // The page puts the focus to its beginning when it has changed; what is done sooner, it
        // would take the focus away from.
        self.settle();
    }

    /// Waits until what was typed stands in storage.
    #[track_caller]
    pub(super) fn wait_until_saved(&self) {
        self.wait("waiting until it is saved", || match self.text_of(".saved").as_str() {
            "saved" => Ok(()),
            other => Err(format!("the page says {other:?}")),
        });
    }

    /// Lets the page do what it has put off to its next moments.
    #[track_caller]
    pub(super) fn settle(&self) {
        let script = "const [done] = arguments;
            requestAnimationFrame(() => setTimeout(() => requestAnimationFrame(() => done(true))))";
        self.asked("a moment", self.wait_on(self.client.execute_async(script, Vec::new())));
    }

    /// The stored text of a job.
    #[track_caller]
    pub(super) fn stored(&self, key: &str) -> String {
        let entry = json!(format!("finrun.job.{key}"));
        match self.script("return localStorage.getItem(arguments[0])", vec![entry]) {
            Value::String(text) => text,
            _ => self.fail(&format!("nothing is stored of the job {key}")),
        }
    }

    /// Puts a text into the storage of the page, as if it had been there, and opens the job list.
    #[track_caller]
    pub(super) fn open_with(&self, key: &str, text: &str) {
        self.open("/");
        let entry = vec![json!(format!("finrun.job.{key}")), json!(text)];
        self.script("localStorage.setItem(arguments[0], arguments[1])", entry);
        self.reload();
        self.wait_for("html[data-boot=started]");
    }

    /// Opens a job that is given as a file's text, at one of its pages.
    #[track_caller]
    pub(super) fn open_job(&self, text: &str, place: Place) {
        self.open_with("given", text);
        self.script("location.hash = '#/job/given/rooms'", Vec::new());
        self.wait_for(".stations");
        self.go(place);
    }
}
