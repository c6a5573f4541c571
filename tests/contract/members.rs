//! The closed lists in every language: each member has its words, the words have their member, and no figure is lost between them.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use fluent_syntax::ast::{Entry, Pattern, PatternElement};
use fluent_syntax::parser::parse;
use loopwright::wording::Language;

use super::source::{ROOT, code, files};

/// What is said of a member.
pub(super) struct Words {
    pub(super) label: String,
    pub(super) description: String,
}

/// The English words of the members that some code declares, by the id that they have in other languages.
fn declared(code: &str) -> BTreeMap<String, Words> {
    let mut members = BTreeMap::new();
    let mut list = None;
    let mut is_open = false;
    for line in code.lines() {
        if line == "vocabulary! {" || line == "sourced_vocabulary! {" {
            (is_open, list) = (true, None);
        } else if line == "}" {
            is_open = false;
        } else if is_open && list.is_none() {
            list = line.trim().strip_suffix(" {").map(str::to_owned);
        } else if let (true, Some(list), true) = (is_open, &list, line.contains('"')) {
            let texts: Vec<_> = line.split('"').skip(1).step_by(2).collect();
            let [code, label, description] = texts[..] else { panic!("not a member of {list}: {line}") };
            let words = Words { label: label.to_owned(), description: description.to_owned() };
            assert!(members.insert(id(list, code), words).is_none(), "{list} has {code} twice");
        }
    }
    members
}

/// The id of a member. What an id cannot hold of a code (the space and the point of `1.5 mm2`) is an underscore in it.
fn id(list: &str, code: &str) -> String {
    let code: String = code.chars().map(|c| if c.is_ascii_alphanumeric() || c == '-' { c } else { '_' }).collect();
    format!("{list}-{code}")
}

/// The members of all lists of the crate.
pub(super) fn members() -> BTreeMap<String, Words> {
    let mut members = BTreeMap::new();
    for file in files("src") {
        for (id, words) in declared(&code(&file)) {
            assert!(members.insert(id.clone(), words).is_none(), "two lists have {id}");
        }
    }
    assert!(members.len() > 400, "only {} members were found", members.len());
    members
}

/// The languages whose members have files.
fn languages() -> impl Iterator<Item = Language> {
    Language::ALL.iter().copied().filter(|language| *language != Language::English)
}

/// The files of the members of a language, by name.
fn ftl_files(language: Language) -> BTreeMap<String, String> {
    let folder = Path::new(ROOT).join("src/wording").join(language.tag()).join("members");
    let paths = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    paths
        .map(|path| (path.file_name().unwrap().to_str().unwrap().to_owned(), std::fs::read_to_string(path).unwrap()))
        .collect()
}

/// The words of the members in a language, by id.
fn translated(language: Language) -> BTreeMap<String, Words> {
    let mut members = BTreeMap::new();
    for (name, text) in ftl_files(language) {
        let resource = parse(text.as_str()).unwrap_or_else(|(_, errors)| panic!("{name}: {errors:?}"));
        for entry in &resource.body {
            let Entry::Message(message) = entry else { continue };
            let id = message.id.name;
            let [attribute] = message.attributes.as_slice() else { panic!("{name}: {id} needs one attribute") };
            assert_eq!(attribute.id.name, "description", "{name}: {id}");
            let label = message.value.as_ref().unwrap_or_else(|| panic!("{name}: {id} has no label"));
            let words = Words { label: plain(label), description: plain(&attribute.value) };
            assert!(members.insert(id.to_owned(), words).is_none(), "{} has {id} twice", language.tag());
        }
    }
    members
}

/// A text on one line, without anything to fill in.
fn plain(pattern: &Pattern<&str>) -> String {
    match pattern.elements.as_slice() {
        [PatternElement::TextElement { value }] if !value.contains('\n') => (*value).to_owned(),
        other => panic!("not one line of text: {other:?}"),
    }
}

