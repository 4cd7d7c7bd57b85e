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
    assert_eq!(says(&maker, "1"), Some(Msg::Key("1".into())), "no pad is up");
    // A form whose pad is in its foot.
    maker.say(Msg::Jobs(jobs::Tap::Open(crate::app::order::Which::Own, job)));
    maker.say(Msg::Go(Place::Jobs));
    maker.say(Msg::Jobs(jobs::Tap::Open(crate::app::order::Which::Own, job)));
    maker.say(Msg::Jobs(jobs::Tap::Write(jobs::draft::What::Tag)));
    types(&mut maker, &["1", "5", "0", "Enter"]);
    assert_eq!(shop(&maker.app).job(job).unwrap().tag, Some(maker.money("150")));
    assert_eq!(maker.app.place, Place::Jobs);
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
