//! Which module may use which: `api → forecast, drawing → wording → calculation → practice → quantity → physics`, `vocabulary` and
//! `settings` beside them, and never back. What is agreed on the tree stands here too.

use std::collections::BTreeSet;
use std::path::Path;

use super::source::{ROOT, code, files};

const WEB: &[&str] = &["actix", "reqwest", "tokio"];

/// A module of the crate's root, the modules that it may use, and the words that it may not hold.
const MODULES: [(&str, &[&str], &[&str]); 10] = [
    ("physics", &["physics"], &["actix", "reqwest", "tokio", "serde", "utoipa", "validator", "uom"]),
    ("vocabulary", &["vocabulary"], WEB),
    ("settings", &["settings", "quantity"], &["actix", "tokio"]),
    ("quantity", &["quantity", "physics"], WEB),
    ("practice", &["practice", "vocabulary", "quantity", "physics"], WEB),
    ("calculation", &["calculation", "practice", "vocabulary", "quantity", "physics"], WEB),
    (
        "wording",
        &["wording", "calculation", "practice", "vocabulary", "quantity", "physics"],
        &["actix", "reqwest", "tokio", "serde", "utoipa", "validator"],
    ),
    (
        "drawing",
        &["drawing", "wording", "calculation", "practice", "vocabulary", "quantity", "physics"],
        &["actix", "reqwest", "tokio", "serde", "utoipa", "validator"],
    ),
    (
        "forecast",
        &["forecast", "calculation", "practice", "vocabulary", "quantity", "physics", "settings"],
        &["actix", "utoipa"],
    ),
    (
        "api",
        &[
            "api",
            "forecast",
            "drawing",
            "wording",
            "calculation",
            "practice",
            "vocabulary",
            "quantity",
            "physics",
            "settings",
        ],
        &[],
    ),
];

/// The modules of ours that a file names by `crate::`, also in a grouped `use`.
fn named_modules(code: &str) -> BTreeSet<String> {
    let name = |text: &str| text.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect::<String>();
    let mut modules = BTreeSet::new();
    for rest in code.split("crate::").skip(1) {
        match rest.strip_prefix('{') {
            Some(group) => {
                let group = group.split(';').next().unwrap();
                modules.extend(group.split([',', '{', '}']).map(|part| name(part.trim())));
            }
            None => drop(modules.insert(name(rest))),
        }
    }
    modules
}

/// The modules that the crate's root declares.
fn declared_modules() -> BTreeSet<String> {
    let root = code(&Path::new(ROOT).join("src/lib.rs"));
    root.lines()
        .filter_map(|line| line.strip_prefix("pub mod "))
        .map(|rest| rest.trim_end_matches(';').to_owned())
        .collect()
}

#[test]
fn every_module_has_its_arrows_here() {
    let listed: BTreeSet<_> = MODULES.iter().map(|(module, _, _)| (*module).to_owned()).collect();
    assert_eq!(listed, declared_modules());
}

#[test]
fn no_module_knows_a_module_above_it() {
    let all = declared_modules();
    for (module, below, _) in MODULES {
        for file in files(&format!("src/{module}")) {
            for named in named_modules(&code(&file)).intersection(&all) {
                assert!(below.contains(&named.as_str()), "{} uses {named}", file.display());
            }
        }
    }
}

#[test]
fn nothing_below_the_api_speaks_of_the_web_and_physics_of_numbers_only() {
    for (module, _, words) in MODULES {
        let files = files(&format!("src/{module}"));
        assert!(!files.is_empty(), "src/{module} is empty");
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
        "use crate::api::routes;\nuse crate::{physics::winding, practice};\nlet x = crate::quantity::parse(text);";
    let expected = ["api", "physics", "practice", "quantity"];
    assert!(expected.iter().all(|module| named_modules(sample).contains(*module)), "{:?}", named_modules(sample));
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

/// The paths of files and folders in the first table of DEVELOPERS.md, whose second column is relative to `src/`.
fn files_to_change(page: &str) -> Vec<String> {
    let table = page.split("## I want to change").nth(1).unwrap().split("\n## ").next().unwrap();
    let columns = table.lines().filter_map(|line| line.strip_prefix('|')?.split_once('|')).map(|(_, column)| column);
    let quoted = columns.flat_map(|column| column.split('`').skip(1).step_by(2));
    // Patterns of grep and names with a blank to fill in are no paths.
    quoted.filter(|text| text.contains('/') && !text.contains([' ', '<'])).map(str::to_owned).collect()
}

#[test]
fn developers_are_sent_to_files_that_exist() {
    let root = Path::new(ROOT);
    let paths = files_to_change(&std::fs::read_to_string(root.join("DEVELOPERS.md")).unwrap());
    assert!(paths.len() > 20, "only {} paths were found", paths.len());
    for path in paths {
        assert!(root.join("src").join(&path).exists() || root.join(&path).exists(), "DEVELOPERS.md names {path}");
    }
}
