//! What the pages of the documentation show: the operations of the description, and answers to examples that it does not hold.

use serde_json::{Map, Value};

use super::example_files::{self, ExampleFile};
use crate::api::description;
use crate::api::response_body::CachedDocument;
use crate::drawing;

/// The operations, in the order of the description, and all schemas.
pub struct Content {
    /// Every operation.
    pub operations: Vec<Operation>,
    /// The names of the groups of operations, in order.
    pub groups: Vec<String>,
    /// The schemas by name.
    pub schemas: Map<String, Value>,
}

/// One operation.
pub struct Operation {
    /// The name of its page and of its place in the list: `loop-sizing`.
    pub anchor: String,
    /// Its method, in capitals.
    pub method: String,
    /// Its path.
    pub path: String,
    /// The answer to its first example, where that is no JSON.
    pub file: Option<AnswerFile>,
    /// The rest, as in the description.
    value: Value,
}

/// A status that an operation may answer with.
pub struct Status<'a> {
    /// Its number.
    pub number: &'a str,
    /// What is said about it.
    pub meaning: &'a str,
    /// The problems that it may be, by code and name.
    pub problems: Vec<(&'a str, &'a str)>,
}

/// The answer to an example, as a file.
pub struct AnswerFile {
    /// Its name.
    pub name: String,
    /// Whether it is to be looked at.
    pub is_picture: bool,
    /// Its text where it is to be read.
    pub text: Option<String>,
    /// The answer that is this file.
    pub document: CachedDocument,
}

impl Content {
    /// Reads the description. It is the same wherever this instance is reached. Computes the answers of all examples.
    pub fn read() -> Self {
        let mut description = description::build("");
        let mut take = |place: &str| description.pointer_mut(place).map(Value::take).unwrap_or_default();
        let (paths, schemas, tags) = (take("/paths"), take("/components/schemas"), take("/tags"));
        let groups = tags.as_array().into_iter().flatten().map(|tag| text(tag, "name").to_owned()).collect();
        let mut files = example_files::all();
        let mut operations = Vec::new();
        for (path, item) in members(paths) {
            let methods = members(item);
            let count = methods.len();
            for (method, mut value) in methods {
                keep_first_answer(&mut value);
                let anchor = anchor_of(&path, &method, count);
                let file = take_file(&mut files, &path, &method, &value).map(|file| AnswerFile::new(&anchor, file));
                operations.push(Operation { anchor, method: method.to_uppercase(), path: path.clone(), file, value });
            }
        }
        Self { operations, groups, schemas: members(schemas) }
    }

    /// A file by its name.
    pub fn file(&self, name: &str) -> Option<&AnswerFile> {
        self.operations.iter().filter_map(|operation| operation.file.as_ref()).find(|file| file.name == name)
    }
}

impl Operation {
    /// A text of it: `summary`, `description`, `operationId`.
    pub fn text(&self, name: &str) -> &str {
        text(&self.value, name)
    }

    /// Its group.
    pub fn group(&self) -> &str {
        self.value["tags"][0].as_str().unwrap_or_default()
    }

    /// Its parameters.
    pub fn parameters(&self) -> &[Value] {
        self.value["parameters"].as_array().map_or(&[], Vec::as_slice)
    }

    /// What a link of it asks for: its parameters with an example.
    pub fn query(&self) -> String {
        let asked = self.parameters().iter().filter_map(|parameter| {
            let name = parameter["name"].as_str()?;
            Some((name, parameter["example"].as_str()?))
        });
        form_urlencoded::Serializer::new(String::new()).extend_pairs(asked).finish()
    }

    /// The body that it takes, in JSON.
    pub fn request(&self) -> Option<&Value> {
        self.value.pointer("/requestBody/content/application~1json")
    }

    /// What is said about that body.
    pub fn request_text(&self) -> &str {
        self.value.pointer("/requestBody/description").and_then(Value::as_str).unwrap_or_default()
    }

    /// The body that it answers, with its media type.
    pub fn answer(&self) -> Option<(&str, &Value)> {
        let content = self.value.pointer("/responses/200/content")?.as_object()?;
        content.iter().next().map(|(media_type, body)| (media_type.as_str(), body))
    }

    /// Its statuses.
    pub fn statuses(&self) -> Vec<Status<'_>> {
        let responses = self.value["responses"].as_object().into_iter().flatten();
        responses
            .map(|(number, response)| {
                let examples = response.pointer("/content/application~1problem+json/examples");
                let problems = examples.and_then(Value::as_object).into_iter().flatten();
                let problems = problems.map(|(code, example)| (code.as_str(), text(example, "summary"))).collect();
                Status { number, meaning: text(response, "description"), problems }
            })
            .collect()
    }
}

impl AnswerFile {
    fn new(anchor: &str, file: ExampleFile) -> Self {
        let name = format!("{anchor}.{}", file.extension);
        let is_read = file.media_type.starts_with("text/csv");
        Self {
            name,
            is_picture: file.media_type == drawing::MEDIA_TYPE,
            text: is_read.then(|| file.text.clone()),
            document: CachedDocument::new(file.text, file.media_type).packed(),
        }
    }
}

/// The examples of a body, each with what it shows.
pub fn examples(body: &Value) -> Vec<(&str, &Value)> {
    let named = body["examples"].as_object().into_iter().flatten();
    let named = named.map(|(_, example)| (text(example, "summary"), &example["value"]));
    named.chain(body.get("example").map(|example| ("", example))).collect()
}

/// A text of a value; empty when it has none.
pub fn text<'a>(value: &'a Value, name: &str) -> &'a str {
    value[name].as_str().unwrap_or_default()
}

/// The name of an operation in addresses. It follows from its path, so that it stays.
fn anchor_of(path: &str, method: &str, methods: usize) -> String {
    let name = path.trim_start_matches("/v1").trim_start_matches('/').replace(['/', '.'], "-").replace(['{', '}'], "");
    if methods > 1 && method == "get" { format!("{name}-by-link") } else { name }
}

fn take_file(files: &mut Vec<ExampleFile>, path: &str, method: &str, operation: &Value) -> Option<ExampleFile> {
    let known = files.iter().position(|file| file.path == path && file.method == method);
    if let Some(at) = known {
        return Some(files.swap_remove(at));
    }
    let parameters = operation["parameters"].as_array()?;
    let example = |name| parameters.iter().find(|parameter| text(parameter, "name") == name)?["example"].as_str();
    let file = example_files::of_link(example("width")?, example("barrier")?)?;
    (file.path == path).then_some(file)
}

/// Drops what no page shows and most of the description is: the answers to other than the first example.
fn keep_first_answer(operation: &mut Value) {
    let contents = operation.pointer_mut("/responses/200/content").and_then(Value::as_object_mut);
    for body in contents.into_iter().flat_map(Map::values_mut) {
        if let Some(Value::Object(examples)) = body.get_mut("examples") {
            let first = examples.keys().next().cloned();
            examples.retain(|name, _| Some(name) == first.as_ref());
        }
    }
}

fn members(value: Value) -> Map<String, Value> {
    match value {
        Value::Object(members) => members,
        _ => Map::new(),
    }
}
