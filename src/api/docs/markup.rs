//! The pages of the documentation as HTML: the list of all operations, and a page for each.

use maud::{Markup, PreEscaped, html};
use serde_json::Value;

use super::content::{self, Content, Operation, Status};
use super::fields::{FieldTables, described};
use crate::calculation::report::Statement;
use crate::wording::{Language, say};

/// The media type of the pages.
pub const HTML: &str = "text/html; charset=utf-8";

/// Ends the addresses of files that are kept for a year.
const RELEASE: &str = concat!("?v=", env!("CARGO_PKG_VERSION"));

/// The list of all operations, by group. What is in one is loaded when it is opened.
pub fn list(content: &Content, language: Language) -> String {
    let words = Words(language);
    let groups = content.groups.iter().map(|group| {
        let own: Vec<_> = content.operations.iter().filter(|operation| operation.group() == group).collect();
        html! {
            section {
                h2 { (words.group(group)) }
                @for operation in own { (entry(operation, words)) }
            }
        }
    });
    let groups: Vec<_> = groups.collect();
    let main = html! {
        h1 { (words.say(&Statement::new("docs-title"))) }
        p { (words.say(&Statement::new("docs-lead"))) }
        div.filter hidden {
            label for="filter" { (words.say(&Statement::new("docs-filter"))) }
            input id="filter" type="search" autocomplete="off" spellcheck="false" aria-describedby="filter-hint";
            span { (words.say(&Statement::new("docs-shown"))) " " output id="shown" for="filter" { (content.operations.len()) } }
            small id="filter-hint" { (words.say(&Statement::new("docs-filter-hint"))) }
        }
        p id="nothing" hidden { (words.say(&Statement::new("docs-nothing-fits"))) }
        @for group in &groups { (group) }
    };
    page(&words.say(&Statement::new("docs-title")), words, &main)
}

/// The page of one operation; the list shows what stands in its article.
pub fn operation(content: &Content, operation: &Operation, language: Language) -> String {
    let words = Words(language);
    let mut tables = FieldTables::new(&content.schemas, &operation.anchor, language);
    let parameters = parameters(operation, &mut tables, words);
    let mut fields = |schema: Option<&Value>| schema.map(|schema| tables.of(schema).into_string()).unwrap_or_default();
    let request_fields = fields(operation.request().map(|body| &body["schema"]));
    let answer_fields = fields(operation.answer().map(|(_, body)| &body["schema"]));
    let main = html! {
        p { a href="./" { (words.say(&Statement::new("docs-all"))) } }
        h1 id=(operation.anchor) { (title(operation)) }
        article {
            p.links {
                a href=(format!("try/#/{}/{}", operation.group(), operation.text("operationId"))) { (words.say(&Statement::new("docs-try"))) }
            }
            div lang="en" { (described(operation.text("description"))) }
            (parameters)
            (request(operation, words))
            (answer(operation, words))
            @if !request_fields.is_empty() {
                h3 { (words.say(&Statement::new("docs-fields"))) }
                (PreEscaped(request_fields))
            }
            @if !answer_fields.is_empty() {
                h3 { (words.say(&Statement::new("docs-answer-fields"))) }
                (PreEscaped(answer_fields))
            }
            h3 { (words.say(&Statement::new("docs-statuses"))) }
            (statuses(operation, words))
        }
    };
    page(operation.text("summary"), words, &main)
}

/// The words of pages in a language.
#[derive(Clone, Copy)]
struct Words(Language);

impl Words {
    fn say(self, statement: &Statement) -> String {
        say(statement, self.0).into_owned()
    }

    /// The heading of a group.
    fn group(self, name: &str) -> String {
        let groups = ["calculations", "drawings", "reference"];
        let group = groups.into_iter().find(|known| *known == name).unwrap_or("service");
        self.say(&Statement::new("docs-group").code("group", group))
    }
}

