//! The words of stock, prices and pieces that stay.

use super::Book;
use finrun_engine::job::{Draft, Entry, Field, Objective, PriceField};
use finrun_engine::named::Named;
use finrun_engine::quantity::{System, Unit};
use finrun_text as text;

#[test]
fn words_of_the_shop() {
    let mut book = Book::default();
    for &objective in Objective::ALL {
        book.add(text::objective(objective), text::objective_note(objective));
    }
    let mut draft = Draft::new("", System::Us);
    book.add("no prices", text::prices_fact(&draft));
    for field in [PriceField::Joint, PriceField::Pipe] {
        let entry = Entry { text: "3.50".to_string(), unit: Unit::Currency };
        draft.type_entry(&draft.clone(), Field::Price(field), entry);
    }
    book.add("prices", text::prices_fact(&draft));
    book.add("stretch", text::wall_stretch(1));
    book.add("kept", text::kept_pieces("5 ft + 3 ft"));
    insta::assert_snapshot!(book.text());
}