/// The numbers of a text, least first, with a point for decimals.
fn numbers(text: &str) -> Vec<String> {
    let runs = text.split(|c: char| !c.is_ascii_digit() && c != '.' && c != ',');
    let mut numbers: Vec<_> = runs
        .map(|run| run.trim_matches(['.', ',']).replace(',', "."))
        .filter(|run| run.contains(|c: char| c.is_ascii_digit()))
        .collect();
    numbers.sort();
    numbers
}

/// A word such as `weather.location`, which names a field.
fn is_dotted(word: &str) -> bool {
    let word = word.trim_matches(|c: char| !c.is_ascii_alphanumeric() && c != '/');
    // The address of the description is what a developer looks for.
    word != "/openapi.json"
        && word.split_once('.').is_some_and(|(before, after)| {
            [before, after].iter().all(|part| part.len() > 2 && part.bytes().all(|byte| byte.is_ascii_lowercase()))
        })
}

#[test]
fn every_member_has_its_words_in_every_language() {
    let english = members();
    for language in languages() {
        let translated = translated(language);
        let missing: Vec<_> = english.keys().filter(|id| !translated.contains_key(*id)).collect();
        assert!(missing.is_empty(), "{} has no words for {missing:#?}", language.tag());
        let orphans: Vec<_> = translated.keys().filter(|id| !english.contains_key(*id)).collect();
        assert!(orphans.is_empty(), "no list has {orphans:#?} of {}", language.tag());
    }
}

#[test]
fn every_translation_says_the_same_figures_in_other_words() {
    let english = members();
    for language in languages() {
        for (id, words) in translated(language) {
            let place = format!("{id} of {}", language.tag());
            let Some(original) = english.get(&id) else { continue };
            assert_ne!(words.description, original.description, "{place} is still English");
            for (said, original) in [(&words.label, &original.label), (&words.description, &original.description)] {
                assert_eq!(numbers(said), numbers(original), "{place}: {said}");
            }
        }
    }
}

#[test]
fn no_words_of_a_member_name_a_field() {
    let translated = languages().flat_map(translated);
    for (id, words) in members().into_iter().chain(translated) {
        for text in [&words.label, &words.description] {
            assert!(!text.trim().is_empty(), "{id} says nothing");
            assert!(!text.contains('_') && !text.split_whitespace().any(is_dotted), "{id}: {text}");
        }
    }
}

#[test]
fn every_file_of_members_is_read_and_short() {
    let mut names = BTreeSet::new();
    for language in languages() {
        let files = ftl_files(language);
        names.insert(files.keys().cloned().collect::<Vec<_>>());
        assert_eq!(files.len(), language.members().len(), "{}", language.tag());
        for (name, text) in files {
            assert!(language.members().contains(&text.as_str()), "{} does not read {name}", language.tag());
            assert!(text.lines().count() <= 400, "{name} of {} is too long", language.tag());
        }
    }
    assert_eq!(names.len(), 1, "the languages have other files: {names:#?}");
    assert!(Language::English.members().is_empty(), "English words of members stand in the code");
}

#[test]
fn the_readers_of_members_find_what_they_look_for() {
    let source = "vocabulary! {\n    Size {\n        Big \"1.5 mm2\" \"Big\" \"Holds 3.\";\n    }\n}\nlet a = \"b\";\n";
    let members = declared(source);
    assert_eq!(members.keys().collect::<Vec<_>>(), ["Size-1_5_mm2"]);
    let words = &members["Size-1_5_mm2"];
    assert_eq!((words.label.as_str(), words.description.as_str()), ("Big", "Holds 3."));
    assert_eq!(numbers("De 10 à 29 °C, puis 7,2 m."), ["10", "29", "7.2"]);
    assert!(
        is_dotted("weather.location;") && !is_dotted("/openapi.json") && !is_dotted("end.Then") && !is_dotted("it.")
    );
}
