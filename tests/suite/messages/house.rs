//! What is said of a house's certainty, its climate station and its fuel bills.

use super::{Book, in_both};
use crate::support::{V2_FIXTURE, open};
use finrun_engine::bills::{BillsError, Compared, Fit, Fitted, Verdict};
use finrun_engine::building::{
    Assembly, AssemblyId, Band, Effect, RoomId, SlabCompared, Source, Subject,
};
use finrun_engine::climate::Station;
use finrun_engine::job::GroundMethod;
use finrun_engine::quantity::{
    Length, LossCoefficient, Power, System, Temperature, TemperatureDifference, Transmittance, Unit,
};
use finrun_text as text;

const SYSTEMS: [System; 2] = [System::Us, System::Si];

#[test]
fn certainty_and_what_to_measure() {
    let mut draft = open(V2_FIXTURE);
    draft.rooms[0].name = "Kitchen".to_string();
    let tell = |book: &mut Book| {
        let own = draft.assemblies.first().map_or(AssemblyId(0), |assembly| assembly.id);
        let room = draft.rooms.first().map_or(RoomId(0), |room| room.id);
        let subjects = [
            (Subject::Outdoors, 1.7),
            (Subject::Leakage, 0.4),
            (Subject::Ventilation, 0.1),
            (Subject::Soil, 0.3),
            (Subject::SpaceAir, 0.4),
            (Subject::Listed(Assembly::FrameWallR11), 0.2),
            (Subject::Own(own), 0.1),
            (Subject::TypedU(Transmittance::of(0.09, Unit::UsU).si().to_bits()), 0.1),
            (Subject::Size(room), 0.02),
            (Subject::Sizes, 0.02),
            (Subject::GuessedOpenings, 0.4),
            (Subject::GuessedTemperature, 0.4),
        ];
        for (subject, range) in subjects {
            for system in SYSTEMS {
                book.add(format!("{subject:?} {system:?}"), text::subject(&draft, subject, system));
                for (narrows, source) in [(90.0, Source::Listed), (0.0, Source::Assumed)] {
                    let effect = Effect {
                        subject,
                        source,
                        range,
                        alone: Power::from_si(300.0),
                        narrows: Power::from_si(narrows),
                    };
                    let key = format!("{subject:?} {source:?} {system:?}");
                    book.add(key, text::effect(&effect, system));
                }
            }
        }
        let band = Band { low: Power::from_si(5000.0), high: Power::from_si(7000.0) };
        let slabs = SlabCompared { used: Power::from_si(900.0), other: Power::from_si(1300.0) };
        for system in SYSTEMS {
            book.add(format!("band {system:?}"), text::band(band, system));
            let load = Power::from_si(6000.0);
            book.add(format!("load {system:?}"), text::load_and_band(load, band, system));
            for method in [GroundMethod::Iso, GroundMethod::FFactor] {
                let said = text::slabs_compared(slabs, method, system);
                book.add(format!("slabs {method:?} {system:?}"), said);
            }
        }
        for source in [Source::Measured, Source::Label] {
            let (subject, alone) = (Subject::Sizes, Power::from_si(40.0));
            let effect = Effect { subject, source, range: 0.02, alone, narrows: Power::ZERO };
            book.add(format!("{source:?}"), text::effect(&effect, System::Us));
        }
    };
    insta::assert_snapshot!(in_both(tell));
}

#[test]
fn stations_and_searches() {
    let station = Station {
        state: "VT".to_string(),
        name: "Burlington International AP".to_string(),
        elevation_m: 101,
        t99_f: -1,
        t996_f: -7,
        mean_f: 46,
        coldest_month_f: 19,
        degree_days_65_f: 7490,
        wind_mph: 10,
    };
    let tell = |book: &mut Book| {
        book.add("name", text::station_name(&station));
        book.add("taken", text::station_taken(&station));
        for system in SYSTEMS {
            let (far, off) = (Length::from_si(17_700.0), TemperatureDifference::from_si(2.2));
            book.add(format!("facts {system:?}"), text::station_facts(&station, system));
            book.add(format!("away {system:?}"), text::station_away(far, off, system));
            book.add(format!("spread {system:?}"), text::zip_spread("05401", far, system));
        }
        book.add("digits", text::not_a_zip(4));
        book.add("no such", text::no_such_zip("00001"));
        book.add("more", text::more_stations(7));
        book.add("failed", text::stations_failed("climate.txt: 404"));
    };
    insta::assert_snapshot!(in_both(tell));
}

#[test]
fn bills_and_the_house_they_tell_of() {
    let tell = |book: &mut Book| {
        let coefficient = LossCoefficient::from_si(200.0);
        let verdicts =
            [(Verdict::Agrees, 1.05), (Verdict::BillsLower, 0.6), (Verdict::BillsHigher, 1.7)];
        for (verdict, ratio) in verdicts {
            for fitted in [Fitted::Coefficient, Fitted::All] {
                let fit = Fit {
                    coefficient,
                    coefficient_error: None,
                    balance: Temperature::of(62.0, Unit::Fahrenheit),
                    other_use: Power::from_si(250.0),
                    fitted,
                    balance_at_limit: false,
                    residual: 0.05,
                };
                let calculated = coefficient / ratio;
                let compared =
                    Compared { calculated, from_bills: coefficient, ratio, band: 0.2, verdict };
                for system in SYSTEMS {
                    let key = format!("{verdict:?} {fitted:?} {system:?}");
                    book.add(key, text::against_bills(&fit, &compared, system));
                }
            }
        }
        for error in [BillsError::NoHeating, BillsError::NotWithTheCold, BillsError::NoBills] {
            book.add(format!("{error:?}"), text::bills_tell_nothing(error));
        }
    };
    insta::assert_snapshot!(in_both(tell));
}
