//! The sentences of a language, read once and kept for as long as the process runs.

use std::collections::{BTreeSet, HashMap};
use std::sync::LazyLock;

use fluent_bundle::FluentResource;
use fluent_bundle::concurrent::FluentBundle;
use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};
use rustc_hash::FxHashMap;

use super::language::Language;

/// The messages of a language, by id.
type Patterns = HashMap<&'static str, &'static Pattern<&'static str>>;

/// The sentences of a language.
pub struct Catalog {
    /// What the library needs to make text of a pattern.
    pub bundle: FluentBundle<&'static FluentResource>,
    /// Every sentence of every answer is looked up here, and the ids are ours: a hash that nobody can attack would only cost.
    sentences: FxHashMap<&'static str, Sentence>,
    /// The words of members, by the name of their list and their code.
    members: FxHashMap<(&'static str, &'static str), MemberWords>,
}

/// One sentence.
pub enum Sentence {
    /// It always reads the same.
    Fixed(&'static str),
    /// It has variables.
    Variable(&'static Pattern<&'static str>, Vec<Variable>),
}

/// A variable of a sentence: a fact in one of its forms.
pub struct Variable {
    /// As it is written in the sentence, without the `$`.
    pub name: &'static str,
    /// The name of the fact.
    pub fact: &'static str,
    /// Which of its forms.
    pub form: FactForm,
}

/// How a variable shows its fact.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FactForm {
    /// `$low`: in words, a number with its unit.
    Words,
    /// `$low-number`: a number without its unit.
    Number,
    /// `$class-code`: the code of a member, to choose between alternatives.
    Code,
    /// `$class-label`: the name of a member as in a menu.
    Label,
    /// `$step-description`: what a member means, in a sentence.
    Description,
}

impl FactForm {
    /// The form of a suffix.
    pub fn of_suffix(suffix: &str) -> Option<Self> {
        match suffix {
            "number" => Some(Self::Number),
            "code" => Some(Self::Code),
            "label" => Some(Self::Label),
            "description" => Some(Self::Description),
            _ => None,
        }
    }
}

/// The words of a member in a language other than English.
#[derive(Clone, Copy)]
pub struct MemberWords {
    /// The short name.
    pub label: &'static str,
    /// What it means.
    pub description: &'static str,
}

impl Catalog {
    /// The sentences of a language.
    pub fn of(language: Language) -> &'static Self {
        static ENGLISH: LazyLock<Catalog> = LazyLock::new(|| Catalog::read(Language::English));
        static SPANISH: LazyLock<Catalog> = LazyLock::new(|| Catalog::read(Language::Spanish));
        static FRENCH: LazyLock<Catalog> = LazyLock::new(|| Catalog::read(Language::French));
        match language {
            Language::English => &ENGLISH,
            Language::Spanish => &SPANISH,
            Language::French => &FRENCH,
        }
    }

    /// The sentence of an id.
    pub fn sentence(&self, id: &str) -> Option<&Sentence> {
        self.sentences.get(id)
    }

    /// The sentence of an id, with the id for as long as the process runs.
    pub fn entry(&'static self, id: &str) -> Option<(&'static str, &'static Sentence)> {
        self.sentences.get_key_value(id).map(|(id, sentence)| (*id, sentence))
    }

    /// The words of a member of a closed list. What no id of the library can hold, as the space of `14 AWG`, is an underscore there.
    pub fn member(&self, list: &str, code: &str) -> Option<MemberWords> {
        let is_plain = |c: char| c.is_ascii_alphanumeric() || c == '_' || c == '-';
        if code.chars().all(is_plain) {
            return self.members.get(&(list, code)).copied();
        }
        let code = code.replace(|c| !is_plain(c), "_");
        self.members.get(&(list, &*code)).copied()
    }

    /// Reads the files of a language. What is wrong with one is left out; tests find that.
    fn read(language: Language) -> Self {
        let mut bundle = FluentBundle::new_concurrent(vec![language.tag().parse().unwrap_or_default()]);
        // The marks round variables are for mixed directions of writing, and would be part of the answers.
        bundle.set_use_isolating(false);
        let mut patterns = Patterns::new();
        for text in language.resources() {
            let resource = read_resource(text, language);
            patterns.extend(resource.entries().filter_map(|entry| match entry {
                Entry::Message(message) => Some((message.id.name, message.value.as_ref()?)),
                _ => None,
            }));
            let added = bundle.add_resource(resource);
            debug_assert!(added.is_ok(), "{}: {added:?}", language.tag());
        }
        let sentences = patterns.iter().map(|(id, pattern)| (*id, Sentence::of(pattern, &patterns))).collect();
        let members = language.members().iter().flat_map(|text| read_resource(text, language).entries());
        Self { bundle, sentences, members: members.filter_map(read_member).collect() }
    }
}

