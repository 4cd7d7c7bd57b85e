//! What is set apart on the rack, as a job's wood page sees it.

use super::*;

const RACK: &str = "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile strips ash-white 1 x 2 x 20 in\ncount 9 strips\n\
    job bench \"Bench\" 1 spec\njob more \"More\" 1 spec\nreserve 4 strips for bench\n";

#[test]
fn what_is_set_apart_for_another_job_is_said_and_not_offered() {
    let mut maker = Maker::told(&[RACK]);
    maker.room("more", Room::Wood).shows(&["Strips", "9 on the rack, 4 set apart for Bench", ">5<"]);
    let pile = rack(&maker.app.own.shop(maker.now.wall.at), maker.jobs["more"]).unwrap().remove(0);
    let write = Tap::Write(What::Take { haul: pile.haul, pile: pile.pile });
    maker.tap(write.clone()).shows(&["0 here, 9 on the rack, 4 set apart for Bench", "all"]).figures(&["6"]).tap(Tap::Save);
    maker.shows(&["you asked for 6 pieces. 9 lie there, 4 of them set apart."]).hides(&["No wood is taken yet."]);
    maker.figures(&["5"]).tap(Tap::Save).shows(&["4 on the rack", "4 set apart for Bench"]);
    // Its own is shown, and taken first.
    maker.room("bench", Room::Wood).shows(&["Strips", "4 set apart for this job", ">4<"]).tap(write).figures(&["3"]).tap(Tap::Save);
    maker.shows(&["1 on the rack, 1 set apart for this job"]);
}
