//! The guesses of selling: asked one at a time, refused where they can not be, kept where they are half filled.

use super::*;

#[test]
fn questions_come_one_at_a_time_and_are_written_together() {
    let mut maker = Maker::at_market();
    let facts = maker.app.own.book.len();
    maker.guesses().shows(&["How many ask in a week at 145?"]).hides(&["Of five who ask"]);
    maker.answer("1.5").shows(&["Of five who ask, how many would buy at 145?"]);
    maker.answer("1.25").shows(&["At a fifth less, 116, how many times as many would buy?"]);
    maker.answer("").shows(&["By when should it be sold?", "4 weeks"]);
    maker.wait(WaitTap::Weeks(4)).shows(&["If not sold by then, what do you get for one?"]);
    assert_eq!(maker.app.own.book.len(), facts);
    maker.answer("82.46").shows(&["Reckon with these", "1.5", "1.25", "2 times", "Sat 16 May", "82.46"]);
    maker.wait(WaitTap::Save).shows(&["Asking price", "About 6 more will ask by Sat 16 May.", "28 days left", "Take back: your guesses"]);
    assert_eq!(maker.app.own.book.len(), facts + 1);
    maker.tap(Tap::Close).shows(&["101", "212", "349"]);
    maker.say(Msg::Common(Common::TakeBack));
    maker.shows(&["costs covered"]).hides(&["not under"]);
}

/// The three that nobody has to answer lie behind one key; what was said of them is named, and what was not is said to be missing.
#[test]
fn what_waiting_costs_is_said_behind_one_key() {
    let mut maker = Maker::guessed();
    let facts = maker.app.own.book.len();
    maker.guesses().shows(&["Your time for those who ask, and keeping it, are not counted."]);
    maker.wait(WaitTap::Change).shows(&["What waiting costs you"]).hides(&["Each who asks takes"]);
    maker.wait(WaitTap::Ask(Question::EachAsk)).shows(&["How long does each who asks take you?", "min"]);
    maker.answer("481").shows(&["481"]).shows(&["How long does each who asks take you?"]);
    maker.answer("15").shows(&["What does it cost a day to keep what is left?"]);
    maker.answer("0.50").shows(&["Of five who ask, how many never turn up?"]);
    maker.answer("5").shows(&["100 % is not a share below 100 %"]);
    maker.answer("1").shows(&["Reckon with these", "Each who asks takes", "15 min", "0.50", "Of five, never turn up"]);
    assert_eq!(maker.app.own.book.len(), facts);
    maker
        .wait(WaitTap::Save)
        .shows(&["Counted: 15 min for each who asks at 12 an hour, 0.50 a day to keep it, one in five never turns up."]);
    maker.hides(&["not counted", "What waiting costs you"]);
    assert_eq!(maker.app.own.book.len(), facts + 1);
    maker.say(Msg::Common(Common::TakeBack));
    maker.shows(&["are not counted"]);
}

/// A question left open stays unsaid; one done with nothing typed costs nothing, and is said.
#[test]
fn what_is_left_open_of_it_is_said_to_be_missing() {
    let mut maker = Maker::guessed();
    maker.guesses().wait(WaitTap::Change).wait(WaitTap::Ask(Question::EachAsk)).answer("10").wait(WaitTap::Answers);
    maker.shows(&["10 min", "not yet"]).wait(WaitTap::Save);
    maker.shows(&["Counted: 10 min for each who asks at 12 an hour.", "Keeping it is not counted."]);
    maker.wait(WaitTap::Change).wait(WaitTap::Ask(Question::EachDay)).answer("").answer("").wait(WaitTap::Save);
    maker.shows(&["Counted: 10 min for each who asks at 12 an hour."]).hides(&["not counted", "never turn"]);
}

#[test]
fn absurd_answers_are_refused_beside_the_key_and_nothing_is_lost() {
    let mut maker = Maker::at_market();
    maker.guesses().answer("").shows(&["Nothing is typed yet."]);
    maker.answer("101").shows(&["at most 100 people a week", ">101<"]);
    maker.answer("2").answer("6").shows(&["It must be from 0 to 5."]);
    let mut maker = Maker::at_market();
    maker.guesses().answer("2").answer("0").shows(&["0 % is not a share"]);
    let mut maker = Maker::at_market();
    maker
        .guesses()
        .answer("2")
        .answer("1")
        .answer("1.05")
        .shows(&["At 1.05 or less the price makes nearly no difference, and waiting can’t be reckoned."]);
    maker.wait(WaitTap::Away).shows(&["For sale"]);
}

/// Left after two answers, by Not now, by Back or for another place: the third question comes next, and the answers stand when all are said.
#[test]
fn guesses_left_half_filled_keep_their_answers() {
    for away in [Tap::Waiting(WaitTap::Away), Tap::Close] {
        let mut maker = Maker::at_market();
        let facts = maker.app.own.book.len();
        maker.guesses().answer("1.5").answer("1.25").shows(&["At a fifth less"]).tap(away).hides(&["At a fifth less"]);
        assert_eq!(maker.app.own.book.len(), facts, "nothing is written before all are said");
        maker
            .guesses()
            .shows(&["At a fifth less"])
            .answer("")
            .wait(WaitTap::Weeks(4))
            .answer("82.46")
            .shows(&["1.5", "1.25"])
            .wait(WaitTap::Save);
        maker.shows(&["About 6 more will ask by Sat 16 May."]);
        assert_eq!(maker.app.price.half, None);
    }
}

/// Two answers are given and the page is loaded again: the third is asked, and the first two stand. Answered whole, nothing is kept.
#[test]
fn half_answered_guesses_outlive_a_reload() {
    let kept = |maker: &Maker| {
        maker.orders.iter().rev().find_map(|order| if let Order::KeepGuesses(text) = order { Some(text.clone()) } else { None })
    };
    let mut maker = Maker::at_market();
    maker.guesses().answer("1.5").answer("1.25");
    let text = kept(&maker).unwrap();
    let mut again = Maker::at_market();
    again.app.price.take_up(&text);
    again.guesses().shows(&["how many times as many"]).answer("2").wait(WaitTap::Weeks(4)).answer("82.46");
    again.shows(&["Reckon with these", "1.5", "1.25", "82.46"]).wait(WaitTap::Save);
    assert_eq!(kept(&again), Some(String::new()));
    let mut none = Maker::at_market();
    none.app.price.take_up("no line at all");
    none.guesses().hides(&["how many times as many"]);
}
