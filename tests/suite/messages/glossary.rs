//! Words of the trade: in order, each once, none explained by itself alone.

use super::Book;
use finrun_text::glossary::TERMS;

#[test]
fn words_of_the_trade() {
    let mut book = Book::default();
    for term in TERMS {
        book.add(term.word, term.meaning);
        assert!(term.meaning.ends_with('.') && term.meaning.len() > 20, "{}", term.word);
    }
    let words: Vec<String> =
        TERMS.iter().map(|term| term.word.to_lowercase().replace('-', " ")).collect();
    assert!(words.is_sorted(), "{words:?}");
    insta::assert_snapshot!(book.text());
}
