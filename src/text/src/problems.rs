//! What is wrong with something typed or opened: the field, the value, the remedy.

use crate::fields::{bounds_hint, field_label, field_owner, limit};
use finrun_engine::emitter::{FitError, PointFault};
use finrun_engine::job::{BillField, Draft, Field, FieldError, OpenError, Problem};
use finrun_engine::quantity::{Kind, ReadError, System, Value};

/// One field's error in a sentence or two.
pub fn problem(error: &FieldError, system: System) -> String {
    let typed = &error.typed;
    let text = |value: Value| crate::value(value, system);
    match &error.problem {
        Problem::Missing => format!("Missing. Type {}.", what(error)),
        Problem::Unreadable(reason) => unreadable(typed, reason, error),
        Problem::BelowLeast { least } => {
            format!("“{typed}” is less than {}. {}", limit(*least, system), takes(error, system))
        }
        Problem::AboveMost { most } => {
            format!("“{typed}” is more than {}. {}", limit(*most, system), takes(error, system))
        }
        Problem::NotWhole => format!("“{typed}” is no whole number. Count them: 0, 1, 2 …"),
        Problem::OpeningsTooLarge { openings, surface } => format!(
            "The windows and doors come to {}, the surface to {}. Make one smaller, or correct \
             the surface.",
            text(*openings),
            text(*surface)
        ),
        Problem::TallerThanWall { wall } => {
            format!(
                "It is taller than its wall of {}. Make it lower, or the wall higher.",
                text(*wall)
            )
        }
        Problem::PastWallEnd { end, wall } => format!(
            "It ends {} from the left corner, and the wall is {} long. Make it narrower, or move \
             it to the left.",
            text(*end),
            text(*wall)
        ),
        Problem::Overlaps { ends } => format!(
            "It overlaps another one that ends {} from the left corner. Move one, or make one \
             narrower.",
            text(*ends)
        ),
        Problem::LongerThanWall { wall } => {
            format!(
                "It is longer than the wall of {}. Shorten it, or correct the wall.",
                text(*wall)
            )
        }
        Problem::DeeperThanWall { wall } => format!(
            "It reaches deeper than its wall of {}. Make the depth less, or the wall higher.",
            text(*wall)
        ),
        Problem::CutTooLarge { room } => format!(
            "The cut takes the room's whole {}. Make the cut smaller, or the room larger.",
            text(*room)
        ),
        Problem::NotAboveOutdoors { outdoors } => format!(
            "The room must be warmer than the design day of {}. Correct one of the two.",
            text(*outdoors)
        ),
        Problem::ColdestAboveMean { mean } => format!(
            "The coldest month cannot be warmer than the year's mean of {}. Correct one of the two.",
            text(*mean)
        ),
        Problem::BehindItself => {
            "This leads to its own room. Choose what lies on the other side.".to_string()
        }
        Problem::NeighbourGone => {
            "The room or space behind it is gone. Choose what lies there now, or undo.".to_string()
        }
        Problem::AssemblyGone => {
            "The assembly that it was built of is gone. Choose another, or undo.".to_string()
        }
        Problem::RoomGone => crate::room_gone().to_string(),
        Problem::NoLayers => {
            "It has no layers yet. Add them, or type its U-value or R-value.".to_string()
        }
        Problem::NotADate => "That is no date. Write year, month and day: 2025-12-31.".to_string(),
        Problem::PeriodTooShort => {
            "Less than a week shows the weather, not the house. Take a longer bill.".to_string()
        }
        Problem::PeriodTooLong => {
            "A bill of more than 400 days is two bills. Split it, or correct a day.".to_string()
        }
        Problem::UnlikelyDegreeDays => {
            "No weather of this place has such degree days in those days. Leave it blank, or \
             correct it."
                .to_string()
        }
        Problem::EndsBeforeStart => {
            "The bill ends before it begins. Correct one of the two days.".to_string()
        }
        Problem::BillsOverlap { other } => format!(
            "These days are on bill {other} too. Let one bill end on the day the next begins."
        ),
        Problem::NotAboveAir { air } => format!(
            "The water must be warmer than the entering air of {}. Type the average water \
             temperature of the rating.",
            text(*air)
        ),
        Problem::TooFewPoints => {
            "Two rows at least, with different water temperatures, make a curve. Add a row."
                .to_string()
        }
        Problem::NoFit(reason) => no_fit(*reason).to_string(),
        Problem::TooFewPumpPoints => {
            "A curve takes three points at least, from no flow to the most. Add a point."
                .to_string()
        }
        Problem::PumpFlowRepeated => {
            "Another point has this flow. Change one of the two, or remove it.".to_string()
        }
        Problem::PumpCurveRises { head } => format!(
            "The curve rises to {} here: no circulator gives more head at more flow. Correct one of \
             the points.",
            text(*head)
        ),
        Problem::PumpWithoutHead => {
            "The curve has no head at any flow. Type the head at no flow.".to_string()
        }
        Problem::NoStock => {
            "There is no piece to choose: no stock length is chosen, or the shop has none of them. \
             Choose a length, or correct how many there are."
                .to_string()
        }
        Problem::FixedRunGone => {
            "Pieces were kept on a stretch of this wall that is gone. Let them go.".to_string()
        }
        Problem::FixedTooLong { pieces, run } => format!(
            "The pieces kept here are {} long and the stretch of wall takes {}. Let them go, or \
             correct the wall.",
            text(*pieces),
            text(*run)
        ),
    }
}

