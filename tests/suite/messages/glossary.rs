//! Words of the trade: in order, each once, none explained by itself alone.

use super::{Book, in_both};
use finrun_text::glossary::terms;
use finrun_text::{DecimalMark, Language, speak};

#[test]
fn words_of_the_trade() {
    // By the English alphabet in both, so that a word stands beside its translation.
    let all = terms();
    let tell = |book: &mut Book| {
        for (index, term) in all.iter().enumerate() {
            let meaning = term.meaning();
            assert!(meaning.ends_with('.') && meaning.len() > 20, "{}", term.word());
            book.add(index, format!("{}: {meaning}", term.word()));
        }
    };
    insta::assert_snapshot!(in_both(tell));
}

/// The Academy's alphabet takes no account of accents.
#[test]
fn words_of_the_trade_stand_in_the_order_of_each_language() {
    for language in Language::ALL {
        speak(language, DecimalMark::Point);
        let words: Vec<String> = terms()
            .iter()
            .map(|term| {
                let accents =
                    [("á", "a"), ("é", "e"), ("í", "i"), ("ó", "o"), ("ú", "u"), ("-", " ")];
                let word = term.word().to_lowercase();
                accents.iter().fold(word, |word, (with, without)| word.replace(with, without))
            })
            .collect();
        assert!(words.is_sorted(), "{words:?}");
        assert_eq!(words.len(), 44);
    }
    speak(Language::English, DecimalMark::Point);
}
