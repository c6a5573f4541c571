//! The Rust files of the repository, and their code without comments.

use std::path::{Path, PathBuf};

pub const ROOT: &str = env!("CARGO_MANIFEST_DIR");

/// The Rust files of a folder, or of a module that is one file.
pub fn files(module: &str) -> Vec<PathBuf> {
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
    let folder = Path::new(ROOT).join(module);
    if !folder.is_dir() {
        return vec![folder.with_extension("rs")];
    }
    let mut files = Vec::new();
    walk(&folder, &mut files);
    files
}

/// The text of a file, without its comments: they may name other modules.
pub fn code(file: &Path) -> String {
    let text = std::fs::read_to_string(file).unwrap();
    text.lines().filter(|line| !line.trim_start().starts_with("//")).collect::<Vec<_>>().join("\n")
}
