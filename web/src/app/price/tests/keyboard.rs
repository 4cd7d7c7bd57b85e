//! A keyboard on a pad: its figures and signs are the pad's, Enter is Done.

use super::*;
use crate::app::jobs;

const TOLD: &str = "2026-05-04 08:00 +00:00 workshop USD metric\njob lamp \"Ash lamp\" 5 spec\ntag 120 lamp\n";

/// What a key says on the page as it stands.
fn says(maker: &Maker, key: &str) -> Option<Msg> {
    page(&maker.app).keys_at("app").unwrap()(key)
}

/// Each key is heard, one after the other.
fn types(maker: &mut Maker, keys: &[&str]) {
    for key in keys {
        let said = says(maker, key);
        said.into_iter().for_each(|message| maker.say(message));
    }
}

#[test]
fn enter_is_done_and_no_figure_leads_to_another_place() {
    let mut maker = Maker::told(TOLD, "lamp");
    let job = maker.job;
    assert_eq!(says(&maker, "Enter"), None, "nothing is typed on the list");
    maker.tap(Tap::Agree(AgreeTap::Open(job, None))).tap(Tap::Agree(AgreeTap::Pad(super::agree::Field::Price)));
    types(&mut maker, &["1", "2", "3", "4", "5", "Backspace", "Backspace"]);
    maker.shows(&["price/agree/pad", ">123<"]);
    types(&mut maker, &["Enter"]);
    maker.shows(&["data-place=\"price/agree\"", "Agreed</span><span class=\"s\">123"]);
    assert_eq!(says(&maker, "1"), None, "no pad is up, and the form is not left");
    // A form whose pad is in its foot.
    maker.say(Msg::Jobs(jobs::Tap::Open(crate::app::order::Which::Own, job)));
    maker.say(Msg::Go(Place::Jobs));
    maker.say(Msg::Jobs(jobs::Tap::Open(crate::app::order::Which::Own, job)));
    maker.say(Msg::Jobs(jobs::Tap::Write(jobs::draft::What::Tag)));
    types(&mut maker, &["1", "5", "0", "Enter"]);
    assert_eq!(shop(&maker.app).job(job).unwrap().tag, Some(maker.money("150")));
    assert_eq!(maker.app.place, Place::Jobs);
}

/// A figure leads to a place from where nothing is asked: from the list and a job's page, not from an offer, its pay and hours, or a form whose
/// choice lies where its pad was.
#[test]
fn a_figure_leads_nowhere_from_an_offer_or_a_form() {
    let mut maker = Maker::told(TOLD, "lamp");
    let (job, three) = (maker.job, Some(Msg::Key("3".into())));
    let open = |maker: &mut Maker, tap: jobs::Tap| maker.say(Msg::Jobs(tap));
    assert_eq!(says(&maker, "3"), three);
    maker.tap(Tap::Offer(job));
    assert_eq!(says(&maker, "3"), None, "an offer");
    assert_eq!(says(&maker, "u"), Some(Msg::Key("u".into())));
    maker.bargain(BargainTap::PayAndHours);
    assert_eq!(says(&maker, "3"), None, "its pay and hours");
    maker.say(Msg::Go(Place::Jobs));
    open(&mut maker, jobs::Tap::Open(crate::app::order::Which::Own, job));
    assert_eq!(says(&maker, "3"), three, "a page of a job");
    for what in [jobs::draft::What::Spend, jobs::draft::What::Lesson, jobs::draft::What::Facts] {
        open(&mut maker, jobs::Tap::Write(what.clone()));
        assert_eq!(says(&maker, "3"), None, "{what:?}");
        open(&mut maker, jobs::Tap::Close);
    }
}

/// What the pad has no key for is seen, and refused when it is read: 12+5 is never 125.
#[test]
fn a_typed_sign_is_seen_and_refused() {
    for (keys, seen, why) in
        [(&["1", "2", "+", "5"][..], "12+5", "“12+5” is no number"), (&["1", "2", ".", "5", "-", "1"], "12.5-1", "“12.5-1” is no number")]
    {
        let mut maker = Maker::told(TOLD, "lamp");
        let job = maker.job;
        maker.tap(Tap::Offer(job)).bargain(BargainTap::Pad);
        types(&mut maker, keys);
        maker.shows(&[seen]);
        types(&mut maker, &["Enter"]);
        maker.shows(&[seen, why]);
    }
}
