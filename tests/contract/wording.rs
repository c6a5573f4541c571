//! Sentences and statements belong together: every statement has its sentence in every language, every sentence is said by some
//! statement, and holds nothing that the statement does not.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};
use fluent_syntax::parser::parse;
use loopwright::wording::Language;

use super::source::{ROOT, code, files};

/// What one message of a file holds.
#[derive(Default)]
struct Sentence {
    /// The file, without its ending: `characteristics`.
    theme: String,
    /// Its variables, without the `$`.
    variables: BTreeSet<String>,
    /// The messages that it holds.
    messages: BTreeSet<String>,
    /// What no sentence may hold.
    faults: Vec<String>,
}

impl Sentence {
    fn of(theme: &str, pattern: &Pattern<&str>) -> Self {
        let mut sentence = Self { theme: theme.to_owned(), ..Self::default() };
        sentence.read(pattern);
        sentence
    }

    fn read(&mut self, pattern: &Pattern<&str>) {
        for element in &pattern.elements {
            match element {
                PatternElement::TextElement { value } if value.contains('\n') => {
                    self.faults.push(format!("a line break: {value:?}"));
                }
                PatternElement::TextElement { value } if value.contains("  ") => {
                    self.faults.push(format!("two spaces: {value:?}"));
                }
                PatternElement::TextElement { .. } => {}
                PatternElement::Placeable { expression } => self.read_expression(expression),
            }
        }
    }

    fn read_expression(&mut self, expression: &Expression<&str>) {
        match expression {
            Expression::Inline(inline) => self.read_inline(inline),
            Expression::Select { selector, variants } => {
                self.read_inline(selector);
                for variant in variants {
                    self.read(&variant.value);
                }
            }
        }
    }

    fn read_inline(&mut self, inline: &InlineExpression<&str>) {
        match inline {
            InlineExpression::VariableReference { id } => self.variables.extend([id.name.to_owned()]),
            InlineExpression::MessageReference { id, attribute: None } => {
                self.messages.extend([id.name.to_owned()]);
            }
            InlineExpression::Placeable { expression } => self.read_expression(expression),
            InlineExpression::StringLiteral { .. } | InlineExpression::TermReference { .. } => {}
            other => self.faults.push(format!("what no sentence needs: {other:?}")),
        }
    }
}

/// The sentences of a language, by id.
fn sentences(language: Language) -> BTreeMap<String, Sentence> {
    let mut sentences = BTreeMap::new();
    for (theme, text) in ftl_files(language) {
        let resource = parse(text.as_str()).unwrap_or_else(|(_, errors)| panic!("{theme}.ftl: {errors:?}"));
        for entry in &resource.body {
            match entry {
                Entry::Message(message) => {
                    let id = message.id.name.to_owned();
                    let pattern = message.value.as_ref().unwrap_or_else(|| panic!("{id} has no sentence"));
                    assert!(message.attributes.is_empty(), "{id} has attributes, which nobody reads");
                    let known = sentences.insert(id.clone(), Sentence::of(&theme, pattern));
                    assert!(known.is_none(), "{} has {id} twice", language.tag());
                }
                Entry::Junk { content } => panic!("{theme}.ftl: {content}"),
                _ => {}
            }
        }
    }
    sentences
}

/// The files of a language, by name.
pub(super) fn ftl_files(language: Language) -> BTreeMap<String, String> {
    let folder = Path::new(ROOT).join("src/wording").join(language.tag());
    std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.is_file())
        .map(|path| (path.file_stem().unwrap().to_str().unwrap().to_owned(), std::fs::read_to_string(path).unwrap()))
        .collect()
}

/// The ids of the statements in some code. A statement without a literal id could not be found, and is a panic.
fn stated(code: &str) -> Vec<String> {
    code.split("Statement::new(")
        .skip(1)
        .map(|rest| {
            let id = rest.trim_start().strip_prefix('"').and_then(|rest| rest.split('"').next());
            id.unwrap_or_else(|| panic!("no literal id: Statement::new({}", &rest[..rest.len().min(40)])).to_owned()
        })
        // Words that are given have no id.
        .filter(|id| !id.is_empty())
        .collect()
}

/// The ids of all statements of the crate, each with the files that state it.
fn statements() -> BTreeMap<String, Vec<PathBuf>> {
    let mut statements = BTreeMap::<String, Vec<PathBuf>>::new();
    for file in files("src") {
        for id in stated(&code(&file)) {
            statements.entry(id).or_default().push(file.clone());
        }
    }
    assert!(statements.len() > 100, "only {} statements were found", statements.len());
    statements
}

