//! No circles: files that use each other cannot be read one after the other.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use super::source::{ROOT, code, files};

/// The modules of the crate, by path (`api::admission::keys`), each with the code of its file.
struct Tree(BTreeMap<String, String>);

impl Tree {
    fn of_the_crate() -> Self {
        let root = Path::new(ROOT).join("src");
        let named = |file: &std::path::PathBuf| {
            let path = file.strip_prefix(&root).unwrap().with_extension("");
            let parts: Vec<_> = path.iter().map(|part| part.to_str().unwrap()).filter(|part| *part != "mod").collect();
            (parts.join("::"), code(file))
        };
        let all = files("src");
        Self(all.iter().filter(|file| !file.ends_with("lib.rs") && !file.ends_with("main.rs")).map(named).collect())
    }

    /// The file that declares what a path leads to. What a module only hands on with `pub use` is looked up where it stands.
    fn declaring(&self, path: &str) -> Option<String> {
        let parts: Vec<_> = path.split("::").collect();
        let module =
            (1..=parts.len()).rev().map(|length| parts[..length].join("::")).find(|m| self.0.contains_key(m))?;
        let Some(name) = parts.get(module.split("::").count()) else { return Some(module) };
        let handed_on =
            paths(&self.0[&module], true).into_iter().find(|handed| handed.rsplit("::").next() == Some(name));
        handed_on.and_then(|path| self.declaring(&self.absolute(&path, &module)?)).or(Some(module))
    }

    /// A path as written in a module, from the crate's root; `None` where it leads out of the crate.
    fn absolute(&self, path: &str, module: &str) -> Option<String> {
        let mut here: Vec<_> = module.split("::").collect();
        let mut rest: Vec<_> = path.split("::").collect();
        match rest[0] {
            "crate" => here.clear(),
            "self" | "super" => {}
            child if self.0.contains_key(&format!("{module}::{child}")) => return Some(format!("{module}::{path}")),
            _ => return None,
        }
        while let Some("crate" | "self" | "super") = rest.first().copied() {
            if rest.remove(0) == "super" {
                here.pop();
            }
        }
        Some([here, rest].concat().join("::"))
    }

    /// The files that a file uses.
    fn used_by(&self, module: &str) -> BTreeSet<String> {
        let written = paths(&self.0[module], false);
        let used = written.iter().filter_map(|path| self.declaring(&self.absolute(path, module)?));
        used.filter(|used| used != module).collect()
    }

    /// The files on a way from each file back to itself.
    fn circles(&self) -> Vec<String> {
        let uses: BTreeMap<_, _> = self.0.keys().map(|module| (module.clone(), self.used_by(module))).collect();
        let reached = |from: &String| {
            let (mut seen, mut open) = (BTreeSet::new(), vec![from.clone()]);
            while let Some(module) = open.pop() {
                open.extend(uses[&module].iter().filter(|next| seen.insert((*next).clone())).cloned());
            }
            seen
        };
        uses.keys().filter(|module| reached(module).contains(*module)).cloned().collect()
    }
}

/// The paths that code names, groups taken apart: those of `pub use`, or all others.
fn paths(code: &str, handed_on: bool) -> Vec<String> {
    // Tests of a file use what they like of it.
    let code = code.split("#[cfg(test)]\nmod tests").next().unwrap();
    let mut found = Vec::new();
    let (mut plain, mut rest) = (String::new(), code);
    while let Some(start) = rest.find("use ") {
        let (before, statement) = rest.split_at(start);
        let (statement, after) = statement.split_once(';').unwrap_or((statement, ""));
        let line = before.rsplit('\n').next().unwrap().trim();
        plain.push_str(before);
        match line {
            "" if !handed_on => take_apart(&statement["use ".len()..], "", &mut found),
            "pub" | "pub(crate)" | "pub(super)" if handed_on => take_apart(&statement["use ".len()..], "", &mut found),
            "" | "pub" | "pub(crate)" | "pub(super)" => {}
            // Not a statement, but a word within a text.
            _ => plain.push_str(statement),
        }
        rest = after;
    }
    plain.push_str(rest);
    if !handed_on {
        let is_part = |c: char| c.is_alphanumeric() || c == '_' || c == ':';
        found.extend(plain.split(|c| !is_part(c)).filter(|path| path.contains("::")).map(str::to_owned));
    }
    found
}

/// The paths of a `use`: `a::{b, c::{d, e}}` are `a::b`, `a::c::d` and `a::c::e`.
fn take_apart(tree: &str, before: &str, found: &mut Vec<String>) {
    let (mut depth, mut start) = (0, 0);
    for (index, letter) in tree.char_indices().chain([(tree.len(), ',')]) {
        match letter {
            '{' => depth += 1,
            '}' => depth -= 1,
            ',' if depth == 0 => {
                let part = tree[start..index].trim();
                start = index + 1;
                match part.split_once('{') {
                    Some((path, group)) => {
                        take_apart(group.trim_end().trim_end_matches('}'), &format!("{before}{path}"), found);
                    }
                    None if part.is_empty() => {}
                    None => found.push(format!("{before}{}", part.split(" as ").next().unwrap())),
                }
            }
            _ => {}
        }
    }
}

#[test]
fn no_files_use_each_other_in_a_circle() {
    let tree = Tree::of_the_crate();
    let uses = tree.used_by("api::routes");
    assert!(uses.contains("drawing") && uses.len() > 5, "the finder is lost: {uses:?}");
    let circles = tree.circles();
    assert!(circles.is_empty(), "on a circle: {circles:#?}");
}

#[test]
fn the_finder_of_circles_finds_them() {
    let file = |path: &str, code: &str| (path.to_owned(), code.to_owned());
    let tree = Tree(BTreeMap::from([
        file("a", "pub mod b;\npub mod c;\npub use b::Thing;\nuse c::{self, Other};"),
        file("a::b", "use crate::{a::c::Other as Another, d};\nstruct Thing;"),
        file("a::c", "fn of(thing: &super::Thing) {}"),
        file("d", "use std::path::Path;"),
    ]));
    assert_eq!(tree.used_by("a::b"), BTreeSet::from(["a::c".to_owned(), "d".to_owned()]));
    assert_eq!(tree.used_by("a"), BTreeSet::from(["a::c".to_owned()]));
    assert_eq!(tree.circles(), ["a::b", "a::c"]);
}
