//! A record of the format, and its members by name: what is missing or of another shape is refused by that name.

use fivebar_core::ledger::line::json;

/// Why something could not be read, in words.
pub type Trouble = String;

pub struct Record<'a> {
    /// What it is, for the trouble.
    what: String,
    members: Vec<json::Member<'a>>,
}

impl<'a> Record<'a> {
    pub fn read(what: &str, text: &'a str) -> Result<Record<'a>, Trouble> {
        let members = json::members(text).map_err(|why| format!("{what} is no record: {why:?}"))?;
        Ok(Record { what: what.to_owned(), members })
    }

    /// The bytes of a member; `None` where it is missing or null.
    pub fn maybe(&self, name: &str) -> Option<&'a str> {
        json::member(&self.members, name).map(|written| written.trim_matches([' ', '\n', '\r', '\t'])).filter(|written| *written != "null")
    }

    fn bytes(&self, name: &str) -> Result<&'a str, Trouble> {
        self.maybe(name).ok_or_else(|| format!("{} lacks {name}", self.what))
    }

    pub fn whole(&self, name: &str) -> Result<i64, Trouble> {
        self.bytes(name).and_then(|written| self.number(name, written))
    }

    fn number(&self, name: &str, written: &str) -> Result<i64, Trouble> {
        let short: String = written.chars().take(60).collect();
        written.parse().map_err(|_| format!("{name} of {} is no whole number, or too large a one: {short}", self.what))
    }

    /// A number that may be missing or null.
    pub fn wish(&self, name: &str) -> Result<Option<i64>, Trouble> {
        self.maybe(name).map(|written| self.number(name, written)).transpose()
    }

    pub fn truth(&self, name: &str) -> Result<bool, Trouble> {
        match self.bytes(name)? {
            "true" => Ok(true),
            "false" => Ok(false),
            _ => Err(format!("{name} of {} is neither true nor false", self.what)),
        }
    }

    pub fn text(&self, name: &str) -> Result<String, Trouble> {
        let read = json::text(self.bytes(name)?).map_err(|why| format!("{name} of {} is no text: {why:?}", self.what))?;
        Ok(read.into_owned())
    }

    fn items(&self, name: &str) -> Result<Vec<&'a str>, Trouble> {
        json::items(self.bytes(name)?).map_err(|why| format!("{name} of {} is no list: {why:?}", self.what))
    }

    pub fn texts(&self, name: &str) -> Result<Vec<String>, Trouble> {
        let one = |written: &str| json::text(written).map(|text| text.into_owned());
        self.items(name)?.into_iter().map(one).collect::<Result<_, _>>().map_err(|why| format!("{name} of {}: {why:?}", self.what))
    }

    /// Two whole numbers: the least and the most.
    pub fn ends(&self, name: &str) -> Result<[i64; 2], Trouble> {
        match *self.items(name)? {
            [low, high] => Ok([self.number(name, low)?, self.number(name, high)?]),
            _ => Err(format!("{name} of {} is not two numbers", self.what)),
        }
    }

    pub fn record(&self, name: &str) -> Result<Record<'a>, Trouble> {
        Record::read(name, self.bytes(name)?)
    }

    pub fn records(&self, name: &str) -> Result<Vec<Record<'a>>, Trouble> {
        let items = self.items(name)?.into_iter().enumerate();
        items.map(|(nth, text)| Record::read(&format!("{name} {}", nth + 1), text)).collect()
    }

    /// The low end of a pile's length; the band must not stand on its head.
    pub fn low(&self) -> Result<i64, Trouble> {
        let [low, high] = self.ends("length")?;
        if low <= high { Ok(low) } else { Err(format!("length of {}: {low} to {high}", self.what)) }
    }

    /// The places of the piles that a part's `species` and `piles` leave; `None` where it names neither.
    pub fn piles_left(&self, piles: &[(String, String)]) -> Result<Option<Vec<usize>>, Trouble> {
        let list = |name| self.maybe(name).map(|_| self.texts(name)).transpose();
        let (species, named) = (list("species")?, list("piles")?);
        if species.is_none() && named.is_none() {
            return Ok(None);
        }
        let within = |list: &Option<Vec<String>>, own: &String| list.as_ref().is_none_or(|list| list.contains(own));
        let fits = |(id, wood): &(String, String)| within(&named, id) && within(&species, wood);
        Ok(Some(piles.iter().enumerate().filter(|(_, pile)| fits(pile)).map(|(nth, _)| nth).collect()))
    }
}
