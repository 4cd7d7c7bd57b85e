//! Photos of a job: taken, removed, taken back; told as a table.

use fivebar_core::ledger::decide::{BookCommand, Command, MoneyCommand, Much, Now, On, PHOTOS_MOST, decide};
use fivebar_core::ledger::{Book, Clock, Device, fold};
use fivebar_core::quantity::{Currency, Id, Key, Moment, Money, Offset, Wall};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::buyer::buyer;
use fivebar_core::story::tell;

struct Maker {
    book: Book,
    clock: Clock,
    n: u8,
    job: Id,
}

impl Maker {
    fn new() -> Maker {
        let story = tell("2026-03-02 09:00 +01:00 workshop EUR metric\njob bench \"Bench\" 1 spec");
        let clock = Clock::new(Device::new([1; 8]), story.book.last_stamp());
        Maker { job: story.names.job("bench").unwrap(), book: story.book, clock, n: 0 }
    }

    fn now(&mut self) -> Now {
        self.n += 1;
        let wall = Wall::new(Moment::at(1_772_450_000_000 + i64::from(self.n) * 1_000), Offset::minutes(60).unwrap());
        Now { wall, chance: [self.n; 10] }
    }

    fn order(&mut self, command: BookCommand) -> Result<Id, Refusal> {
        let now = self.now();
        let entries = decide(&self.book, &Command::Book(command), now)?.stamped(&self.book, &mut self.clock);
        entries.iter().for_each(|entry| drop(self.book.add(entry)));
        Ok(entries[0].id)
    }

    fn take(&mut self, n: u8) -> Result<Id, Refusal> {
        let job = self.job;
        self.order(BookCommand::TakePhoto { photo: photo(n), job })
    }

    fn spend(&mut self) -> Id {
        let (on, much) = (On::Job(self.job), Much::Whole(Money::zero(Currency::EUR)));
        let spend = MoneyCommand::Spend { on, much, kind: Key::read("glue").unwrap(), what: None, when: None };
        let now = self.now();
        let entries = decide(&self.book, &Command::Money(spend), now).unwrap().stamped(&self.book, &mut self.clock);
        entries.iter().for_each(|entry| drop(self.book.add(entry)));
        entries[0].id
    }

    /// The photos of the job, and the one a buyer sees.
    #[track_caller]
    fn has(&self, photos: &[u8]) {
        let workshop = fold::workshop(&self.book);
        let all: Vec<Id> = workshop.photos.of_job(self.job).collect();
        assert_eq!(all, photos.iter().map(|n| photo(*n)).collect::<Vec<_>>());
        let shop = Shop::of(&self.book, Moment::at(1_772_460_000_000));
        assert_eq!(buyer(&shop, self.job, (None, fivebar_core::ledger::kind::sale::Paid::Card)).unwrap().photo, all.last().copied());
    }
}

fn photo(n: u8) -> Id {
    Id::new(Moment::at(1_772_440_000_000 + i64::from(n)), [n; 10])
}

#[test]
fn a_photo_is_taken_removed_and_comes_back() {
    let mut maker = Maker::new();
    maker.has(&[]);
    let first = maker.take(1).unwrap();
    maker.take(2).unwrap();
    maker.has(&[1, 2]);
    let removed = maker.order(BookCommand::RemovePhoto { photo: photo(2) }).unwrap();
    maker.has(&[1]);
    assert_eq!(maker.order(BookCommand::RemovePhoto { photo: photo(2) }), Err(Refusal::NotThere), "it is gone already");
    maker.order(BookCommand::TakeBack { act: removed }).unwrap();
    maker.has(&[1, 2]);
    maker.order(BookCommand::TakeBack { act: first }).unwrap();
    maker.has(&[2]);
    maker.order(BookCommand::Restore { act: first }).unwrap();
    maker.has(&[1, 2]);
}

#[test]
fn a_job_has_a_few_photos_at_most() {
    let mut maker = Maker::new();
    for n in 0..PHOTOS_MOST as u8 {
        maker.take(n).unwrap();
    }
    assert_eq!(maker.take(99), Err(Refusal::TooManyPhotos { most: PHOTOS_MOST }));
    maker.order(BookCommand::RemovePhoto { photo: photo(0) }).unwrap();
    assert!(maker.take(99).is_ok());
    let nobody = photo(200);
    assert_eq!(maker.order(BookCommand::TakePhoto { photo: photo(100), job: nobody }), Err(Refusal::NotThere));
}

/// The receipt of a spending that was struck is wanted no more, so that its picture goes with the next copy; undone, it is there again.
#[test]
fn a_receipt_goes_with_its_spending() {
    let mut maker = Maker::new();
    let (one, other) = (maker.spend(), maker.spend());
    let wanted = |maker: &Maker| fold::workshop(&maker.book).photos.wanted().map(|it| it.id).collect::<Vec<_>>();
    for (n, spending) in [(1, one), (2, one), (3, other)] {
        maker.order(BookCommand::TakeReceipt { photo: photo(n), spending }).unwrap();
    }
    maker.order(BookCommand::TakeBack { act: one }).unwrap();
    assert_eq!(wanted(&maker), [photo(3)]);
    let lines: Vec<String> = maker.book.lines().map(str::to_owned).collect();
    let turned = Book::of_lines(lines.iter().rev().map(String::as_str));
    assert_eq!(fold::workshop(&turned).photos, fold::workshop(&maker.book).photos, "whatever comes first");
    maker.order(BookCommand::Restore { act: one }).unwrap();
    assert_eq!(wanted(&maker), [photo(1), photo(2), photo(3)]);
    // One that was removed by itself stays so.
    maker.order(BookCommand::RemovePhoto { photo: photo(1) }).unwrap();
    maker.order(BookCommand::TakeBack { act: one }).unwrap();
    maker.order(BookCommand::Restore { act: one }).unwrap();
    assert_eq!(wanted(&maker), [photo(2), photo(3)]);
    // What it is of may come later than the receipt: until then it is kept.
    let later = Book::of_lines(lines.iter().map(String::as_str).filter(|line| !line.contains("MoneySpent") && !line.contains("Struck")));
    assert_eq!(fold::workshop(&later).photos.wanted().count(), 3);
}
