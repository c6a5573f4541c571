//! What a person reads holds no name of the API, and a translation says what the English sentence says: the same numbers, and the terms of
//! `src/wording/GLOSSARY.md`. Whether it reads well only a reader can tell.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};
use fluent_syntax::parser::parse;
use loopwright::wording::Language;

use super::members::Words;
use super::source::ROOT;
use super::wording::ftl_files;

/// Names of paths, which no sentence holds.
const PATHS: [&str; 14] = [
    "/v1",
    "#/",
    "loop-sizing",
    "loop-characteristics",
    "vehicle-response",
    "detector-compatibility",
    "material-estimate",
    "cure-guidance",
    "fault-finding",
    "existing-loop",
    "installation-plan",
    "job-sheet",
    "reference/",
    "drawings/",
];

/// What is said to whoever asks for a page of the service by its path, and a column of the bill that programs read.
const OF_PROGRAMS: [&str; 2] = ["problems-no-such-kind", "bill-unit-price"];

/// Texts whose English holds a term in another sense, or whose translation says the thing in another way. Each was read.
const OTHER_WORDS: [(&str, &str); 9] = [
    ("Corner-square_overrun.description", "turn"),
    ("FaultTest-load_and_wiggle.description", "resistance"),
    ("FindingCode-exit_time_unknown.description", "opening"),
    ("FindingCode-lead_in_outweighs_loop", "loop"),
    ("FindingCode-slot_wet.description", "turn"),
    ("SiteHazard-old_loop_cut", "loop"),
    ("Source-comyn_1998.description", "sealant"),
    ("Source-eddy_current_plate.description", "turn"),
    ("Source-everett_hot_melt", "loop"),
];

/// The text of one message: the pieces between its variables, and the messages that it holds.
#[derive(Default)]
struct Text {
    pieces: Vec<String>,
    held: Vec<String>,
}

impl Text {
    fn of(pattern: &Pattern<&str>) -> Self {
        let mut text = Self::default();
        text.read(pattern);
        text
    }

    fn read(&mut self, pattern: &Pattern<&str>) {
        for element in &pattern.elements {
            match element {
                PatternElement::TextElement { value } => self.pieces.push((*value).to_owned()),
                PatternElement::Placeable { expression } => self.read_expression(expression),
            }
        }
    }

    fn read_expression(&mut self, expression: &Expression<&str>) {
        match expression {
            Expression::Inline(inline) => self.read_inline(inline),
            Expression::Select { variants, .. } => variants.iter().for_each(|variant| self.read(&variant.value)),
        }
    }

    fn read_inline(&mut self, inline: &InlineExpression<&str>) {
        match inline {
            InlineExpression::StringLiteral { value } => self.pieces.push((*value).to_owned()),
            InlineExpression::MessageReference { id, .. } => self.held.push(id.name.to_owned()),
            InlineExpression::Placeable { expression } => self.read_expression(expression),
            _ => {}
        }
    }

    fn words(&self) -> Vec<String> {
        self.pieces.iter().flat_map(|piece| words(piece).into_iter().chain([String::new()])).collect()
    }
}

/// The words of a text, in lower case; what is joined by a hyphen or an apostrophe is several.
fn words(text: &str) -> Vec<String> {
    let lower = text.to_lowercase();
    lower.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty()).map(str::to_owned).collect()
}

/// The numbers of a text, with a point for decimals.
fn numbers(text: &str) -> BTreeSet<String> {
    let letters: Vec<char> = text.chars().collect();
    let (mut numbers, mut number) = (BTreeSet::new(), String::new());
    for (index, letter) in letters.iter().enumerate() {
        let next_is_digit = letters.get(index + 1).is_some_and(char::is_ascii_digit);
        match letter {
            digit if digit.is_ascii_digit() => number.push(*digit),
            '.' | ',' if !number.is_empty() && next_is_digit => number.push('.'),
            _ => numbers.extend((!number.is_empty()).then(|| std::mem::take(&mut number))),
        }
    }
    numbers.extend((!number.is_empty()).then_some(number));
    numbers
}

/// The messages of some text, with their attributes: `cure-wet`, `Role-exit.description`.
fn messages(text: &str) -> BTreeMap<String, Text> {
    let resource = parse(text).unwrap_or_else(|(_, errors)| panic!("{errors:?}"));
    let mut messages = BTreeMap::new();
    for entry in &resource.body {
        let Entry::Message(message) = entry else { continue };
        let id = message.id.name;
        messages.extend(message.value.as_ref().map(|pattern| (id.to_owned(), Text::of(pattern))));
        for attribute in &message.attributes {
            messages.insert(format!("{id}.{}", attribute.id.name), Text::of(&attribute.value));
        }
    }
    messages
}

