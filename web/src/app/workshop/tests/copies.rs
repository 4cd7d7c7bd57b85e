//! A copy is kept, shown before it is accepted, and only adds.

use super::*;

/// The copy of one phone, brought in on another.
fn copy() -> String {
    let mut app = App::for_tests(Place::Count);
    after(&mut app, [Msg::Count(crate::app::count::Tap::First)]);
    let orders = app.heard(tap(Tap::KeepCopy), nth(9));
    let text = orders.into_iter().find_map(|order| if let Order::Share { text, .. } = order { Some(text) } else { None });
    text.unwrap()
}

#[test]
fn inv11_a_copy_is_shown_before_it_is_accepted_and_only_adds() {
    let mut app = App::for_tests(Place::Workshop);
    let shown = after(&mut app, [tap(Tap::Picked(copy()))]);
    assert!(shown.contains("Nothing is changed yet") && shown.contains("pieces counted"), "{shown}");
    assert!(app.own.book.is_empty(), "not before it is accepted");
    let orders = app.heard(tap(Tap::AddThese), nth(10));
    let lines = orders.iter().find_map(|order| if let Order::BringIn { lines, .. } = order { Some(lines.len()) } else { None });
    assert_eq!(lines, Some(3));
}

#[test]
fn inv11_a_damaged_copy_changes_nothing_and_says_why() {
    let mut app = App::for_tests(Place::Workshop);
    let whole = copy();
    for (text, said) in [
        (whole[..whole.len() / 2].to_owned(), "It ends before its end"),
        ("once upon a time".to_owned(), "It is no copy of Fivebar"),
        (whole.replacen("\"n\":1", "\"n\":7", 1), "Something in it was changed"),
        (whole.replacen("\"fivebar\":1", "\"fivebar\":9", 1), "A newer version kept it"),
    ] {
        let shown = after(&mut app, [tap(Tap::Picked(text))]);
        assert!(shown.contains(said) && shown.contains("What is here is unchanged."), "{said}: {shown}");
        assert!(app.own.book.is_empty());
    }
}

#[test]
fn a_copy_counts_as_kept_only_when_it_was_handed_on() {
    let mut app = App::for_tests(Place::Workshop);
    after(
        &mut app,
        [Msg::Count(crate::app::count::Tap::First), tap(Tap::Open(Over::Copies)), tap(Tap::KeepCopy), tap(Tap::Handed(Handed::PutAway))],
    );
    let shown = after(&mut app, []);
    assert!(shown.contains("No copy was ever kept: 1 piece would be lost with this phone.") && shown.contains("put away"), "{shown}");
    let shown = after(&mut app, [tap(Tap::KeepCopy), tap(Tap::Handed(Handed::Shared("fivebar.json".into())))]);
    assert!(shown.contains("Handed on as fivebar.json") && shown.contains("Last copy today, nothing since."), "{shown}");
}

/// What was written while the share sheet stood open is in no copy.
#[test]
fn a_copy_holds_all_up_to_when_it_was_written() {
    let mut app = App::for_tests(Place::Workshop);
    let first = Msg::Count(crate::app::count::Tap::First);
    after(&mut app, [first.clone(), tap(Tap::Open(Over::Copies)), tap(Tap::KeepCopy)]);
    let pile = crate::app::count::sheet(&app).unwrap().tiles[0].pile;
    app.heard(Msg::Count(crate::app::count::Tap::Pile(pile)), nth(20));
    let shown = after(&mut app, [tap(Tap::Handed(Handed::Downloaded("fivebar.json".into())))]);
    assert!(shown.contains("1 piece since") && shown.contains("The browser took fivebar.json"), "{shown}");
}

#[test]
fn where_no_file_can_be_handed_on_the_copy_is_a_text() {
    let mut app = App::for_tests(Place::Workshop);
    after(&mut app, [Msg::Count(crate::app::count::Tap::First), tap(Tap::Open(Over::Copies)), tap(Tap::KeepCopy)]);
    let shown = after(&mut app, [tap(Tap::Handed(Handed::NoWay))]);
    assert!(shown.contains("Copy as text") && shown.contains("No copy was ever kept"), "{shown}");
    let orders = app.heard(tap(Tap::CopyText), nth(20));
    assert!(matches!(&orders[..], [Order::CopyText { text }] if text.starts_with("{\"fivebar\":1")), "{orders:?}");
    assert!(after(&mut app, [tap(Tap::CopiedText(false))]).contains("No copy was ever kept"));
    after(&mut app, [tap(Tap::KeepCopy), tap(Tap::CopyText)]);
    assert!(after(&mut app, [tap(Tap::CopiedText(true))]).contains("Last copy today"));
}

