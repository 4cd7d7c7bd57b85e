//! A metric book: a comma is a decimal sign in every figure of a plan, whichever sign the phone writes.

use super::told::at_rack;
use super::*;
use crate::words::Plain;
use fivebar_core::quantity::reading::Sign;
use fivebar_core::quantity::{Currency, Units};
use fivebar_core::sheet::make::{Field, Top, What};
use std::rc::Rc as Shared;

/// What is asked once these were typed on a keyboard into the figures of a shape, each in its place.
fn asked(shape: Shape, sign: Sign, figures: &[&str]) -> What {
    let mut app = at_rack("");
    app.speech = Shared::new(Plain { sign, currency: Currency::EUR, units: Units::Metric, ..Plain::default() });
    heard(&mut app, [Tap::Open, Tap::Shape(shape)]);
    for (nth, figure) in figures.iter().enumerate() {
        heard(&mut app, [Tap::At(nth)]);
        for key in figure.chars() {
            let says = crate::screens::page(&app).keys_at("pad").unwrap()(&key.to_string());
            let now = Now { wall: app.now, chance: [7; 10] };
            app.heard(says.unwrap_or_else(|| panic!("{key} is not heard")), now);
        }
    }
    let job = app.jobs.open.unwrap();
    let typing = app.speech.typing(Units::Metric);
    app.plan.draft.ask(job, typing).unwrap_or_else(|| panic!("{shape:?} {sign:?}")).what
}

fn tenths(n: i64) -> Length {
    Length::nm(n * 100_000).unwrap()
}

#[test]
fn a_comma_is_a_decimal_sign_in_every_figure() {
    for sign in [Sign::Comma, Sign::Point] {
        let What::Top(Top { length, width, rows, apart, thickness, .. }) =
            asked(Shape::Rows, sign, &["1040,5", "340,2", "8", "99,5", "31,5"])
        else {
            panic!("a top")
        };
        let sides = [Some(length), Some(width), Some(apart), thickness];
        assert_eq!((sides, rows), ([10_405, 3_402, 995, 315].map(|n| Some(tenths(n))), Some(8)), "{sign:?}");
        let What::Field(Field { sides, tolerance, tile, .. }) = asked(Shape::Field, sign, &["600,5", "300,2", "35,5", "2,5", "118,4"])
        else {
            panic!("a field")
        };
        assert_eq!((sides, tolerance, tile), ([6_005, 3_002, 355].map(|n| Some(tenths(n))), tenths(25), Some(tenths(1_184))), "{sign:?}");
    }
}
