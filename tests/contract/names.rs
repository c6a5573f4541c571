//! A name means one thing: no two types of the crate share one, and none hides a type of the standard library.

use std::collections::BTreeMap;

use super::source::{code, files};

/// Types of the standard library that a reader takes for granted. `Range` and `Duration` stand here too: a type of ours with
/// such a name would read as theirs.
const STANDARD: [&str; 16] = [
    "Box", "Cow", "Duration", "Fn", "Instant", "Iterator", "Option", "Ordering", "Path", "Range", "Rc", "Result",
    "Send", "Sized", "String", "Vec",
];

/// The types that a file declares at any depth, but for the associated types of traits, which all share their trait's name.
fn declared_types(code: &str) -> Vec<String> {
    let mut names = Vec::new();
    for line in code.lines() {
        let depth = line.len() - line.trim_start().len();
        let mut words = line.split_whitespace().filter(|word| !word.starts_with("pub"));
        // `pub(in path)` is two words, of which the second ends in a bracket.
        let Some(keyword) = words.find(|word| !word.ends_with(')')) else { continue };
        let is_type = ["struct", "enum", "trait", "union"].contains(&keyword) || keyword == "type" && depth == 0;
        let Some(rest) = words.next().filter(|_| is_type) else { continue };
        let name: String = rest.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
        // A macro's `$name` is none.
        if !name.is_empty() {
            names.push(name);
        }
    }
    names
}

#[test]
fn every_type_has_a_name_of_its_own() {
    let mut places = BTreeMap::<String, Vec<String>>::new();
    for file in files("src") {
        for name in declared_types(&code(&file)) {
            places.entry(name).or_default().push(file.display().to_string());
        }
    }
    assert!(places.len() > 300, "only {} types were found", places.len());
    let shared: Vec<_> = places.iter().filter(|(_, files)| files.len() > 1).collect();
    assert!(shared.is_empty(), "names that are declared twice: {shared:#?}");
    let hidden: Vec<_> = STANDARD.iter().filter(|name| places.contains_key(**name)).collect();
    assert!(hidden.is_empty(), "names of the standard library: {hidden:?}");
}

#[test]
fn the_finder_of_types_finds_them() {
    let sample = "pub struct Slot {\n    pub(super) enum Edge {\ntype Index = u8;\n    type Report = u8;\npub struct $name(u8);\n// struct No";
    assert_eq!(declared_types(sample), ["Slot", "Edge", "Index"]);
}