/// The sentences of a language, by id.
fn sentences(language: Language) -> BTreeMap<String, Text> {
    ftl_files(language).values().flat_map(|text| messages(text)).collect()
}

/// The labels and descriptions of closed lists in a language, by id; English has them in the code.
fn members(language: Language) -> BTreeMap<String, Text> {
    let folder = Path::new(ROOT).join("src/wording").join(language.tag()).join("members");
    let Ok(files) = std::fs::read_dir(folder) else { return BTreeMap::new() };
    files.flat_map(|file| messages(&std::fs::read_to_string(file.unwrap().path()).unwrap())).collect()
}

/// The words of those labels and descriptions in English, by the same ids.
fn english_members() -> BTreeMap<String, Vec<String>> {
    let of_member = |(id, said): (String, Words)| {
        [(format!("{id}.description"), words(&said.description)), (id, words(&said.label))]
    };
    super::members::members().into_iter().flat_map(of_member).collect()
}

fn translations() -> impl Iterator<Item = Language> {
    Language::ALL.iter().copied().filter(|language| *language != Language::English)
}

/// What of the API a text holds.
fn identifiers(text: &str) -> Vec<String> {
    let of_api = |word: &&str| {
        let is_name = |part: &str| part.len() > 2 && part.bytes().all(|byte| byte.is_ascii_lowercase() || byte == b'_');
        let is_dotted = word.split_once('.').is_some_and(|(noun, field)| is_name(noun) && is_name(field));
        word.contains('_') || is_dotted
    };
    let names = text.split(|letter: char| !(letter.is_alphanumeric() || "_./".contains(letter)));
    let names = names.map(|word| word.trim_end_matches('.')).filter(of_api);
    let paths = PATHS.into_iter().filter(|path| text.contains(path));
    names.chain(paths).map(str::to_owned).collect()
}

/// A row of the glossary: the terms of each language.
struct Row {
    english: Vec<String>,
    spanish: Vec<String>,
    french: Vec<String>,
}

impl Row {
    fn terms(&self, language: Language) -> &[String] {
        match language {
            Language::English => &self.english,
            Language::Spanish => &self.spanish,
            Language::French => &self.french,
        }
    }
}

/// The terms that translations are held to.
fn glossary() -> Vec<Row> {
    let text = std::fs::read_to_string(Path::new(ROOT).join("src/wording/GLOSSARY.md")).unwrap();
    let (_, table) = text.split_once("## Terms that a test holds").unwrap();
    let (table, _) = table.split_once("\n## ").unwrap();
    let rows = table.lines().filter(|line| line.starts_with("| ")).skip(1);
    let terms = |cell: &str| cell.split(';').map(|term| term.trim().to_owned()).collect();
    rows.map(|line| match line.trim_matches('|').split('|').collect::<Vec<_>>().as_slice() {
        [english, spanish, french] => Row { english: terms(english), spanish: terms(spanish), french: terms(french) },
        _ => panic!("{line} has not three cells"),
    })
    .collect()
}

/// Whether an English text holds a term, or its plural. What is done "in turn" is no turn of wire.
fn holds_english(text: &[String], term: &str) -> bool {
    let term = words(term);
    let is_plural = |word: &str, last: &str| word.strip_prefix(last).is_some_and(|end| ["", "s", "es"].contains(&end));
    let (last, first) = term.split_last().unwrap();
    text.windows(term.len()).enumerate().any(|(index, window)| {
        let before = index.checked_sub(1).map_or("", |before| text[before].as_str());
        window[..first.len()] == *first && is_plural(&window[first.len()], last) && !(last == "turn" && before == "in")
    })
}

/// Whether a translation holds a term in any form: each of its longer words by its beginning.
fn holds_translated(text: &[String], term: &str) -> bool {
    let stem = |word: &String| word.chars().take((word.chars().count() - 2).max(4)).collect::<String>();
    let stems = words(term).iter().filter(|word| word.chars().count() > 3).map(stem).collect::<Vec<_>>();
    stems.iter().all(|stem| text.iter().any(|word| word.starts_with(stem.as_str())))
}

/// The words of a sentence and of all that it holds.
fn all_words(id: &str, sentences: &BTreeMap<String, Text>) -> Vec<String> {
    let Some(text) = sentences.get(id) else { return Vec::new() };
    text.held.iter().flat_map(|held| all_words(held, sentences)).chain(text.words()).collect()
}

