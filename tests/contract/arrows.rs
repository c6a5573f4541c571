//! Which room may know which: `api → forecast, drawing → calculation → practice, quantity → physics`, and never back.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

const ROOT: &str = env!("CARGO_MANIFEST_DIR");

/// A room, the rooms of ours that it may use, and the words that it may not hold.
const ROOMS: [(&str, &[&str], &[&str]); 7] = [
    ("physics", &["physics"], &["actix", "reqwest", "tokio", "serde", "utoipa", "validator", "uom"]),
    ("quantity", &["quantity", "physics"], &["actix", "reqwest", "tokio"]),
    ("practice", &["practice", "quantity", "physics"], &["actix", "reqwest", "tokio"]),
    ("calculation", &["calculation", "practice", "quantity", "physics"], &["actix", "reqwest", "tokio"]),
    (
        "drawing",
        &["drawing", "calculation", "practice", "quantity", "physics"],
        &["actix", "reqwest", "tokio", "serde", "utoipa", "validator"],
    ),
    ("forecast", &["forecast", "calculation", "practice", "quantity", "physics"], &["actix", "utoipa"]),
    ("api", &["api", "forecast", "drawing", "calculation", "practice", "quantity", "physics", "settings"], &[]),
];

/// The Rust files under a folder.
fn files(folder: &str) -> Vec<PathBuf> {
    fn walk(folder: &Path, files: &mut Vec<PathBuf>) {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            let name = path.file_name().unwrap().to_str().unwrap();
            if path.is_dir() && name != "node_modules" {
                walk(&path, files);
            } else if path.extension().is_some_and(|extension| extension == "rs") {
                files.push(path);
            }
        }
    }
    let mut files = Vec::new();
    walk(&Path::new(ROOT).join(folder), &mut files);
    files
}

/// The text of a file, without its comments: they may tell of other rooms.
fn code(file: &Path) -> String {
    let text = std::fs::read_to_string(file).unwrap();
    text.lines().filter(|line| !line.trim_start().starts_with("//")).collect::<Vec<_>>().join("\n")
}

/// The rooms of ours that a file names by `crate::`, also in a grouped `use`.
fn named_rooms(code: &str) -> BTreeSet<String> {
    let name = |text: &str| text.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect::<String>();
    let mut rooms = BTreeSet::new();
    for rest in code.split("crate::").skip(1) {
        match rest.strip_prefix('{') {
            Some(group) => {
                let group = group.split(';').next().unwrap();
                rooms.extend(group.split([',', '{', '}']).map(|part| name(part.trim())));
            }
            None => drop(rooms.insert(name(rest))),
        }
    }
    rooms
}

/// The name of a room as the crate's root knows it.
fn rooms() -> BTreeSet<String> {
    let map = code(&Path::new(ROOT).join("src/lib.rs"));
    map.lines()
        .filter_map(|line| line.strip_prefix("pub mod "))
        .map(|rest| rest.trim_end_matches(';').to_owned())
        .collect()
}

#[test]
fn every_room_has_its_arrows_here() {
    let listed: BTreeSet<_> = ROOMS.iter().map(|(room, _, _)| (*room).to_owned()).collect();
    // Settings are read at the edge and are one file.
    let known = rooms().into_iter().filter(|room| room != "settings").collect::<BTreeSet<_>>();
    assert_eq!(listed, known);
}

#[test]
fn no_room_knows_a_room_above_it() {
    let all = rooms();
    for (room, below, _) in ROOMS {
        for file in files(&format!("src/{room}")) {
            for named in named_rooms(&code(&file)).intersection(&all) {
                assert!(below.contains(&named.as_str()), "{} uses {named}", file.display());
            }
        }
    }
}

#[test]
fn nothing_below_the_edge_speaks_of_the_web_and_physics_of_numbers_only() {
    for (room, _, words) in ROOMS {
        let files = files(&format!("src/{room}"));
        assert!(!files.is_empty(), "src/{room} is empty");
        for file in files {
            let code = code(&file);
            for word in words {
                assert!(!code.contains(word), "{} holds {word}", file.display());
            }
        }
    }
}

#[test]
fn the_finder_of_arrows_finds_them() {
    let sample =
        "use crate::api::edge;\nuse crate::{physics::winding, practice};\nlet x = crate::quantity::parse(text);";
    let expected = ["api", "physics", "practice", "quantity"];
    assert!(expected.iter().all(|room| named_rooms(sample).contains(*room)), "{:?}", named_rooms(sample));
}

#[test]
fn no_source_file_is_longer_than_400_lines() {
    for file in ["src", "tests"].iter().flat_map(|folder| files(folder)) {
        let lines = std::fs::read_to_string(&file).unwrap().lines().count();
        assert!(lines <= 400, "{} has {lines} lines: one question per file", file.display());
    }
}

#[test]
fn the_top_level_holds_what_was_agreed() {
    // Tools' settings are dot-files, and `target` is cargo's.
    let agreed =
        ["Cargo.lock", "Cargo.toml", "DEVELOPERS.md", "README.md", "deploy", "openapi", "src", "target", "tests"];
    let names = std::fs::read_dir(ROOT).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap());
    let others: Vec<_> = names.filter(|name| !name.starts_with('.') && !agreed.contains(&name.as_str())).collect();
    assert!(others.is_empty(), "{others:?} belong elsewhere");
}
