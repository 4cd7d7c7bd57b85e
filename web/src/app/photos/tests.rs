//! Photos, told as tables: what the phone is asked, what stands in the book, and what the page shows then.

use super::*;
use crate::app::Common;
use crate::app::jobs::Tap as JobTap;
use crate::app::news::{Handed, News};
use crate::app::price::Tap as PriceTap;
use crate::app::shelf::Shelf;
use crate::app::workshop::Tap as WorkTap;
use crate::screens::page;
use fivebar_core::ledger::line::document::{self, Photo};
use fivebar_core::ledger::{Device, line};
use fivebar_core::quantity::Moment;
use fivebar_core::story::tell;

struct Maker {
    app: App,
    job: Id,
    now: Now,
    orders: Vec<Order>,
}

impl Maker {
    /// A maker on the page of a job's photos.
    fn new() -> Maker {
        let story = tell("2026-03-02 09:00 +01:00 workshop EUR metric\njob bench \"Shoe bench\" 1 spec\ntag 145 bench");
        assert_eq!(story.refused, []);
        let mut app = App::for_tests(Place::Jobs);
        let lines: Vec<String> = story.book.entries().map(|(entry, _)| line::write(entry)).collect();
        app.own = Shelf::open(Device::new([1; 8]), lines.iter().map(String::as_str));
        let job = story.names.job("bench").unwrap();
        let mut maker = Maker { app, job, now: Now { wall: story.now, chance: [9; 10] }, orders: vec![] };
        maker.say(Msg::Jobs(JobTap::Open(Which::Own, job))).say(Msg::Jobs(JobTap::Room(Room::Photos)));
        maker
    }

    fn say(&mut self, message: Msg) -> &mut Maker {
        self.now.chance[5] = self.now.chance[5].wrapping_add(1);
        self.orders = self.app.heard(message, self.now);
        self
    }

    fn photo(&mut self, tap: PhotoTap) -> &mut Maker {
        self.say(Msg::Photo(tap))
    }

    /// Takes the nth photo, whose picture the phone has then.
    fn takes(&mut self, n: u8) -> &mut Maker {
        self.photo(PhotoTap::Take { camera: true });
        assert!(self.orders.contains(&Order::TakePhoto { camera: true }), "{:?}", self.orders);
        self.photo(PhotoTap::Kept { photo: id(n), bytes: 240_000 })
    }

    /// The phone tells what it shows of what was wanted.
    fn shown(&mut self, here: &[u8]) -> &mut Maker {
        let shown =
            self.app.photos.wanted.iter().map(|photo| (*photo, here.iter().find(|n| id(**n) == *photo).map(|n| format!("blob:{n}"))));
        let shown = shown.collect();
        self.app.told(News::PhotosShown(shown));
        self
    }

    #[track_caller]
    fn shows(&mut self, parts: &[&str]) -> &mut Maker {
        let html = page(&self.app).html();
        for part in parts {
            assert!(html.contains(part), "{part} in {html}");
        }
        self
    }

    #[track_caller]
    fn hides(&mut self, parts: &[&str]) -> &mut Maker {
        let html = page(&self.app).html();
        for part in parts {
            assert!(!html.contains(part), "{part} in {html}");
        }
        self
    }

    /// The copy that is handed on now, once the phone has read these pictures.
    fn copy(&mut self, here: &[u8]) -> String {
        self.say(Msg::Workshop(WorkTap::KeepCopyNow));
        if self.orders.iter().any(|order| matches!(order, Order::ReadPhotos(_))) {
            let found = here.iter().map(|n| (id(*n), picture(*n))).collect();
            self.photo(PhotoTap::Read(Ok(found)));
        }
        let share = |order: &Order| if let Order::Share { text, .. } = order { Some(text.clone()) } else { None };
        self.orders.iter().find_map(share).unwrap()
    }
}

fn id(n: u8) -> Id {
    Id::new(Moment::at(1_772_440_000_000 + i64::from(n)), [n; 10])
}