/// A full phone: what it would not keep is in the copy all the same.
#[test]
fn a_copy_holds_what_could_not_be_saved() {
    let mut app = App::for_tests(Place::Count);
    let orders = app.heard(Msg::Count(crate::app::count::Tap::First), nth(0));
    let lines = orders.iter().find_map(|order| if let Order::Append { lines, .. } = order { Some(lines.clone()) } else { None }).unwrap();
    app.told(News::NotSaved { which: Which::Own, lines: lines.clone(), names: Default::default(), trouble: Trouble::Full, stored: vec![] });
    let orders = app.heard(tap(Tap::KeepCopyNow), nth(1));
    assert_eq!(app.place, Place::Workshop);
    let text = orders.iter().find_map(|order| if let Order::Share { text, .. } = order { Some(text) } else { None }).unwrap();
    assert!(lines.iter().all(|posted| text.contains(&posted.line)));
}

#[test]
fn inv11_a_copy_that_was_added_is_said_and_its_names_are_known() {
    let mut other = App::for_tests(Place::Workshop);
    let named =
        [tap(Tap::Open(Over::People)), tap(Tap::Typed("Stair works".into())), tap(Tap::AddPerson(Role::Supplier)), tap(Tap::KeepCopy)];
    after(&mut other, named[..3].iter().cloned());
    let orders = other.heard(named[3].clone(), nth(9));
    let text = orders.into_iter().find_map(|order| if let Order::Share { text, .. } = order { Some(text) } else { None }).unwrap();
    let mut app = App::for_tests(Place::Workshop);
    after(&mut app, [tap(Tap::Picked(text.clone()))]);
    let orders = app.heard(tap(Tap::AddThese), nth(10));
    assert!(matches!(&orders[..], [Order::BringIn { lines, names, .. }] if (lines.len(), names.kept.len()) == (1, 1)), "{orders:?}");
    assert!(app.own.names.is_empty(), "not before it is written");
    assert!(after(&mut app, [tap(Tap::Added(Err(Trouble::Full)))]).contains("Nothing was brought in."));
    assert!(app.own.names.is_empty());
    let shown = after(&mut app, [tap(Tap::Picked(text)), tap(Tap::AddThese), tap(Tap::Added(Ok(())))]);
    assert!(shown.contains("Added."), "{shown}");
    assert_eq!(app.own.names.values().map(|person| &*person.name).collect::<Vec<_>>(), ["Stair works"]);
    app.workshop.over = Over::Nothing;
}

/// One of the clocks is wrong by days: better put right before anything rests on what comes.
#[test]
fn inv11_a_copy_from_a_clock_that_is_days_fast_is_said_first() {
    for (hours, said) in [(0, None), (20, None), (30, Some("1 day ahead")), (80, Some("3 days ahead"))] {
        let mut other = App::for_tests(Place::Workshop);
        let fast = |n: u8| Now { wall: Wall::new(nth(n).wall.at.plus(Span::minutes(60 * hours)), nth(n).wall.offset), ..nth(n) };
        [tap(Tap::Open(Over::People)), tap(Tap::Typed("Stair works".into())), tap(Tap::AddPerson(Role::Supplier))]
            .into_iter()
            .for_each(|message| drop(other.heard(message, fast(1))));
        let orders = other.heard(tap(Tap::KeepCopy), fast(9));
        let text = orders.into_iter().find_map(|order| if let Order::Share { text, .. } = order { Some(text) } else { None }).unwrap();
        let mut app = App::for_tests(Place::Workshop);
        app.now = nth(9).wall;
        let shown = after(&mut app, [tap(Tap::Picked(text))]);
        assert_eq!(shown.contains("ahead of this phone’s clock"), said.is_some(), "{hours}: {shown}");
        assert!(said.is_none_or(|said| shown.contains(said)), "{shown}");
    }
}

/// Between the look at a copy and the wish to add it, the maker goes on: what was named or forgotten meanwhile holds.
#[test]
fn inv11_a_copy_takes_away_no_name_given_since_it_was_looked_at() {
    let named = |name: &str| [tap(Tap::Open(Over::People)), tap(Tap::Typed(name.into())), tap(Tap::AddPerson(Role::Supplier))];
    let mut other = App::for_tests(Place::Workshop);
    after(&mut other, named("Stair works"));
    let orders = other.heard(tap(Tap::KeepCopy), nth(9));
    let text = orders.into_iter().find_map(|order| if let Order::Share { text, .. } = order { Some(text) } else { None }).unwrap();
    let mut app = App::for_tests(Place::Workshop);
    app.heard(tap(Tap::Picked(text)), nth(20));
    let coming = std::mem::take(&mut app.workshop.over);
    for (n, message) in named("Joinery").into_iter().enumerate() {
        app.heard(message, nth(21 + u8::try_from(n).unwrap()));
    }
    app.workshop.over = coming;
    let orders = app.heard(tap(Tap::AddThese), nth(30));
    let names = orders.iter().find_map(|order| if let Order::BringIn { names, .. } = order { Some(names.clone()) } else { None }).unwrap();
    assert_eq!((names.kept.len(), &*names.forgotten), (1, &[][..]));
    app.heard(tap(Tap::Added(Ok(()))), nth(31));
    let mut known: Vec<&str> = app.own.names.values().map(|person| &*person.name).collect();
    known.sort_unstable();
    assert_eq!(known, ["Joinery", "Stair works"]);
}
