//! Each misread figure, trouble of the phone and file that is no copy, word for word.

use super::*;

#[test]
fn every_misread_figure_says_why() {
    use Quantity::{Count, Length as Long, Money as Sum, Number};
    let rows = [
        (Misread::Empty, "Nothing is typed yet."),
        (Misread::TooLong { most: 40 }, "Not taken: at most 40 signs."),
        (Misread::NotANumber { met: "ten".into() }, "Not taken: “ten” is no number."),
        (Misread::NotAClock { met: "31215".into() }, "Not taken: “31215” is no time of day. Type 1405, 14.05 or 14:05."),
        (Misread::UnknownUnit { met: "rods".into() }, "Not taken: “rods” is no unit for this."),
        (Misread::Negative { met: "-3".into() }, "Not taken: -3 is below nothing."),
        (Misread::Ambiguous { grouped: Number(d("1250")), decimal: Number(d("1.25")) }, "Not taken: it may mean 1250 or 1.25."),
        (Misread::TooFine { nearest: Sum(usd(1_141)) }, "Not taken: finer than is kept. The nearest is $11.41."),
        (Misread::Denominator { met: 7, nearest: Some(Long(inches(3))) }, "Not taken: no rule has 7ths. The nearest is 3 in."),
        (Misread::Denominator { met: 0, nearest: None }, "Not taken: no rule has 0ths."),
        (
            Misread::OutOfRange {
                met: Some(Long(inches(1_125))),
                least: Long(inches(1)),
                most: Long(inches(787)),
                might_be: Some(Long(inches(1))),
            },
            "Not taken. It reads as 1125 in. It must be from 1 in to 65 ft. It may mean 1 in.",
        ),
        (Misread::OutOfRange { met: None, least: Count(1), most: Count(9_999), might_be: None }, "Not taken. It must be from 1 to 9999."),
        (Misread::NotWhole { met: d("2.5"), might_be: None }, "Not taken: only whole ones."),
        (Misread::NotWhole { met: d("1.25"), might_be: Some(Count(1_250)) }, "Not taken: only whole ones. It may mean 1250."),
    ];
    for (why, said) in &rows {
        assert_eq!(misread(why, &Plain::default(), Units::Inch), *said);
    }
    whole(MISREADS, &rows.iter().map(|(why, _)| misread_code(why)).collect::<Vec<_>>());
}

#[test]
fn every_trouble_of_the_phone_says_why_and_what_to_do() {
    let rows = [
        (Trouble::Full, "The phone is full.", "Free some space, or keep a copy now."),
        (Trouble::Known, "The book holds an entry of the same name already.", "Keep a copy now, then open the app again."),
        (Trouble::Newer, "A newer version of the app wrote this book.", "Close all its windows and open it again with a network."),
        (Trouble::NoStore, "This window has no store: a private window, or storage is switched off.", "Open it in a usual window."),
        (Trouble::Blocked, "Another window of the app holds the book.", "Close the other windows, then try again."),
        (Trouble::Lost, "The phone closed the book.", "Try again. If it stays so, open the app again."),
        (Trouble::Aborted, "The phone gave up writing.", "Try again, or keep a copy now."),
        (Trouble::Stopped, "The app stopped after an error of its own.", "Open it again: nothing saved is lost."),
    ];
    for (trouble, why, to_do) in rows {
        let ways = [
            (not_saved(trouble, 3), "Not saved: 3 entries.", "All that was shown as saved is safe."),
            (not_saved(trouble, 0), "Not saved: a name, phone or place.", "All that was shown as saved is safe."),
            (not_saved(trouble, 1), "Not saved: 1 entry.", "All that was shown as saved is safe."),
            (not_opened(trouble), "The book could not be opened.", "Nothing was written or removed."),
            (not_added(trouble), "Nothing was brought in.", "What is here is unchanged."),
            (
                copies::not_wiped(trouble),
                "Not deleted, or not all of it.",
                if trouble == Trouble::Blocked {
                    "It goes as soon as that window lets go of it."
                } else {
                    "What is still here opens as before."
                },
            ),
            (no_example(trouble), "The example could not be opened.", "Your own book is as it was."),
        ];
        for (said, what, safe) in ways {
            assert_eq!((&*said.what, &*said.why, &*said.safe, &*said.to_do), (what, why, safe, to_do));
        }
    }
    whole(TROUBLES, &rows.iter().map(|(trouble, ..)| trouble_code(trouble)).collect::<Vec<_>>());
}

#[test]
fn every_file_that_is_no_copy_says_why_and_what_to_do() {
    const FIVEBAR: &str = "Choose the file whose name begins with fivebar.";
    const SMALLER: &str = "Keep a copy without photos on the other phone.";
    let rows = [
        (DocumentTrouble::NotJson, "It is no copy of Fivebar.", FIVEBAR),
        (DocumentTrouble::NotACopy, "It is a file of another kind.", FIVEBAR),
        (DocumentTrouble::CutShort, "It ends before its end: not all of it arrived.", "Send it again, or choose another copy."),
        (
            DocumentTrouble::Newer { version: 2, ours: 1 },
            "A newer version kept it: it is of form 2, and this app reads up to 1.",
            "Open the app with a network to get the new version, then choose it again.",
        ),
        (DocumentTrouble::TooLarge { bytes: 300, most: 200 }, "It holds 300 bytes; at most 200 are read.", SMALLER),
        (
            DocumentTrouble::TooMany { entries: 12, most: 10 },
            "Together that would be 12 entries; a book holds at most 10.",
            "Bring it in on another phone, to a book of its own.",
        ),
        (DocumentTrouble::Altered, "Something in it was changed on the way.", "Send it again, or choose another copy."),
    ];
    let check = |said: Said, why: &str, to_do: &str| {
        let (what, safe) = ("Nothing was brought in.", "What is here is unchanged.");
        assert_eq!((&*said.what, &*said.why, &*said.safe, &*said.to_do), (what, why, safe, to_do));
    };
    for (trouble, why, to_do) in &rows {
        check(copies::no_copy(trouble, |n| n.to_string()), why, to_do);
    }
    whole(DOCUMENTS, &rows.iter().map(|(trouble, ..)| document_code(trouble)).collect::<Vec<_>>());
    let files = [
        (NotRead::TooLarge { bytes: 300, most: 200 }, "It holds 300 bytes; at most 200 are read.", SMALLER),
        (NotRead::NotText, "It is no text, and a copy is text.", FIVEBAR),
        (NotRead::Unread, "The phone could not read the file.", "Move it onto this phone first, then choose it again."),
    ];
    for (trouble, why, to_do) in &files {
        check(copies::not_read(*trouble, |n| n.to_string()), why, to_do);
    }
    whole(FILES, &files.iter().map(|(trouble, ..)| file_code(trouble)).collect::<Vec<_>>());
}
