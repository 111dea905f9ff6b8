//! How a stored entry shows in its box when the page is in other units than it was typed in.

use super::draft::Draft;
use super::field::Field;
use super::resolve::{Resolved, resolve};
use crate::quantity::{FeetInches, Kind, System, Unit, Value, read, show, show_in};

/// The text in the box of `field`: as typed, or converted while the page shows other units.
///
/// The draft is not touched, so that switching back shows what was typed, to the last character.
pub fn box_text(draft: &Draft, field: Field) -> String {
    let Some(entry) = draft.entry(field) else { return String::new() };
    let unit = draft.box_unit(field);
    if entry.unit == unit {
        return entry.text.clone();
    }
    match read(&entry.text, entry.unit) {
        // A text that names its unit reads the same beside any box.
        Ok(reading) if reading.unit != entry.unit => entry.text.clone(),
        Ok(reading) => in_unit(reading.si, unit),
        Err(_) => entry.text.clone(),
    }
}

/// What stands behind the box of a field.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ReadBack {
    Nothing,
    /// What was read, where it differs in form from what was typed.
    Echo(String),
    /// What is taken while the box is blank.
    Assumed(String),
}

/// What stands behind the box of `field`.
pub fn read_back(draft: &Draft, field: Field) -> ReadBack {
    let feet = field.spec().kind == Kind::Length && draft.units == System::Us;
    match resolve(draft, field) {
        Resolved::Typed { si, .. } if feet => {
            ReadBack::Echo(FeetInches::nearest(si, 16).to_string())
        }
        Resolved::Typed { si, unit } if unit != draft.box_unit(field) => {
            ReadBack::Echo(show(Value::new(field.spec().kind, si), draft.units).text())
        }
        // Nobody measures a mountain in inches.
        Resolved::Assumed { si } if feet && si.abs() > 60.0 => {
            ReadBack::Assumed(format!("{:.0} ft", Unit::Foot.from_si(si)))
        }
        Resolved::Assumed { si } if feet => {
            ReadBack::Assumed(FeetInches::nearest(si, 4).to_string())
        }
        Resolved::Assumed { si } => {
            let value = Value::new(field.spec().kind, si);
            ReadBack::Assumed(show_in(value, draft.box_unit(field)).text())
        }
        _ => ReadBack::Nothing,
    }
}

/// A number for a box: five significant digits, so that a converted value reads back closely.
pub(super) fn in_unit(si: f64, unit: Unit) -> String {
    if unit == Unit::Foot {
        return feet_text(si);
    }
    let number = unit.from_si(si);
    let size = number.abs().max(1e-9);
    // Digits before the point, at most one less than none for numbers below one tenth.
    let whole = (libm::log10(size).floor() as i32 + 1).clamp(-3, 5);
    let text = format!("{number:.*}", (5 - whole) as usize);
    match text.contains('.') {
        true => text.trim_end_matches('0').trim_end_matches('.').to_string(),
        false => text,
    }
}

/// `7' 6 1/2"`, as it is typed.
fn feet_text(si: f64) -> String {
    let FeetInches { negative, feet, inches, fraction } = FeetInches::nearest(si, 16);
    let sign = if negative { "-" } else { "" };
    let fraction = match fraction {
        (0, _) => String::new(),
        (top, bottom) => format!(" {top}/{bottom}"),
    };
    match (inches, fraction.is_empty()) {
        (0, true) => format!("{sign}{feet}'"),
        (inches, _) => format!("{sign}{feet}' {inches}{fraction}\""),
    }
}