#[test]
fn no_sentence_holds_a_name_of_the_api() {
    let mut faults = Vec::new();
    for language in Language::ALL {
        for (id, text) in sentences(*language).into_iter().chain(members(*language)) {
            let found: Vec<_> = text.pieces.iter().flat_map(|piece| identifiers(piece)).collect();
            let is_fault = !found.is_empty() && !OF_PROGRAMS.contains(&id.as_str());
            faults.extend(is_fault.then(|| format!("{id} of {}: {found:?}", language.tag())));
        }
    }
    assert!(faults.is_empty(), "{} sentences hold names of the API: {faults:#?}", faults.len());
}

#[test]
fn a_translation_holds_the_numbers_of_the_english_sentence() {
    let english = sentences(Language::English);
    let mut faults = Vec::new();
    for language in translations() {
        for (id, text) in sentences(language) {
            let (own, meant) = (numbers(&text.pieces.join(" ")), numbers(&english[&id].pieces.join(" ")));
            faults.extend((own != meant).then(|| format!("{id} of {}: {own:?}, not {meant:?}", language.tag())));
        }
    }
    assert!(faults.is_empty(), "{} sentences hold other numbers: {faults:#?}", faults.len());
}

#[test]
fn a_translation_is_not_the_english_sentence() {
    let english = sentences(Language::English);
    let mut faults = Vec::new();
    for language in translations() {
        let own = sentences(language);
        let is_english = |id: &&String| {
            let words: Vec<_> = own[*id].words().into_iter().filter(|word| !word.is_empty()).collect();
            words.len() > 2 && own[*id].pieces == english[*id].pieces
        };
        faults.extend(own.keys().filter(is_english).map(|id| format!("{id} of {}", language.tag())));
    }
    assert!(faults.is_empty(), "{} sentences are not translated: {faults:#?}", faults.len());
}

#[test]
fn a_translation_holds_the_terms_of_the_glossary() {
    let (rows, english, said) = (glossary(), sentences(Language::English), english_members());
    assert!(rows.len() > 25, "only {} terms were read", rows.len());
    let (mut faults, mut found, mut excused) = (Vec::new(), 0, BTreeSet::new());
    for language in translations() {
        let (own, own_members) = (sentences(language), members(language));
        let of_sentences = english.iter().map(|(id, text)| (id, text.words(), all_words(id, &own)));
        let of_members = said.iter().map(|(id, words)| (id, words.clone(), all_words(id, &own_members)));
        for (id, said, own) in of_sentences.chain(of_members) {
            for row in &rows {
                let Some(term) = row.english.iter().find(|term| holds_english(&said, term)) else { continue };
                found += 1;
                if row.terms(language).iter().any(|term| holds_translated(&own, term)) {
                    continue;
                }
                match OTHER_WORDS.iter().find(|other| **other == (id.as_str(), row.english[0].as_str())) {
                    Some(other) => {
                        excused.insert(*other);
                    }
                    None => faults.push(format!("{id} of {}: {term}", language.tag())),
                }
            }
        }
    }
    assert!(found > 500, "only {found} terms were found");
    assert!(faults.is_empty(), "{} terms are missing: {faults:#?}", faults.len());
    let needless: Vec<_> = OTHER_WORDS.iter().filter(|other| !excused.contains(other)).collect();
    assert!(needless.is_empty(), "no sentence needs {needless:?}");
}

#[test]
fn the_readers_of_translations_find_what_they_look_for() {
    assert_eq!(identifiers("Send in_slot, or weather.location."), ["in_slot", "weather.location"]);
    assert_eq!(identifiers("Ask loop-sizing. Wait 3.5 h, e.g. at noon."), ["loop-sizing"]);
    assert_eq!(numbers("De 0,3 a 12 m (10 por 3/16)."), ["0.3", "10", "12", "16", "3"].map(str::to_owned).into());
    let text = words("Two turns of the lead-in's loops, each in turn");
    assert!(holds_english(&text, "turn") && holds_english(&text, "lead-in") && holds_english(&text, "loop"));
    assert!(!holds_english(&words("they come in turn"), "turn") && !holds_english(&text, "slot"));
    let text = words("L'inductance des vantaux, au fond de joints");
    assert!(holds_translated(&text, "inductance") && holds_translated(&text, "fond de joint"));
    assert!(!holds_translated(&text, "vantail coulissant"));
    let held = messages("a = { $x ->\n    [one] one { b }\n   *[other] more\n}\nb = slot\n    .description = a loop\n");
    assert_eq!(held.keys().collect::<Vec<_>>(), ["a", "b", "b.description"]);
    assert_eq!(
        all_words("a", &held).into_iter().filter(|word| !word.is_empty()).collect::<Vec<_>>(),
        ["slot", "one", "more"]
    );
}
