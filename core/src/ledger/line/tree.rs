//! A line as a tree of its members, and how kinds are read from it and written to it.

use super::canonical;
use crate::quantity::order_by;
use crate::quantity::{Id, Listed, Scalar, Spelled};
use std::fmt::Write;

/// A line, or a part of it.
#[derive(Clone, Debug, PartialEq)]
pub enum Tree<'a> {
    Scalar(Scalar<'a>),
    /// A whole number beyond 63 bits: spelled well, held by no member of ours.
    Beyond(u64),
    List(Vec<Tree<'a>>),
    /// In the order of their names, none of which needs an escape.
    Members(Vec<(&'a str, Tree<'a>)>),
}

/// What stands in a line: a quantity, a list, or members of their own.
pub trait Member: Sized {
    fn read(tree: &Tree<'_>) -> Option<Self>;
    fn write(&self) -> Tree<'_>;
}

impl<T: Spelled> Member for T {
    fn read(tree: &Tree<'_>) -> Option<Self> {
        if let Tree::Scalar(scalar) = tree { T::unspell(scalar) } else { None }
    }
    fn write(&self) -> Tree<'_> {
        Tree::Scalar(self.spell())
    }
}

/// A list in a line. Only kinds of members that come in lists are read so.
macro_rules! lists {
    ($($item:ty),+) => {
        $(impl Member for Vec<$item> {
            fn read(tree: &Tree<'_>) -> Option<Self> {
                if let Tree::List(items) = tree { items.iter().map(Member::read).collect() } else { None }
            }
            fn write(&self) -> Tree<'_> {
                Tree::List(self.iter().map(Member::write).listed())
            }
        })+
    };
}
lists!(
    Id,
    crate::ledger::kind::job::HaulUsed,
    crate::ledger::kind::sale::PaymentPart,
    crate::ledger::kind::plan::PlanPile,
    crate::ledger::kind::stock::SoughtPiece,
    crate::ledger::kind::plan::DesignPart,
    crate::ledger::kind::plan::DesignOperation
);

impl<'a> Tree<'a> {
    /// The tree of a text in the one spelling; `None` for any other text.
    pub fn read(text: &'a str) -> Option<Tree<'a>> {
        canonical::tree(text)
    }

    /// Members that are there, put in the order of their names.
    pub fn members(members: Vec<(&'a str, Option<Tree<'a>>)>) -> Tree<'a> {
        let mut there: Vec<(&str, Tree<'_>)> = members.into_iter().filter_map(|(name, tree)| Some((name, tree?))).listed();
        order_by(&mut there, |one, other| one.0.cmp(other.0));
        Tree::Members(there)
    }

    /// A member by its name.
    pub fn member(&self, name: &str) -> Option<&Tree<'a>> {
        let Tree::Members(members) = self else { return None };
        members.iter().find(|(own, _)| *own == name).map(|(_, tree)| tree)
    }

    /// A member that must be there and hold.
    pub fn must<T: Member>(&self, name: &str) -> Option<T> {
        T::read(self.member(name)?)
    }

    /// A member that may be missing, but must hold where it is there: the outer `None` says that it does not.
    pub fn may<T: Member>(&self, name: &str) -> Option<Option<T>> {
        self.member(name).map_or(Some(None), |tree| T::read(tree).map(Some))
    }

    /// The one spelling.
    pub fn spelled(&self) -> String {
        let mut text = String::new();
        self.spell(&mut text);
        text
    }

    fn spell(&self, text: &mut String) {
        match self {
            Tree::Scalar(Scalar::Text(own)) => quoted(own, text),
            Tree::Scalar(Scalar::Whole(whole)) => drop(write!(text, "{whole}")),
            Tree::Scalar(Scalar::Yes(yes)) => drop(write!(text, "{yes}")),
            Tree::Beyond(whole) => drop(write!(text, "{whole}")),
            Tree::List(items) => list(items.iter(), ('[', ']'), text, Tree::spell),
            Tree::Members(members) => list(members.iter(), ('{', '}'), text, |(name, tree), text| {
                quoted(name, text);
                text.push(':');
                tree.spell(text);
            }),
        }
    }
}

fn list<T>(items: impl Iterator<Item = T>, (open, close): (char, char), text: &mut String, spell: impl Fn(T, &mut String)) {
    text.push(open);
    for (place, item) in items.enumerate() {
        if 0 < place {
            text.push(',');
        }
        spell(item, text);
    }
    text.push(close);
}

/// A text between quotes, escaped only where JSON must have it.
pub fn quoted(own: &str, text: &mut String) {
    text.push('"');
    for letter in own.chars() {
        match letter {
            '"' => text.push_str("\\\""),
            '\\' => text.push_str("\\\\"),
            '\n' => text.push_str("\\n"),
            '\r' => text.push_str("\\r"),
            '\t' => text.push_str("\\t"),
            '\u{8}' => text.push_str("\\b"),
            '\u{c}' => text.push_str("\\f"),
            control if control < ' ' => drop(write!(text, "\\u{:04x}", u32::from(control))),
            plain => text.push(plain),
        }
    }
    text.push('"');
}
