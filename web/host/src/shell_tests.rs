use super::*;

fn small() -> Shell {
    let mut shell = Shell::default();
    shell.put("index.html", "<!doctype html>");
    shell.put("font/a.woff2", [0, 1, 2]);
    shell.put(WORKER, "const FILES = [\n/*FILES*/];\nconst VERSION = \"VERSION_OF_BUILD\";\n");
    shell
}

fn worker(shell: &Shell) -> String {
    String::from_utf8(shell.stamped()[WORKER].clone()).expect("text")
}

#[test]
fn the_list_names_every_file_but_the_worker_with_its_hash() {
    let listed = worker(&small());
    assert_eq!(listed.matches("\", \"sha256-").count(), 2);
    // sha256 of the three bytes, as `openssl dgst -sha256 -binary | base64` says it
    assert!(listed.contains("[\"./font/a.woff2\", \"sha256-rksygOVuL6+D9BSm49q+nV++GJdlRMBf7RIazLhbU/w=\"]"), "{listed}");
    assert!(listed.contains("[\"./index.html\", \"sha256-"));
    assert!(!listed.contains("./sw.js"));
}

#[test]
fn any_byte_makes_another_version() {
    let first = small();
    let mut changed = vec![];
    for (name, bytes) in [
        ("index.html", b"<!doctype htmL>".as_slice()),
        ("font/a.woff2", &[0, 1, 3]),
        (WORKER, b"// other\n/*FILES*/ VERSION_OF_BUILD"),
        ("new.css", b""),
    ] {
        let mut shell = first.clone();
        shell.put(name, bytes);
        changed.push(shell.version());
    }
    let mut renamed = first.clone();
    let bytes = renamed.take("index.html").expect("there");
    renamed.put("index2.html", bytes);
    changed.push(renamed.version());
    changed.push(first.version());
    changed.sort();
    changed.dedup();
    assert_eq!(changed.len(), 6);
    assert!(worker(&first).contains(&format!("const VERSION = \"{}\"", first.version())));
}

#[test]
fn the_same_files_make_the_same_version() {
    assert_eq!(small().version(), small().version());
    assert_eq!(small().stamped(), small().stamped());
}

#[test]
fn writing_takes_an_older_version_away_and_leaves_the_rest() {
    let out = tempfile::tempdir().expect("a folder");
    let at = |name: &str| out.path().join(name);
    small().write(out.path()).expect("written");
    std::fs::write(at("index.html.br"), "packed").expect("written");
    std::fs::write(at("CNAME"), "example.org").expect("written");
    let mut next = small();
    next.take("font/a.woff2");
    next.write(out.path()).expect("written again");
    assert!(!at("font/a.woff2").exists() && !at("index.html.br").exists());
    assert!(at("index.html").exists() && at("CNAME").exists());
}

#[test]
fn a_folder_of_other_things_is_refused_and_untouched() {
    let out = tempfile::tempdir().expect("a folder");
    std::fs::write(out.path().join("letters.txt"), "dear").expect("written");
    let refused = small().write(out.path()).expect_err("refused").to_string();
    assert!(refused.ends_with("holds other files. Name an empty or a new folder"), "{refused}");
    assert_eq!(std::fs::read_dir(out.path()).expect("a folder").count(), 1);
}

#[test]
fn a_list_that_climbs_out_of_its_folder_is_refused() {
    let out = tempfile::tempdir().expect("a folder");
    std::fs::write(out.path().join(WORKER), "  [\"./../elsewhere\", \"sha256-\"],\n").expect("written");
    assert!(small().write(out.path()).is_err());
}