fn page(title: &str, words: Words, main: &Markup) -> String {
    let html = html! {
        (PreEscaped("<!doctype html>"))
        html lang=(words.0.tag()) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width";
                meta name="color-scheme" content="light dark";
                title { (title) " · Loopwright" }
                link rel="icon" href=(format!("icon.svg{RELEASE}"));
                link rel="stylesheet" href=(format!("index.css{RELEASE}"));
                script defer src=(format!("page.js{RELEASE}")) {}
            }
            body {
                a.skip href="#main" { (words.say(&Statement::new("docs-skip"))) }
                nav aria-label=(words.say(&Statement::new("docs-pages"))) {
                    a href="guide" { (words.say(&Statement::new("docs-guide"))) }
                    a href="../changes" { (words.say(&Statement::new("docs-changes"))) }
                    a href="try/" { (words.say(&Statement::new("docs-try"))) }
                    a href="../openapi.json" { (words.say(&Statement::new("docs-description"))) }
                    a href="../openapi-compact.json" { (words.say(&Statement::new("docs-compact-description"))) }
                }
                main id="main" tabindex="-1" { (main) }
            }
        }
    };
    html.into_string()
}

/// An operation in the list.
fn entry(operation: &Operation, words: Words) -> Markup {
    html! {
        details id=(operation.anchor) data-operation=(operation.text("operationId")) {
            summary { (title(operation)) }
            div {
                a.more href=(operation.anchor) { (words.say(&Statement::new("docs-more"))) }
                p hidden { (words.say(&Statement::new("docs-not-loaded"))) }
            }
        }
    }
}

fn title(operation: &Operation) -> Markup {
    html! {
        b { (operation.method) } " " code { (operation.path) } " "
        span lang="en" { (operation.text("summary")) }
    }
}

fn parameters(operation: &Operation, tables: &mut FieldTables, words: Words) -> Markup {
    let parameters = operation.parameters();
    if parameters.is_empty() {
        return html! {};
    }
    let rows = parameters.iter().map(|parameter| {
        let is_required = parameter["required"] == true;
        let meaning = content::text(parameter, "description");
        (content::text(parameter, "name"), is_required, &parameter["schema"], meaning)
    });
    let table = tables.rows(rows);
    let query = operation.query();
    html! {
        h3 { (words.say(&Statement::new("docs-parameters"))) }
        @if !query.is_empty() { (code_block(&format!("{} {}?{query}", operation.method, operation.path))) }
        (table)
        (tables.of(&Value::Null))
    }
}

fn request(operation: &Operation, words: Words) -> Markup {
    let Some(body) = operation.request() else { return html! {} };
    let head = format!("{} {}\ncontent-type: application/json\n\n", operation.method, operation.path);
    let examples = content::examples(body);
    html! {
        h3 { (words.say(&Statement::new("docs-request"))) }
        div lang="en" { (described(operation.request_text())) }
        @for (at, (shows, example)) in examples.iter().enumerate() {
            @if at == 0 {
                p lang="en" { (shows) }
                (code_block(&format!("{head}{}", pretty(example))))
            } @else {
                details { summary lang="en" { (shows) } (code_block(&format!("{head}{}", pretty(example)))) }
            }
        }
    }
}

fn answer(operation: &Operation, words: Words) -> Markup {
    let Some((media_type, body)) = operation.answer() else { return html! {} };
    let example = content::examples(body).into_iter().next();
    html! {
        h3 { (words.say(&Statement::new("docs-answer"))) }
        p { code { (media_type) } }
        @if let Some((shows, example)) = example {
            p lang="en" { (shows) }
            (code_block(&pretty(example)))
        }
        @if let Some(file) = &operation.file {
            @if file.is_picture { p { img src=(file.name) alt=(words.say(&Statement::new("docs-picture"))); } }
            @if let Some(text) = &file.text { (code_block(text)) }
            p { a href=(file.name) { (words.say(&Statement::new("docs-answer-file"))) } }
        }
    }
}

fn statuses(operation: &Operation, words: Words) -> Markup {
    html! {
        table.statuses {
            thead {
                tr {
                    th scope="col" { (words.say(&Statement::new("docs-status"))) }
                    th scope="col" { (words.say(&Statement::new("docs-meaning"))) }
                }
            }
            tbody {
                @for Status { number, meaning, problems } in operation.statuses() {
                    tr {
                        th scope="row" { (number) }
                        td lang="en" {
                            @if problems.is_empty() { (described(meaning)) }
                            @for (at, (code, label)) in problems.iter().enumerate() {
                                @if at > 0 { br; }
                                a href=(format!("../problems/{}", code.replace('_', "-"))) { (label) } " " code { (code) }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// Text as it is, which a reader without a mouse can scroll.
fn code_block(text: &str) -> Markup {
    html! { pre tabindex="0" { code { (text) } } }
}

fn pretty(example: &Value) -> String {
    serde_json::to_string_pretty(example).unwrap_or_default()
}