/// Reads a file, for as long as the process runs: sentences point into it.
fn read_resource(text: &str, language: Language) -> &'static FluentResource {
    let resource = FluentResource::try_new(text.to_owned()).unwrap_or_else(|(resource, errors)| {
        debug_assert!(false, "{}: {errors:?}", language.tag());
        resource
    });
    Box::leak(Box::new(resource))
}

/// A member of a closed list: `List-code`, with its description as an attribute.
fn read_member(entry: &'static Entry<&'static str>) -> Option<((&'static str, &'static str), MemberWords)> {
    let Entry::Message(message) = entry else { return None };
    let description = message.attributes.iter().find(|attribute| attribute.id.name == "description")?;
    let words = MemberWords { label: plain(message.value.as_ref()?)?, description: plain(&description.value)? };
    Some((message.id.name.split_once('-')?, words))
}

/// A text without anything to fill in.
fn plain(pattern: &Pattern<&'static str>) -> Option<&'static str> {
    match pattern.elements.as_slice() {
        [PatternElement::TextElement { value }] => Some(value),
        _ => None,
    }
}

impl Sentence {
    fn of(pattern: &'static Pattern<&'static str>, patterns: &Patterns) -> Self {
        if let [PatternElement::TextElement { value }] = pattern.elements.as_slice() {
            return Self::Fixed(value);
        }
        let mut names = BTreeSet::new();
        collect_variables(pattern, patterns, &mut names);
        Self::Variable(pattern, names.into_iter().map(Variable::of).collect())
    }
}

impl Variable {
    fn of(name: &'static str) -> Self {
        let (fact, form) = name.split_once('-').map_or((name, FactForm::Words), |(fact, form)| {
            let form = FactForm::of_suffix(form);
            debug_assert!(form.is_some(), "no fact has the form of ${name}");
            (fact, form.unwrap_or(FactForm::Words))
        });
        Self { name, fact, form }
    }
}

/// The names of all variables of a pattern, in alternatives and in the messages that it holds too.
fn collect_variables(pattern: &'static Pattern<&'static str>, patterns: &Patterns, names: &mut BTreeSet<&'static str>) {
    for element in &pattern.elements {
        if let PatternElement::Placeable { expression } = element {
            collect_from_expression(expression, patterns, names);
        }
    }
}

fn collect_from_expression(
    expression: &'static Expression<&'static str>,
    patterns: &Patterns,
    names: &mut BTreeSet<&'static str>,
) {
    match expression {
        Expression::Inline(inline) => collect_from_inline(inline, patterns, names),
        Expression::Select { selector, variants } => {
            collect_from_inline(selector, patterns, names);
            for variant in variants {
                collect_variables(&variant.value, patterns, names);
            }
        }
    }
}

fn collect_from_inline(
    inline: &'static InlineExpression<&'static str>,
    patterns: &Patterns,
    names: &mut BTreeSet<&'static str>,
) {
    match inline {
        InlineExpression::VariableReference { id } => names.extend([id.name]),
        InlineExpression::Placeable { expression } => collect_from_expression(expression, patterns, names),
        InlineExpression::MessageReference { id, .. } => {
            if let Some(pattern) = patterns.get(id.name) {
                collect_variables(pattern, patterns, names);
            }
        }
        // A term sees no variables, and there are no functions.
        InlineExpression::TermReference { .. }
        | InlineExpression::FunctionReference { .. }
        | InlineExpression::StringLiteral { .. }
        | InlineExpression::NumberLiteral { .. } => {}
    }
}
