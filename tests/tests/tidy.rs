//! The house rules of DEVELOPERS.md, held by reading the sources: sizes, who may know whom, words, manifests, numbered invariants.
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::OnceLock;

const FILE_MOST: usize = 400;
const FUNCTION_MOST: usize = 60;

/// A source of ours: its path in the workspace, all of its text, and its code without tests.
struct Source {
    path: String,
    text: String,
    code: Vec<(usize, String)>,
}

impl Source {
    fn is_in(&self, folder: &str) -> bool {
        self.path.starts_with(folder)
    }

    fn says(&self, word: &str) -> Option<String> {
        let at = self.code.iter().find(|(_, line)| line.contains(word));
        at.map(|(nth, line)| format!("{}:{nth}: {}", self.path, line.trim()))
    }
}

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().expect("the workspace")
}

fn files(folder: &Path, ends: &str, found: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).into_iter().flatten().flatten() {
        let (path, name) = (entry.path(), entry.file_name());
        let skipped = name == "target" || name == "vendor" || name.to_string_lossy().starts_with('.');
        match path.is_dir() {
            true if !skipped => files(&path, ends, found),
            false if path.to_string_lossy().ends_with(ends) => found.push(path),
            _ => {}
        }
    }
}

fn texts(ends: &str) -> Vec<(String, String)> {
    let mut found = vec![];
    files(root(), ends, &mut found);
    found.sort();
    let name = |path: &Path| path.strip_prefix(root()).expect("inside").to_string_lossy().into_owned();
    found.iter().map(|path| (name(path), std::fs::read_to_string(path).expect("text"))).collect()
}

/// Every source, read once.
fn sources() -> &'static [Source] {
    static READ: OnceLock<Vec<Source>> = OnceLock::new();
    let made = |(path, text): (String, String)| Source { code: code(&text), path, text };
    READ.get_or_init(|| texts(".rs").into_iter().map(made).collect())
}

/// The files that are the app: no tests, no examples, nothing that proves.
fn app() -> Vec<&'static Source> {
    let is_test = |path: &str| {
        path.contains("/tests/")
            || path.contains("tests.rs")
            || path.starts_with("tests/")
            || path.contains("/examples/")
            || path.contains("/benches/")
    };
    sources().iter().filter(|source| !is_test(&source.path)).collect()
}

/// The lines of code with their numbers: no blank ones, no comments, no modules under `#[cfg(test)]`.
fn code(text: &str) -> Vec<(usize, String)> {
    let (mut kept, mut lines) = (vec![], text.lines().enumerate().peekable());
    while let Some((nth, line)) = lines.next() {
        if line.trim_start().starts_with("#[cfg(test)]") || line.trim_start().starts_with("#[cfg(all(test") {
            let end = format!("{}}}", indent(line));
            let mut open = false;
            for (_, line) in lines.by_ref() {
                open |= line.ends_with('{');
                if line == end || (!open && line.ends_with(';')) {
                    break;
                }
            }
        } else if !line.trim().is_empty() && !line.trim_start().starts_with("//") {
            kept.push((nth + 1, line.to_owned()));
        }
    }
    kept
}

fn indent(line: &str) -> &str {
    &line[..line.len() - line.trim_start().len()]
}

#[track_caller]
fn none(what: &str, found: Vec<String>) {
    assert!(found.is_empty(), "{what}:\n  {}", found.join("\n  "));
}

#[test]
fn files_stay_small() {
    let large = app().into_iter().filter(|s| FILE_MOST < s.code.len());
    none("more than 400 lines of code", large.map(|s| format!("{}: {}", s.path, s.code.len())).collect());
}

#[test]
fn functions_stay_small() {
    // a catalogue has one arm for each code and the compiler sees that none is missing: that is a list, however long
    let procedures = app().into_iter().filter(|source| !source.is_in("web/src/words/"));
    let large = procedures.flat_map(|source| {
        let long = functions(&source.code).into_iter().filter(|(_, lines)| FUNCTION_MOST < *lines);
        long.map(|(name, lines)| format!("{}: {name}: {lines} lines", source.path)).collect::<Vec<_>>()
    });
    none("more than 60 lines", large.collect());
}