/// The variables of a message, with those of the messages that it holds.
fn all_variables(id: &str, sentences: &BTreeMap<String, Sentence>) -> BTreeSet<String> {
    let Some(sentence) = sentences.get(id) else { return BTreeSet::new() };
    let held = sentence.messages.iter().flat_map(|held| all_variables(held, sentences));
    sentence.variables.iter().cloned().chain(held).collect()
}

#[test]
fn every_statement_has_a_sentence_in_every_language() {
    let statements = statements();
    for language in Language::ALL {
        let sentences = sentences(*language);
        let held = sentences.values().flat_map(|sentence| &sentence.messages);
        let missing: Vec<_> = statements.keys().chain(held).filter(|id| !sentences.contains_key(*id)).collect();
        assert!(missing.is_empty(), "{} has no sentence for {missing:#?}", language.tag());
    }
}

#[test]
fn every_sentence_is_said() {
    let statements = statements();
    for language in Language::ALL {
        let sentences = sentences(*language);
        let held: BTreeSet<_> = sentences.values().flat_map(|sentence| &sentence.messages).collect();
        let silent: Vec<_> =
            sentences.keys().filter(|id| !statements.contains_key(*id) && !held.contains(id)).collect();
        assert!(silent.is_empty(), "nobody says {silent:#?} of {}", language.tag());
    }
}

#[test]
fn every_variable_is_a_fact_of_its_statement() {
    let statements = statements();
    for language in Language::ALL {
        let sentences = sentences(*language);
        for (id, files_of_id) in &statements {
            // A statement may get facts from its neighbours, so the whole folder is searched.
            let folders = files_of_id.iter().map(|file| file.parent().unwrap().strip_prefix(ROOT).unwrap());
            let code: String = folders.flat_map(|folder| files(folder.to_str().unwrap())).map(|f| code(&f)).collect();
            for variable in all_variables(id, &sentences) {
                let (fact, form) = variable.split_once('-').unwrap_or((&variable, ""));
                let place = format!("{id} of {} has ${variable}", language.tag());
                assert!(
                    ["", "number", "code", "label", "description"].contains(&form),
                    "{place}, and no fact has that form"
                );
                assert!(code.contains(&format!("\"{fact}\"")), "{place}, and its statement has no such fact");
            }
        }
    }
}

#[test]
fn every_language_has_the_same_files_with_the_same_sentences() {
    let english = sentences(Language::English);
    for language in Language::ALL {
        let (files, resources) = (ftl_files(*language), language.resources());
        assert_eq!(files.len(), resources.len(), "{} has files that are not read", language.tag());
        let unread: Vec<_> = files.iter().filter(|(_, text)| !resources.contains(&text.as_str())).collect();
        assert!(unread.is_empty(), "{} does not read {unread:?}", language.tag());
        let own = sentences(*language);
        let places = |sentences: &BTreeMap<String, Sentence>| -> Vec<_> {
            sentences.iter().map(|(id, sentence)| (id.clone(), sentence.theme.clone())).collect()
        };
        assert_eq!(places(&own), places(&english), "{}", language.tag());
    }
}

#[test]
fn sentences_are_written_as_agreed() {
    for language in Language::ALL {
        for (id, sentence) in sentences(*language) {
            let place = format!("{id} of {}", language.tag());
            assert!(
                id.starts_with(&format!("{}-", sentence.theme)),
                "{place} does not begin with the name of its file"
            );
            let is_kebab = id.bytes().all(|byte| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b'-');
            assert!(is_kebab, "{place} is not in kebab-case");
            assert!(sentence.faults.is_empty(), "{place} holds {:#?}", sentence.faults);
        }
    }
}

#[test]
fn the_readers_find_what_they_look_for() {
    let code = "let a = Statement::new(\"cure-wet\").count(\"days\", 3);\nStatement::new(\n    \"cure-cold\",\n)";
    assert_eq!(stated(code), ["cure-wet", "cure-cold"]);
    let text = "a = { $days ->\n    [one] { $days } day\n   *[other] { b } on { $rows-number }\n} and\n    more\n";
    let resource = parse(text).unwrap();
    let Entry::Message(message) = &resource.body[0] else { panic!("no message") };
    let sentence = Sentence::of("a", message.value.as_ref().unwrap());
    assert_eq!(sentence.variables, ["days", "rows-number"].map(str::to_owned).into());
    assert_eq!(sentence.messages, ["b".to_owned()].into());
    assert_eq!(sentence.faults.len(), 1, "{:?}", sentence.faults);
}