fn picture(n: u8) -> Photo {
    Photo::of("image/jpeg".into(), format!("{n:064x}"), &[n; 10])
}

#[test]
fn a_photo_is_taken_shown_and_removed_with_undo() {
    let mut maker = Maker::new();
    maker.shows(&["No photo yet", "Take a photo", "Choose one"]);
    maker.takes(1).shown(&[1]).shows(&["src=\"blob:1\"", "Photo 1 of Shoe bench", "Take back", "a photo"]);
    maker.takes(2).shown(&[1, 2]).shows(&["blob:1", "blob:2", "2 photos"]);
    maker.say(Msg::Jobs(JobTap::Page)).shows(&["blob:1", "blob:2", "Photos"]);
    maker
        .say(Msg::Jobs(JobTap::Room(Room::Photos)))
        .photo(PhotoTap::Remove(id(2)))
        .hides(&["blob:2"])
        .shows(&["blob:1", "a photo removed"]);
    maker.say(Msg::Common(Common::TakeBack)).shown(&[1, 2]).shows(&["blob:1", "blob:2"]);
    maker.say(Msg::Jobs(JobTap::List));
    assert!(maker.orders.contains(&Order::ShowPhotos(vec![])), "what no longer shows is given back: {:?}", maker.orders);
}

/// A copy lets go of the bytes nothing shows any more: a photo that was removed before it does not come back without them.
#[test]
fn a_photo_that_went_with_a_copy_is_not_offered_back() {
    let mut maker = Maker::new();
    maker.takes(1).photo(PhotoTap::Remove(id(1))).hides(&["blob:1"]);
    maker.say(Msg::Workshop(WorkTap::CopyText)).say(Msg::Workshop(WorkTap::CopiedText(true)));
    assert!(maker.orders.contains(&Order::SweepPhotos(vec![])), "{:?}", maker.orders);
    maker.takes(2).say(Msg::Common(Common::TakeBack)).shows(&["Do it again"]).hides(&[">Take back"]);
    maker.say(Msg::Common(Common::TakeBack));
    assert_eq!(super::wanted(&maker.app), []);
}

#[test]
fn what_is_no_picture_and_a_full_phone_are_said_and_nothing_is_lost() {
    let mut maker = Maker::new();
    maker.takes(1).shown(&[1]);
    let before = maker.app.own.book.clone();
    for (why, said) in [(NoPhoto::Unread, "can’t read it as a picture"), (NoPhoto::NotKept(Trouble::Full), "The phone is full.")] {
        maker.photo(PhotoTap::Take { camera: false }).photo(PhotoTap::NotKept(why)).shows(&["No photo was added.", said, "blob:1"]);
        assert_eq!(maker.app.own.book, before);
    }
    maker.photo(PhotoTap::Take { camera: false }).photo(PhotoTap::PutAway).hides(&["No photo was added."]);
    for n in 2..=6 {
        maker.takes(n);
    }
    maker.hides(&["Take a photo"]).photo(PhotoTap::Take { camera: true }).shows(&["No photo added: a job has at most 6."]);
}

#[test]
fn inv15_a_buyer_sees_the_latest_photo_and_it_is_given_back_with_the_face() {
    let mut maker = Maker::new();
    maker.takes(1).takes(2);
    let job = maker.job;
    maker.say(Msg::Go(Place::Price)).say(Msg::Price(PriceTap::Show(job)));
    assert!(maker.orders.contains(&Order::ShowPhotos(vec![id(2)])), "{:?}", maker.orders);
    maker.hides(&["<img"]).shown(&[2]).shows(&["<img", "blob:2", "alt=\"Shoe bench\""]).hides(&["kB", "Photo 2"]);
    maker.say(Msg::Price(PriceTap::Hide));
    assert!(maker.orders.contains(&Order::ShowPhotos(vec![])), "{:?}", maker.orders);
    // a picture that is not on this phone leaves no gap
    maker.say(Msg::Price(PriceTap::Show(job))).shown(&[]).hides(&["<img", "Not on this phone"]);
}