/// Each function by its first line, and how many lines it has. The form is rustfmt's: it ends at its own indent.
fn functions(code: &[(usize, String)]) -> Vec<(String, usize)> {
    let begins = |line: &str| {
        let line = line.trim_start();
        ["fn ", "pub fn ", "async fn ", "pub async fn ", "const fn ", "pub const fn ", "pub(super) fn ", "pub(crate) fn "]
            .iter()
            .any(|start| line.starts_with(start))
    };
    let mut found = vec![];
    for (at, (_, line)) in code.iter().enumerate().filter(|(_, (_, line))| begins(line)) {
        if line.ends_with('}') || line.ends_with(';') {
            continue;
        }
        let end = format!("{}}}", indent(line));
        let lines = code[at..].iter().position(|(_, line)| *line == end);
        found.extend(lines.map(|lines| (line.trim().to_owned(), lines + 1)));
    }
    found
}

/// What each room of the core may name.
fn may_name(room: &str) -> Option<&'static [&'static str]> {
    Some(match room {
        "quantity" | "refusal" => &["quantity", "refusal"],
        "wood" => &["quantity", "refusal", "wood"],
        "haul" => &["quantity", "refusal", "wood", "haul"],
        "plan" => &["quantity", "refusal", "wood", "plan"],
        "bench" => &["quantity", "refusal", "wood", "bench"],
        "money" => &["quantity", "refusal", "wood", "money"],
        "sale" => &["quantity", "refusal", "sale"],
        "ledger" => &["quantity", "refusal", "wood", "haul", "plan", "bench", "money", "sale", "ledger"],
        "sheet" => &["quantity", "refusal", "wood", "haul", "plan", "bench", "money", "sale", "ledger", "sheet"],
        "story" => &["quantity", "refusal", "wood", "haul", "plan", "bench", "money", "sale", "ledger", "sheet", "story"],
        _ => return None,
    })
}

/// The rooms a line names by `crate::`, alone or in braces.
fn named_rooms(line: &str) -> Vec<String> {
    let word = |text: &str| text.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect::<String>();
    let after = line.match_indices("crate::").map(|(at, name)| &line[at + name.len()..]);
    let rooms = after.flat_map(|rest| match rest.strip_prefix('{') {
        Some(list) => list.split(',').map(|name| word(name.trim())).collect::<Vec<_>>(),
        None => vec![word(rest)],
    });
    rooms.filter(|room| may_name(room).is_some()).collect()
}

#[test]
fn rooms_of_the_core_know_only_those_below() {
    let mut found = vec![];
    for source in app().iter().filter(|s| s.is_in("core/src/") && s.path != "core/src/lib.rs") {
        let room = source.path.trim_start_matches("core/src/").split(['/', '.']).next().unwrap_or_default();
        let Some(allowed) = may_name(room) else {
            found.push(format!("{}: a room the rules do not know", source.path));
            continue;
        };
        for (nth, line) in &source.code {
            let strangers = named_rooms(line).into_iter().filter(|named| !allowed.contains(&named.as_str()));
            found.extend(strangers.map(|named| format!("{}:{nth}: {room} names {named}", source.path)));
        }
    }
    none("the direction of imports", found);
}

/// What a checker of plans may name: the problem, the plan, and for a field how it lies, which no solver uses.
fn checker_may_name(room: &str) -> &'static [&'static str] {
    if room == "field" { &["plan", "problem", "lay"] } else { &["plan", "problem"] }
}

#[test]
fn inv16_a_checker_of_plans_shares_nothing_with_the_planner() {
    let mut found = vec![];
    let mut checkers = 0;
    for source in app().iter().filter(|s| s.is_in("core/src/plan/") && s.path.ends_with("/check.rs")) {
        checkers += 1;
        let room = source.path.trim_start_matches("core/src/plan/").split('/').next().unwrap_or_default();
        let may: Vec<String> = checker_may_name(room).iter().map(|name| format!("super::{name}")).collect();
        let may_say = |rest: &str| rest.starts_with("crate::quantity") || may.iter().any(|may| rest.starts_with(may.as_str()));
        for (nth, line) in &source.code {
            let named = ["super::", "crate::"].into_iter().flat_map(|word| line.match_indices(word));
            let strangers = named.filter(|(at, _)| !may_say(&line[*at..]));
            found.extend(strangers.map(|(at, _)| format!("{}:{nth}: {}", source.path, &line[at..])));
            let own = ["problem.trimmed(", "problem.wide("].into_iter().filter(|own| line.contains(own));
            found.extend(own.map(|own| format!("{}:{nth}: the planner's own {own}", source.path)));
        }
    }
    assert_eq!(checkers, 4, "a checker for each of the four problems");
    let planners = app().into_iter().filter(|s| s.is_in("core/src/plan/field/") && !s.path.ends_with("/check.rs"));
    found.extend(planners.filter_map(|source| source.says("lay::")));
    none("a checker and its planner", found);
}

