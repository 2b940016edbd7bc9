//! The one direction of the crate, held by reading it: a module uses only modules that stand above
//! it in `src/lib.rs`, and only the edges touch files, terminals or serialisation.

use std::fs;
use std::path::{Path, PathBuf};

/// Modules in the order of `src/lib.rs`.
fn modules() -> Vec<String> {
    let lib = fs::read_to_string("src/lib.rs").expect("src/lib.rs");
    lib.lines().filter_map(|line| line.strip_prefix("pub mod ")?.strip_suffix(';')).map(str::to_owned).collect()
}

fn files_of(module: &str) -> Vec<PathBuf> {
    let single = PathBuf::from(format!("src/{module}.rs"));
    if single.is_file() { vec![single] } else { files_under(Path::new(&format!("src/{module}"))) }
}

fn files_under(folder: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder).unwrap_or_else(|_| panic!("{} is missing", folder.display()));
    let mut files = Vec::new();
    for path in entries.map(|entry| entry.expect("a folder entry").path()) {
        if path.is_dir() {
            files.extend(files_under(&path));
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            files.push(path);
        }
    }
    files
}

/// Modules named after `crate::` in code, with the line they stand on. Comments do not count.
fn uses(file: &Path) -> Vec<(usize, String)> {
    let text = fs::read_to_string(file).expect("a source file");
    let mut found = Vec::new();
    for (number, line) in text.lines().enumerate().filter(|(_, line)| !line.trim_start().starts_with("//")) {
        for part in line.split("crate::").skip(1) {
            let name: String = part.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
            found.push((number + 1, name));
        }
    }
    found
}

#[test]
fn every_module_uses_only_modules_above_it() {
    let modules = modules();
    assert!(modules.len() >= 9, "the list of modules was read: {modules:?}");
    for (rank, module) in modules.iter().enumerate() {
        for file in files_of(module) {
            for (line, used) in uses(&file) {
                let Some(used_rank) = modules.iter().position(|name| *name == used) else {
                    panic!("{}:{line} uses crate::{used}, which is no module of the list", file.display());
                };
                assert!(used_rank <= rank, "{}:{line}: {module} must not use {used}", file.display());
            }
        }
    }
}

#[test]
fn only_the_edges_do_input_and_output() {
    let edges = ["files", "report", "cli"];
    for module in modules().iter().filter(|module| !edges.contains(&module.as_str())) {
        for file in files_of(module) {
            let text = fs::read_to_string(&file).expect("a source file");
            for forbidden in ["std::fs", "std::io", "std::env", "println!", "eprintln!", "serde", "SystemTime"] {
                assert!(!text.contains(forbidden), "{} mentions {forbidden}", file.display());
            }
        }
    }
}

#[test]
fn every_file_opens_with_what_it_is_for() {
    for file in files_under(Path::new("src")) {
        let text = fs::read_to_string(&file).expect("a source file");
        assert!(text.starts_with("//! "), "{} has no opening words", file.display());
        let lines = text.lines().count();
        assert!(lines <= 400, "{} has {lines} lines", file.display());
    }
}