fn takes(error: &FieldError, system: System) -> String {
    format!("It takes {}.", bounds_hint(error.field, system))
}

fn what(error: &FieldError) -> &'static str {
    if let Field::Bill(_, BillField::From | BillField::To) = error.field {
        return "a date: 2025-12-31";
    }
    match error.field.spec().kind {
        Kind::Length => "feet and inches, or metres",
        Kind::SmallLength => "inches, or millimetres",
        Kind::Temperature => "degrees",
        Kind::Area => "square feet, or square metres",
        _ => "a number",
    }
}

fn unreadable(typed: &str, reason: &ReadError, error: &FieldError) -> String {
    let example = match error.field.spec().kind {
        Kind::Length => "Write 7' 6 1/2\", 7.5 ft or 2.3 m.",
        Kind::SmallLength => "Write 4 in or 100 mm.",
        Kind::Temperature => "Write 70, 70 °F or 21 °C.",
        Kind::Power | Kind::LinearPower => "Write a number, with its unit if it is another.",
        _ => "Write a number, such as 12 or 12.5.",
    };
    match reason {
        ReadError::Empty => format!("Nothing is typed. {example}"),
        ReadError::TooLong => format!("That is too long for a number. {example}"),
        ReadError::NotANumber { part } => {
            format!("“{typed}” cannot be read: “{part}” is no number. {example}")
        }
        ReadError::AmbiguousComma { part, thousands, decimal } => {
            format!("“{part}” may be {thousands} or {decimal}. Write the one you mean.")
        }
        ReadError::UnknownUnit { part } => {
            format!("“{typed}” cannot be read: “{part}” is no unit for this. {example}")
        }
        ReadError::UnitsMissing => {
            format!("“{typed}” has two numbers without marks between. {example}")
        }
        ReadError::OutOfOrder => {
            format!("“{typed}” mixes units in an order that cannot be read. {example}")
        }
        ReadError::ZeroDenominator => format!("“{typed}” divides by zero. {example}"),
    }
}

fn no_fit(reason: FitError) -> &'static str {
    match reason {
        FitError::Reference => "The water must be warmer than the entering air. Correct one.",
        FitError::Point { fault, .. } => match fault {
            PointFault::NotFinite => "This row is no number. Correct it.",
            PointFault::WaterNotAboveAir => {
                "This row's water is no warmer than the entering air. Correct one."
            }
            PointFault::OutputNotPositive => "This row gives no heat. Correct it.",
            PointFault::FlowNotPositive => "This row has no flow. Correct it.",
        },
        FitError::TooFewTemperatures => {
            "All rows have the same water temperature. Add one at another."
        }
        FitError::NoConvergence => {
            "No smooth curve goes through these rows. Look for a slip: output must grow with the \
             water's temperature."
        }
    }
}

/// An error with the field it belongs to, for a summary: "Kitchen, Wall 1, Length: Missing …".
pub fn problem_at(draft: &Draft, error: &FieldError, system: System) -> String {
    let owner = field_owner(draft, error.field);
    format!("{owner}, {}: {}", field_label(error.field), problem(error, system))
}

/// Why a file is no job.
pub fn file_problem(error: &OpenError) -> String {
    match error {
        OpenError::Newer { version } => format!(
            "This file was written by a newer Finrun (file version {version}). Update this one, \
             then open it again."
        ),
        OpenError::UnknownVersion { version } => {
            format!("This file says version {version}, which does not exist. It may be damaged.")
        }
        OpenError::RepeatedId { id } => format!(
            "This file is damaged: the number {id} stands for two things. Use an earlier copy."
        ),
        OpenError::TooLarge { count, most } => {
            format!("This file has {count} of a thing that a house has at most {most} of.")
        }
        OpenError::StockLength { feet } => {
            format!("This file has a stock length of {feet} ft; pieces are 2 to 10 ft long.")
        }
    }
}
