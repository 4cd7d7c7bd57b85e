//! Reads the published figures in `tests/checks/`, unchanged files. Each row of `check_values.json` and `worked_examples.csv` has a source and a
//! status, and so have the figures of the species; where the other tables come from stands in `sources.md`.
//!
//! Status *read*: the value was seen in the text named. *Recalled*: from memory. *Computed*: worked out by whoever collected them;
//! such a row only pins a result, unless its note names a second route.
#![allow(dead_code)] // each test binary uses its part

use fivebar_core::quantity::Decimal;
use serde_json::Value;
use std::collections::BTreeMap;

/// One published computation.
#[derive(Debug)]
pub struct Row {
    pub id: String,
    pub inputs: Value,
    /// As printed.
    pub expected: Vec<Decimal>,
    /// As worked out again by whoever collected them.
    pub recomputed: Vec<Decimal>,
    pub tolerance: Vec<Decimal>,
    /// False where the print is wrong.
    pub agrees: bool,
    pub status: String,
    pub source: String,
}

impl Row {
    pub fn input(&self, name: &str) -> Decimal {
        one(&self.inputs[name]).unwrap_or_else(|| panic!("{}: no input {name}", self.id))
    }

    pub fn inputs(&self, name: &str) -> Vec<Decimal> {
        many(&self.inputs[name])
    }

    /// Our figures against the printed ones; where the print is wrong, against the right ones, and unlike the print.
    #[track_caller]
    pub fn check(&self, ours: &[Decimal]) {
        let near =
            |wanted: &[Decimal]| wanted.len() == ours.len() && (0..ours.len()).all(|i| (wanted[i] - ours[i]).abs() <= self.tolerance_of(i));
        let source = &self.source;
        if self.agrees {
            assert!(near(&self.expected), "{}: {ours:?}, printed {:?} ({source}, {})", self.id, self.expected, self.status);
        } else {
            assert!(near(&self.recomputed), "{}: {ours:?}, should be {:?} ({source})", self.id, self.recomputed);
            assert!(!near(&self.expected), "{}: a misprint that we repeat ({source})", self.id);
        }
    }

    fn tolerance_of(&self, i: usize) -> Decimal {
        self.tolerance.get(i).or(self.tolerance.last()).copied().unwrap_or_default()
    }
}

/// Our figures for a row, or why the row is not for us.
pub enum Ours {
    Figures(fn(&Row) -> Vec<Decimal>),
    Elsewhere(&'static str),
}

/// Every row is reckoned or says where else it belongs; nothing is left out in silence, nothing named that is not there.
#[track_caller]
pub fn check_all(rows: &[Row], ours: &[(&str, Ours)]) {
    let matches = |pattern: &str, id: &str| pattern.strip_suffix('*').map_or(pattern == id, |start| id.starts_with(start));
    for row in rows {
        assert!(!row.source.is_empty() && !row.status.is_empty(), "{} names no source or status", row.id);
        match ours.iter().find(|(pattern, _)| matches(pattern, &row.id)) {
            Some((_, Ours::Figures(reckon))) => row.check(&reckon(row)),
            Some((_, Ours::Elsewhere(_))) => {}
            None => panic!("{} is in no table", row.id),
        }
    }
    for (pattern, _) in ours {
        assert!(rows.iter().any(|row| matches(pattern, &row.id)), "no row is called {pattern}");
    }
}

/// The rows of one topic of `check_values.json`.
pub fn topic(name: &str) -> Vec<Row> {
    let all: Value = serde_json::from_str(&text("check_values.json")).unwrap();
    all["topics"][name].as_array().unwrap().iter().map(|v| row(v, &v["inputs"], |member| v[member].clone())).collect()
}

/// The rows of `worked_examples.csv`.
pub fn worked_examples() -> Vec<Row> {
    let read = |line: &BTreeMap<String, String>| {
        let inputs = serde_json::from_str(&line["inputs"]).unwrap();
        let value = Value::from_iter(line.iter().map(|(k, v)| (k.clone(), Value::from(v.clone()))));
        row(&value, &inputs, |member| Value::from(line[member].clone()))
    };
    table("worked_examples.csv").iter().map(read).collect()
}

fn row(value: &Value, inputs: &Value, member: impl Fn(&str) -> Value) -> Row {
    let word = |name: &str| value[name].as_str().unwrap_or_default().to_string();
    Row {
        id: word("id"),
        inputs: inputs.clone(),
        expected: many(&member("expected")),
        recomputed: many(&member("recomputed")),
        tolerance: many(&member("tolerance")),
        agrees: !matches!(value["agrees"], Value::Bool(false)) && value["agrees"] != "false",
        status: word("status"),
        source: word("source"),
    }
}

/// A table with a heading, as lines by column. Fields may be quoted; a doubled quote is one.
pub fn table(file: &str) -> Vec<BTreeMap<String, String>> {
    let text = text(file);
    let mut lines = text.lines().map(fields);
    let heads = lines.next().unwrap();
    lines.map(|line| heads.iter().cloned().zip(line).collect()).collect()
}

fn fields(line: &str) -> Vec<String> {
    let (mut out, mut quoted) = (vec![String::new()], false);
    let mut letters = line.chars().peekable();
    while let Some(letter) = letters.next() {
        match letter {
            '"' if quoted && letters.peek() == Some(&'"') => out.last_mut().unwrap().push(letters.next().unwrap()),
            '"' => quoted = !quoted,
            ',' if !quoted => out.push(String::new()),
            _ => out.last_mut().unwrap().push(letter),
        }
    }
    out
}

/// A file as it is.
pub fn text(file: &str) -> String {
    let path = format!("{}/../tests/checks/{file}", env!("CARGO_MANIFEST_DIR"));
    std::fs::read_to_string(&path).unwrap_or_else(|why| panic!("{path}: {why}"))
}

/// `5`, `"5"`, `"5,6"`, `"5; 6"`, `"5>6"`, `"[5,6]"`, `[5, 6]`, `"p 5 J 6"`; words give nothing.
fn many(value: &Value) -> Vec<Decimal> {
    match value {
        Value::Array(values) => values.iter().filter_map(one).collect(),
        Value::String(text) => text.trim_matches(['[', ']']).split([',', ';', '>', ' ']).filter_map(read).collect(),
        _ => one(value).into_iter().collect(),
    }
}

fn one(value: &Value) -> Option<Decimal> {
    match value {
        Value::Number(number) => read(&number.to_string()),
        Value::String(text) => read(text),
        _ => None,
    }
}

fn read(text: &str) -> Option<Decimal> {
    text.trim().parse().ok().or_else(|| Decimal::from_scientific(text.trim()).ok())
}
