//! What is not taken says its field by name, beside it, and comes under the thumb; nothing typed is lost.

use super::*;
use fivebar_core::ledger::decide::{HaulCommand, PileFacts};

fn typed(at: usize, text: &str) -> Vec<Tap> {
    let press = |sign: char| match sign {
        '.' => Press::Point,
        digit => Press::Digit(u8::try_from(digit.to_digit(10).unwrap()).unwrap()),
    };
    let gone = (0..8).map(|_| Tap::Press(Press::RubOut));
    std::iter::once(Tap::At(at)).chain(gone).chain(text.chars().map(|sign| Tap::Press(press(sign)))).collect()
}

#[track_caller]
fn check((shape, open): (Shape, &[Tap]), figures: &[(usize, &str)], (at, field, said): (usize, &str, &str)) {
    let mut app = opened("");
    heard(&mut app, [Tap::Open, Tap::Shape(shape)].into_iter().chain(open.iter().cloned()));
    heard(&mut app, figures.iter().flat_map(|(nth, text)| typed(*nth, text)));
    heard(&mut app, [if open.is_empty() { Tap::Go } else { Tap::AddBoards }]);
    let shown = page(&app);
    let form = app.plan.draft.buying.as_ref().map_or(&app.plan.draft.form, |buying| &buying.form);
    assert_eq!(form.at, at, "{shown}");
    for (nth, text) in figures {
        assert_eq!(form.text(*nth), *text, "{field}");
    }
    // The reason stands behind its own field, and on a low page over the pad, where it is not read out again.
    let all = |words: &str| shown.matches(words).count();
    assert_eq!((all(&format!("{field}: {said}")), all("role=\"alert\"")), (2, 1), "{shown}");
    let place = |words: &str| shown.find(words).unwrap_or_else(|| panic!("{words}: {shown}"));
    assert!(place(&format!(">{field}")) < place(&format!("{field}: ")) && place(&format!("{field}: ")) < place("class=\"pad\""), "{shown}");
}

#[test]
fn each_field_that_is_refused_says_its_name() {
    let none = "0 is too few, it must be 1 or more.";
    for shape in [Shape::Parts, Shape::Sticks] {
        check((shape, &[]), &[(0, "0")], (0, "Pieces of the job", none));
    }
    let rows = (Shape::Rows, &[][..]);
    check(rows, &[(0, "1100"), (1, "")], (1, "Wide", "nothing is typed yet."));
    check(rows, &[(0, ""), (2, "3")], (0, "Long", "nothing is typed yet."));
    check(rows, &[(0, "1..2"), (3, "40")], (0, "Long", "“1..2” is no number."));
    check(rows, &[(0, "12.5.1")], (0, "Long", "“12.5.1” is no number."));
    check(rows, &[(2, "0")], (2, "Rows", none));
    check(rows, &[(4, "99999999")], (4, "Thick", "it reads as"));
    let field = (Shape::Field, &[][..]);
    check(field, &[(0, ""), (1, "400")], (0, "Wide", "nothing is typed yet."));
    check(field, &[(0, "500"), (3, "2..")], (3, "May be off by", "“2..” is no number."));
    let buy = (Shape::Rows, &[Tap::Piles, Tap::Buy][..]);
    check(buy, &[(0, "30"), (1, "60")], (2, "Long", "nothing is typed yet."));
    check(buy, &[(0, "30"), (1, "60"), (2, "500"), (3, "0")], (3, "At most", none));
}

/// The pad would cover the sentence over it: why there is nothing to plan stands in the foot too, with the pad.
#[test]
fn why_there_is_nothing_to_plan_stands_with_the_pad() {
    let mut app = opened("");
    let thick = [Tap::At(4), Tap::Press(Press::Digit(9)), Tap::Press(Press::Digit(9)), Tap::Go];
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows)].into_iter().chain(thick));
    let shown = page(&app);
    let foot = shown.split("<footer class=\"foot typing\">").nth(1).unwrap_or_else(|| panic!("{shown}"));
    assert!(foot.starts_with("<div class=\"here wrong\"") && foot.contains("None of the pieces fits."), "{foot}");
}

/// Two piles have one name: each has its wood beside it, or its letter.
#[test]
fn no_two_piles_are_left_out_under_one_name() {
    for (wood, named) in
        [("beech-european", ["Thin, oak left out", "Thin, beech left out"]), ("oak-european", ["Thin, B left out", "Thin, C left out"])]
    {
        let mut app = opened(&format!("leave for yard\npile other {wood} 10 x 65 x 400 mm\ncount 5 other\n"));
        let all = fivebar_core::sheet::make::sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap();
        let Lying { haul, pile } = all.iter().find(|it| it.pile.name.as_deref() == Some("other")).unwrap().which().0;
        let facts = PileFacts { name: Some("thin".into()), ..PileFacts::default() };
        super::later::order(&mut app, Command::Haul(HaulCommand::DescribePile { haul, pile, facts }));
        heard(
            &mut app,
            [Tap::Open, Tap::Shape(Shape::Rows), Tap::At(4), Tap::Press(Press::Digit(9)), Tap::Press(Press::Digit(9)), Tap::Go],
        );
        let shown = page(&app);
        assert!(named.iter().all(|named| shown.contains(named)) && !shown.contains("Thin left out"), "{shown}");
    }
}

/// Two hauls have a pile A each, and a plan is made of the one without the other: no letter of the plan is the name of what it leaves.
#[test]
fn no_letter_of_a_plan_is_that_of_another_pile() {
    let mut app = super::told::at_rack("leave for next\npile more oak-european 27 x 62 x 1010 mm\ncount 37 more\n");
    let all = fivebar_core::sheet::make::sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap();
    let others = all.iter().filter(|it| it.pile.name.as_deref() != Some("more")).map(|it| Tap::Turn(it.which())).collect::<Vec<_>>();
    assert_eq!(all.iter().map(|it| it.pile.label.as_str()).collect::<Vec<_>>(), ["A", "A", "B", "C"]);
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows)].into_iter().chain(others));
    super::told::typed(&mut app, &["1000", "100", "2"]);
    heard(&mut app, [Tap::Go]);
    super::told::solved(&mut app);
    let letters = app.plan.given.as_ref().unwrap().ready.sources.iter().map(|it| it.letter.clone()).collect::<Vec<_>>();
    assert_eq!(letters, ["D"], "{}", page(&app));
}