/// No file of these folders says the word, but for those named last.
fn nobody_says(word: &str, folders: &[&str], but: &[&str]) -> Vec<String> {
    let looked = app().into_iter().filter(|s| folders.iter().any(|f| s.is_in(f)) && !but.iter().any(|b| s.is_in(b)));
    looked.filter_map(|source| source.says(word)).collect()
}

#[test]
fn only_the_phone_names_the_platform() {
    let plain = ["web/src/screens", "web/src/parts", "web/src/words", "web/src/app"];
    none("a screen knows no phone", nobody_says("phone::", &plain, &[]));
    for platform in ["web_sys", "js_sys", "gloo_"] {
        none("the platform", nobody_says(platform, &["web/src", "core/src"], &["web/src/phone", "web/src/run", "web/src/view"]));
    }
    for store in ["IndexedDb", "IndexedDB", "indexed_db", "Idb"] {
        none("the store", nobody_says(store, &["web/src", "core/src"], &["web/src/phone/store"]));
    }
}

#[test]
fn inv04_the_core_has_no_clock_no_chance_and_no_doors() {
    for word in ["std::time", "std::fs", "std::net", "std::env", "std::thread", "Utc::now", "Local::now", "new_v4", "now_v7", "rand::"] {
        none(word, nobody_says(word, &["core/src"], &[]));
    }
    for word in ["HashMap", "HashSet"] {
        none("the order of a map must be the same everywhere", nobody_says(word, &["core/src"], &["core/src/ledger/places.rs"]));
    }
    for float in ["f64", "f32"] {
        none(
            "money and time are exact",
            nobody_says(float, &["core/src/money", "core/src/quantity/money.rs", "core/src/quantity/moment.rs"], &[]),
        );
    }
}

#[test]
fn json_is_read_and_written_in_one_place() {
    let (core, line) = (&["core/src"], &["core/src/ledger/line"]);
    none("serde", nobody_says("serde", core, &[]));
    none("json", nobody_says("json::", core, line));
}

#[test]
fn inv12_no_style_attribute_is_written() {
    for word in ["style=", ".attr(\"style\"", "set_attribute(\"style\"", "insertAdjacentHTML", "set_inner_html"] {
        none(word, nobody_says(word, &["web/src"], &[]));
    }
    let pages = texts(".html").into_iter().chain(texts(".js")).filter(|(path, _)| path.starts_with("www/"));
    none("a style in a page", pages.filter(|(_, text)| text.contains("style=")).map(|(path, _)| path).collect());
}

#[test]
fn nothing_is_left_undone() {
    let me = "tests/tests/tidy.rs";
    for word in ["todo!(", "unimplemented!(", "dbg!(", "#[ignore"] {
        let found = sources().iter().filter(|s| s.path != me && s.text.contains(word));
        none(word, found.map(|s| s.path.clone()).collect());
    }
}

/// Each brings along tables or ways of the standard library that weigh kilobytes, where ours serve: `quantity::letters` for letters,
/// `quantity::exact` for floats.
#[test]
fn what_weighs_kilobytes_for_one_use_stays_out() {
    for costly in [".to_lowercase()", ".to_uppercase()", ".is_lowercase()", ".is_uppercase()", "parse::<f64>"] {
        let uses = |source: &Source| source.code.iter().any(|(_, line)| line.contains(costly));
        none(costly, app().into_iter().filter(|source| uses(source)).map(|source| source.path.clone()).collect());
    }
}

#[test]
fn every_invariant_has_a_test_that_carries_its_number() {
    let carried = |n: u32| {
        let name = format!("fn inv{n:02}_");
        sources().iter().any(|source| source.text.contains(&name))
    };
    none("no test carries", (1..=16).filter(|n| !carried(*n)).map(|n| format!("invariant {n}")).collect());
}

