//! The members of a copy, read and written. A member that is missing, unknown or of another shape makes the text no copy.

use super::super::json::{self, Broken, Member};
use super::{DocumentTrouble, People, Person, Photo, Photos, VERSION, json as quoted};
use crate::quantity::{Id, Sorted};
use std::borrow::Cow;

/// What a copy is made of.
pub(super) struct Members<'a> {
    pub made: Cow<'a, str>,
    pub entries: Vec<&'a str>,
    pub aside: Vec<Cow<'a, str>>,
    pub people: People,
    pub photos: Option<Photos>,
    pub check: Option<Cow<'a, str>>,
}

type Read<T> = Result<T, Broken>;

impl From<Broken> for DocumentTrouble {
    fn from(broken: Broken) -> Self {
        match broken {
            Broken::CutShort => DocumentTrouble::CutShort,
            Broken::NotJson => DocumentTrouble::NotJson,
            Broken::Other => DocumentTrouble::NotACopy,
        }
    }
}

/// Reads the members; the version first, because a newer one may have others.
pub(super) fn read(text: &str) -> Result<Members<'_>, DocumentTrouble> {
    if text.trim().is_empty() {
        return Err(DocumentTrouble::NotJson);
    }
    let members = json::members(text)?;
    let version = json::whole(&members, "fivebar").ok_or(DocumentTrouble::NotACopy)?;
    if VERSION < version {
        return Err(DocumentTrouble::Newer { version, ours: VERSION });
    }
    if version < VERSION {
        return Err(DocumentTrouble::Altered);
    }
    only(&members, &["fivebar", "made", "entries", "aside", "people", "photos", "check"])?;
    Ok(Members {
        made: must(&members, "made")?,
        entries: json::member(&members, "entries").map_or(Err(Broken::Other), json::items)?,
        aside: json::member(&members, "aside").map_or(Ok(vec![]), texts)?,
        people: json::member(&members, "people").map_or(Ok(People::new()), |people| each(people, read_person))?,
        photos: json::member(&members, "photos").filter(|written| *written != "null").map(|photos| each(photos, read_photo)).transpose()?,
        check: may(&members, "check")?,
    })
}

fn only(members: &[Member<'_>], names: &[&str]) -> Read<()> {
    if members.iter().all(|(name, _)| names.contains(&&**name)) { Ok(()) } else { Err(Broken::Other) }
}

fn must<'a>(members: &[Member<'a>], name: &str) -> Read<Cow<'a, str>> {
    json::member(members, name).map_or(Err(Broken::Other), json::text)
}

fn may<'a>(members: &[Member<'a>], name: &str) -> Read<Option<Cow<'a, str>>> {
    json::member(members, name).filter(|written| *written != "null").map(json::text).transpose()
}

fn texts(written: &str) -> Read<Vec<Cow<'_, str>>> {
    let mut texts = vec![];
    for item in json::items(written)? {
        texts.push(json::text(item)?);
    }
    Ok(texts)
}

/// Members by id.
fn each<T>(written: &str, read: fn(&[Member<'_>]) -> Read<T>) -> Read<Sorted<Id, T>> {
    let mut found = Sorted::new();
    for (id, written) in json::members(written)? {
        found.insert(Id::read(&id).ok_or(Broken::Other)?, read(&json::members(written)?)?);
    }
    Ok(found)
}

fn read_person(members: &[Member<'_>]) -> Read<Person> {
    only(members, &["name", "phone", "place"])?;
    let [phone, place] = [may(members, "phone")?, may(members, "place")?];
    Ok(Person { name: must(members, "name")?.into(), phone: phone.map(Into::into), place: place.map(Into::into) })
}

/// A person whose members are written so; none where the text is another.
pub(super) fn person_of(text: &str) -> Option<Person> {
    Some(text).filter(|text| text.starts_with('{')).and_then(|text| read_person(&json::members(text).ok()?).ok())
}

fn read_photo(members: &[Member<'_>]) -> Read<Photo> {
    only(members, &["type", "sha256", "base64"])?;
    let [kind, sha256, base64] = [must(members, "type")?, must(members, "sha256")?, must(members, "base64")?];
    Ok(Photo { kind: kind.into(), sha256: sha256.into(), base64: base64.into() })
}

/// A person as a copy has them.
pub(super) fn person(person: &Person) -> String {
    written(&[("name", Some(&person.name)), ("phone", person.phone.as_ref()), ("place", person.place.as_ref())])
}

/// A photo as a copy has it.
pub(super) fn photo(photo: &Photo) -> String {
    written(&[("type", Some(&photo.kind)), ("sha256", Some(&photo.sha256)), ("base64", Some(&photo.base64))])
}

fn written(members: &[(&str, Option<&String>)]) -> String {
    let mut text = String::from("{");
    for (name, value) in members {
        let Some(value) = value else { continue };
        if 1 < text.len() {
            text.push(',');
        }
        text.push_str(&quoted(name));
        text.push(':');
        text.push_str(&quoted(value));
    }
    text.push('}');
    text
}
