//! Messages by their key, in every language, and a guard against what is left in English.

use finrun_text as text;
use finrun_text::{DecimalMark, Language};

/// Messages by their key, in order.
#[derive(Default)]
pub(super) struct Book(Vec<(String, String)>);

impl Book {
    pub(super) fn add(&mut self, key: impl ToString, message: impl ToString) {
        // What holds numbers and units together looks as any space does.
        let (key, message) = (key.to_string(), message.to_string().replace('\u{a0}', " "));
        assert!(!message.is_empty(), "{key} says nothing");
        assert!(message.chars().count() <= 500, "{key} is too long to be read: {message}");
        assert!(!message.contains("TODO") && !message.contains("  "), "{key}: {message:?}");
        assert_eq!(message.trim(), message, "{key}");
        self.0.push((key, message));
    }

    /// As lines of key and message, in the order of adding.
    pub(super) fn text(&self) -> String {
        self.0.iter().map(|(key, message)| format!("{key}\n    {message}\n")).collect()
    }
}

/// The messages that `tell` adds, in every language: key, English, Spanish. Nothing is left in English.
pub(super) fn in_both(tell: impl Fn(&mut Book)) -> String {
    let [english, spanish] = Language::ALL.map(|language| {
        text::speak(language, DecimalMark::Comma);
        let mut book = Book::default();
        tell(&mut book);
        book
    });
    text::speak(Language::English, DecimalMark::Point);
    let keys = |book: &Book| book.0.iter().map(|(key, _)| key.clone()).collect::<Vec<_>>();
    assert_eq!(keys(&english), keys(&spanish));
    let mut left = Vec::new();
    let mut out = String::new();
    for ((key, english), (_, spanish)) in english.0.iter().zip(&spanish.0) {
        left.extend(english_left(english, spanish).map(|why| format!("{key}: {spanish} ({why})")));
        out.push_str(&format!("{key}\n    {english}\n    {spanish}\n"));
    }
    assert!(left.is_empty(), "left in English:\n{}", left.join("\n"));
    out
}

/// Why a message cannot be Spanish.
fn english_left(english: &str, spanish: &str) -> Option<&'static str> {
    let words = |text: &str| {
        // Names and what is quoted are as they were typed.
        let named = NAMES.iter().fold(text.to_string(), |text, name| text.replace(name, ""));
        let parts = named.split('»').filter_map(|part| part.split('«').next());
        let text: String = parts.collect();
        let letters = |c: char| !c.is_alphabetic();
        text.split(letters)
            .map(str::to_lowercase)
            .filter(|word| !word.is_empty())
            .collect::<Vec<_>>()
    };
    let same = words(english) == words(spanish);
    if same && !words(english).iter().all(|word| SAME_WORDS.contains(&word.as_str())) {
        return Some("the same words");
    }
    let mut words = words(spanish).into_iter();
    words.any(|word| ENGLISH_ONLY.contains(&word.as_str())).then_some("an English word")
}

/// Words that no Spanish sentence has, but for names.
pub(crate) const ENGLISH_ONLY: &[&str] = &[
    "the", "of", "and", "is", "are", "was", "with", "for", "from", "what", "that", "which", "not",
    "it", "its", "on", "to", "this", "these", "than", "room", "water", "heat", "wall", "feet",
    "ft", "in", "where", "when", "by", "at", "or", "each", "all", "one", "you", "your", "they",
    "there", "here", "have", "but", "only", "least", "most", "until", "into", "beside", "nothing",
    "other",
];

/// Names in the jobs of these tests that hold such words.
const NAMES: &[&str] = &[
    "Living room",
    "Family room",
    "Great room",
    "Room ",
    "North wall",
    "north wall",
    "Upstairs",
    "Kitchen",
    "Hall",
    "Bath",
    "Bedroom",
    "First floor",
    "Third floor",
    "Our house",
];

/// Words, symbols of units and names of places that are the same in both languages.
const SAME_WORDS: &[&str] = &[
    "finrun",
    "cv",
    "u",
    "r",
    "en",
    "material",
    "f",
    "c",
    "k",
    "w",
    "m",
    "s",
    "h",
    "l",
    "min",
    "gal",
    "gpm",
    "psi",
    "btu",
    "burlington",
    "international",
    "ap",
    "vt",
    "re",
    "total",
    "nominal",
    "kwh",
];