#[test]
fn the_core_depends_on_four_crates() {
    let manifest = std::fs::read_to_string(root().join("core/Cargo.toml")).expect("a manifest");
    let names: Vec<String> =
        dependencies(&manifest).into_iter().filter(|(table, ..)| table == "dependencies").map(|(_, name, _)| name).collect();
    assert_eq!(names, ["rust_decimal", "uuid", "chrono", "libm"]);
}

/// The dependency lines of a manifest: the table, the name, and whether a comment says why, beside it or above its group.
fn dependencies(manifest: &str) -> Vec<(String, String, bool)> {
    let (mut table, mut said, mut found) = (String::new(), false, vec![]);
    for line in manifest.lines() {
        if let Some(head) = line.strip_prefix('[') {
            table = head.trim_end_matches(']').to_owned();
            let own = table.split_once("dependencies.").map(|(_, name)| name.to_owned());
            found.extend(own.map(|name| (table.clone(), name, said)));
        } else if line.starts_with('#') || line.is_empty() {
            said = line.starts_with('#');
        } else if table.ends_with("dependencies")
            && let Some((name, rest)) = line.split_once('=')
        {
            let name = name.trim().trim_end_matches(".workspace").to_owned();
            found.push((table.clone(), name, said || rest.contains('#')));
        }
    }
    found
}

#[test]
fn every_dependency_says_why_it_is_there() {
    let mut silent = vec![];
    for (path, manifest) in texts("Cargo.toml") {
        silent.extend(dependencies(&manifest).into_iter().filter(|(.., said)| !said).map(|(_, name, _)| format!("{path}: {name}")));
    }
    none("no reason beside it", silent);
}

#[test]
fn the_version_has_its_heading_in_the_changelog() {
    let log = std::fs::read_to_string(root().join("docs/CHANGELOG.md")).expect("a changelog");
    let heading = format!("## {}", env!("CARGO_PKG_VERSION"));
    assert_eq!(log.lines().find(|line| line.starts_with("## ")), Some(heading.as_str()));
}

/// The texts in quotes of a line.
fn quoted(line: &str) -> Vec<&str> {
    line.split('"').skip(1).step_by(2).collect()
}

/// Two words of at least two letters, and not only small ones as class names are.
fn is_prose(text: &str) -> bool {
    let is_word = |word: &str| 1 < word.len() && word.trim_matches(['.', ',', '?', ':']).chars().all(char::is_alphabetic);
    let words: Vec<&str> = text.split_whitespace().collect();
    let like_a_sentence =
        text.starts_with(char::is_uppercase) || text.contains(['?', '’', '…']) || text.ends_with('.') || text.contains(", ");
    words.windows(2).any(|pair| pair.iter().all(|word| is_word(word))) && like_a_sentence
}

#[test]
fn every_sentence_stands_in_the_catalogue() {
    let mut found = vec![];
    for source in app().iter().filter(|s| s.is_in("web/src/screens") || s.is_in("web/src/parts") || s.is_in("web/src/app")) {
        for (nth, line) in source.code.iter().filter(|(_, line)| !line.contains("assert") && !line.contains("expect(")) {
            found.extend(quoted(line).into_iter().filter(|text| is_prose(text)).map(|text| format!("{}:{nth}: {text}", source.path)));
        }
    }
    none("a sentence outside web/src/words", found);
}

#[test]
fn the_reader_of_sources_reads_them_right() {
    let text =
        "//! A head.\n\nfn a() {\n    1;\n}\n#[cfg(test)]\nmod tests {\n    fn b() {}\n}\nfn c() {}\n#[cfg(test)]\nmod tests;\nfn d() {}\n";
    let lines: Vec<usize> = code(text).iter().map(|(nth, _)| *nth).collect();
    assert_eq!(lines, [3, 4, 5, 10, 13]);
    assert_eq!(functions(&code(text)), [("fn a() {".to_owned(), 3)]);
    assert_eq!(named_rooms("use crate::{bench::Run, money};"), ["bench", "money"]);
    assert!(is_prose("The phone is full."));
    assert!(!is_prose("key solid h88"));
    let manifest = "[dependencies]\na = \"1\" # why\nb = \"1\"\n# these\nc.workspace = true\n";
    let said: BTreeMap<String, bool> = dependencies(manifest).into_iter().map(|(_, name, said)| (name, said)).collect();
    assert_eq!(said, BTreeMap::from([("a".into(), true), ("b".into(), false), ("c".into(), true)]));
}