#[test]
fn a_copy_has_the_photos_by_choice_and_their_size_is_said() {
    let mut maker = Maker::new();
    maker.takes(1).takes(2);
    maker.app.told(News::PhotosHere(vec![(id(1), 240_000), (id(2), 1_000_001), (id(9), 5)]));
    maker.say(Msg::Go(Place::Workshop)).say(Msg::Workshop(WorkTap::Open(Over::Copies))).shows(&["2 photos, 1.3\u{a0}MB", "With photos"]);
    let photos = |text: &str| document::read(text).unwrap().photos.map(|photos| photos.len());
    assert_eq!(photos(&maker.copy(&[1, 2])), Some(2));
    assert_eq!(photos(&{ maker.photo(PhotoTap::InCopy(false)).copy(&[1, 2]) }), None);
    maker.photo(PhotoTap::InCopy(true)).say(Msg::Workshop(WorkTap::KeepCopy)).photo(PhotoTap::Read(Err(Trouble::Lost)));
    maker.shows(&["No copy was kept: its photos could not be read"]);
    maker.app.told(News::PhotosHere(vec![(id(1), 240_000)]));
    maker.shows(&["1 photo, 240\u{a0}kB", "1 photo is not on this phone"]);
}

/// A picture that was removed stays until a copy was kept; one that a newer version may want stays for good.
#[test]
fn pictures_nobody_wants_go_with_the_next_copy() {
    let mut maker = Maker::new();
    maker.takes(1).takes(2).photo(PhotoTap::Remove(id(1)));
    maker.copy(&[2]);
    maker.say(Msg::Workshop(WorkTap::Handed(Handed::PutAway)));
    assert!(!maker.orders.iter().any(|order| matches!(order, Order::SweepPhotos(_))), "no copy was kept");
    maker.copy(&[2]);
    maker.say(Msg::Workshop(WorkTap::Handed(Handed::Shared("fivebar".into()))));
    assert!(maker.orders.contains(&Order::SweepPhotos(vec![id(2)])), "{:?}", maker.orders);
    maker.app.own.book.add_line(r#"{"d":{"from":2},"id":"x","k":"Dreamt","v":2}"#);
    maker.copy(&[2]);
    maker.say(Msg::Workshop(WorkTap::Handed(Handed::Shared("fivebar".into()))));
    assert!(!maker.orders.iter().any(|order| matches!(order, Order::SweepPhotos(_))), "a newer version wrote here");
}

/// What a copy holds of photos is kept here too, whatever of it a screen shows; one that is here is not asked for again.
#[test]
fn inv11_the_photos_of_a_copy_are_brought_in_with_it() {
    let mut other = Maker::new();
    other.takes(1).takes(2).takes(3);
    let text = other.copy(&[1, 2]);
    let mut app = App::for_tests(Place::Workshop);
    app.told(News::PhotosHere(vec![]));
    let say = |app: &mut App, tap: WorkTap| app.heard(Msg::Workshop(tap), other.now);
    say(&mut app, WorkTap::Picked(text.clone()));
    let shown = page(&app).html();
    assert!(shown.contains("It brings 2 photos.") && shown.contains("1 photo is missing: neither in this copy"), "{shown}");
    let orders = say(&mut app, WorkTap::AddThese);
    let photos = |orders: &[Order]| {
        orders
            .iter()
            .find_map(|order| if let Order::BringIn { photos, lines, .. } = order { Some((photos.len(), lines.len())) } else { None })
    };
    assert_eq!(photos(&orders).map(|(photos, _)| photos), Some(2));
    // the same copy again, once its lines are here and one of its pictures
    app.own.book.merge(other.app.own.book.lines());
    app.told(News::PhotosHere(vec![(id(1), 10)]));
    say(&mut app, WorkTap::Picked(text));
    assert!(page(&app).html().contains("Add these"), "a photo is missing here");
    assert_eq!(photos(&say(&mut app, WorkTap::AddThese)), Some((1, 0)));
}
