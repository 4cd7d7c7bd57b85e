//! A posting: all that one write puts into the book, together or not at all; and the sorting of its lines.
use std::collections::HashMap;

/// An entry as it is kept: its id and its line of text, byte for byte.
pub type Line = (String, String);

/// Bytes that can't be part of the book, kept with the reason.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Aside {
    pub id: String,
    pub line: String,
    pub why: String,
}

/// What one write puts into the book: all of it or nothing.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Posting {
    /// Entries, in the order they are to be kept.
    pub entries: Vec<Line>,
    /// What the phone remembers beside the book: key and value.
    pub meta: Vec<(String, String)>,
    /// Names by id, each a line of text.
    pub people: Vec<(String, String)>,
    /// Ids of people whose names are taken out.
    pub forgotten: Vec<String>,
    /// Damaged bytes to be kept aside.
    pub aside: Vec<Aside>,
}

/// What became of the entries of a posting.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Posted {
    /// The place of the last entry in the book after the write; 0 in an empty book.
    pub last: u64,
    /// How many entries were new.
    pub added: usize,
    /// How many were in the book already, byte for byte.
    pub already: usize,
    /// How many were set aside: their id is in the book with other bytes.
    pub differing: usize,
}

/// Lines told apart by what the book holds already.
#[derive(Debug, Default, PartialEq)]
pub(super) struct Sorted {
    pub new: Vec<Line>,
    pub already: usize,
    pub differing: Vec<Line>,
}

/// Tells new lines from those `known` byte for byte and those whose id is known with other bytes.
pub(super) fn sort(lines: &[Line], mut known: HashMap<String, String>) -> Sorted {
    let mut sorted = Sorted::default();
    for (id, line) in lines {
        match known.get(id) {
            Some(same) if same == line => sorted.already += 1,
            Some(_) => sorted.differing.push((id.clone(), line.clone())),
            None => {
                known.insert(id.clone(), line.clone());
                sorted.new.push((id.clone(), line.clone()));
            }
        }
    }
    sorted
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lines(of: &[(&str, &str)]) -> Vec<Line> {
        of.iter().map(|(id, line)| (id.to_string(), line.to_string())).collect()
    }

    #[test]
    fn known_lines_are_told_from_new_and_differing_ones() {
        let known = HashMap::from([("a".into(), "1".into()), ("b".into(), "2".into())]);
        let sorted = sort(&lines(&[("a", "1"), ("b", "3"), ("c", "4")]), known);
        assert_eq!(sorted, Sorted { new: lines(&[("c", "4")]), already: 1, differing: lines(&[("b", "3")]) });
    }

    #[test]
    fn an_id_twice_in_one_posting_counts_once_or_differs() {
        let sorted = sort(&lines(&[("a", "1"), ("a", "1"), ("a", "2")]), HashMap::new());
        assert_eq!((sorted.new.len(), sorted.already, sorted.differing.len()), (1, 1, 1));
    }
}
