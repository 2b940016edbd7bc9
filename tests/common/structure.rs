//! The structure of the sources as their `use` lines tell it: which file uses which. Read as text: paths that begin
//! with `crate::` or `super::`, followed through re-exports to the file that holds the item; tests in a file do not count.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

/// Every source file by its module path; the library itself is the empty path.
pub(crate) struct Sources {
    files: BTreeMap<Vec<String>, Source>,
}

/// One file.
pub(crate) struct Source {
    /// Where it lies.
    pub(crate) path: PathBuf,
    /// Its text without comments and tests.
    pub(crate) code: String,
    /// Its whole text.
    pub(crate) text: String,
    /// What it re-exports: name, path of modules it comes from.
    reexports: Vec<(String, Vec<String>)>,
}

impl Sources {
    /// Reads all of `src/` but `main.rs`.
    pub(crate) fn read() -> Self {
        let mut files = BTreeMap::new();
        for path in files_under(Path::new("src")) {
            let module = module_of(&path);
            if path.ends_with("main.rs") {
                continue;
            }
            let text = fs::read_to_string(&path).expect("a source file");
            let code = code_of(&text);
            files.insert(module, Source { path, code, text, reexports: Vec::new() });
        }
        let mut sources = Self { files };
        let reexports: Vec<_> = sources.files.keys().map(|module| sources.reexports_of(module)).collect();
        for (source, reexports) in sources.files.values_mut().zip(reexports) {
            source.reexports = reexports;
        }
        sources
    }

    /// Every file with its module path.
    pub(crate) fn all(&self) -> impl Iterator<Item = (&Vec<String>, &Source)> {
        self.files.iter()
    }

    /// Which file uses which, by module path.
    pub(crate) fn arrows(&self) -> BTreeSet<(Vec<String>, Vec<String>)> {
        let mut arrows = BTreeSet::new();
        for (module, source) in &self.files {
            for path in paths(&without_reexports(&source.code)) {
                if let Some(used) = self.resolve(module, &path).filter(|used| used != module) {
                    arrows.insert((module.clone(), used));
                }
            }
        }
        arrows
    }

    /// The module that holds what `path` names, as written in `module`.
    fn resolve(&self, module: &[String], path: &[String]) -> Option<Vec<String>> {
        let mut at = match path.first()?.as_str() {
            "crate" => Vec::new(),
            "super" => module[..module.len().checked_sub(1)?].to_vec(),
            "self" => module.to_vec(),
            child => [module, &[child.to_owned()]].concat(),
        };
        if !self.files.contains_key(&at) {
            return None;
        }
        for name in &path[1..] {
            if name == "super" {
                at.pop();
                continue;
            }
            let child = [at.as_slice(), std::slice::from_ref(name)].concat();
            if self.files.contains_key(&child) {
                at = child;
            } else {
                return Some(self.holder(at, name));
            }
        }
        Some(at)
    }

    /// Where `name`, found in `module`, is defined: itself, or where it is re-exported from.
    fn holder(&self, module: Vec<String>, name: &str) -> Vec<String> {
        let from = self.files[&module].reexports.iter().find(|(exported, _)| exported == name);
        match from {
            Some((_, source)) if *source != module => self.holder(source.clone(), name),
            Some(_) | None => module,
        }
    }

    fn reexports_of(&self, module: &[String]) -> Vec<(String, Vec<String>)> {
        let code = &self.files[module].code;
        let statements = code.split(';').filter_map(|part| {
            let part = part.trim_start();
            ["pub use ", "pub(crate) use ", "pub(super) use "].iter().find_map(|start| part.strip_prefix(start))
        });
        let names = statements.flat_map(expand).filter_map(|path| {
            let (name, from) = path.split_last()?;
            Some((name.clone(), self.resolve(module, from)?))
        });
        names.collect()
    }
}

/// Groups of files that use each other in a circle.
pub(crate) fn circles(arrows: &BTreeSet<(Vec<String>, Vec<String>)>) -> Vec<Vec<String>> {
    let mut reach: BTreeMap<&Vec<String>, BTreeSet<&Vec<String>>> = BTreeMap::new();
    for (from, to) in arrows {
        reach.entry(from).or_default().insert(to);
    }
    let reaches = |from: &Vec<String>, goal: &Vec<String>| {
        let (mut seen, mut open) = (BTreeSet::new(), vec![from]);
        while let Some(at) = open.pop() {
            for next in reach.get(at).into_iter().flatten() {
                if *next == goal {
                    return true;
                }
                if seen.insert(*next) {
                    open.push(next);
                }
            }
        }
        false
    };
    reach.keys().filter(|module| reaches(module, module)).map(|module| (*module).clone()).collect()
}

fn files_under(folder: &Path) -> Vec<PathBuf> {
    let mut files = Vec::new();
    for entry in fs::read_dir(folder).expect("a folder of sources") {
        let path = entry.expect("a folder entry").path();
        if path.is_dir() {
            files.extend(files_under(&path));
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            files.push(path);
        }
    }
    files
}

fn module_of(path: &Path) -> Vec<String> {
    let inside = path.strip_prefix("src").expect("under src").with_extension("");
    let parts: Vec<String> = inside.iter().map(|part| part.to_string_lossy().into_owned()).collect();
    parts.into_iter().filter(|part| part != "mod" && part != "lib").collect()
}

/// The code without line comments and without what follows a test module's head.
fn code_of(text: &str) -> String {
    let code = text.split("#[cfg(test)]\nmod ").next().unwrap_or_default();
    let lines = code.lines().map(|line| line.split_once("//").map_or(line, |(before, _)| before));
    lines.collect::<Vec<_>>().join("\n")
}

/// The code without re-exports, which are doors and not uses.
fn without_reexports(code: &str) -> String {
    let is_door = |part: &&str| {
        let part = part.trim_start();
        !(part.starts_with("pub use ") || part.starts_with("pub(crate) use ") || part.starts_with("pub(super) use "))
    };
    code.split_inclusive(';').filter(is_door).collect()
}

/// Every path of `use` statements and of expressions that begins with `crate::`, `super::` or a child module.
fn paths(code: &str) -> Vec<Vec<String>> {
    let used = code.split(';').filter_map(|part| part.rsplit_once("use ").map(|(_, tree)| tree)).flat_map(expand);
    let inline = ["crate::", "super::"].into_iter().flat_map(|root| {
        code.match_indices(root).map(|(start, _)| {
            let path = &code[start..];
            let end = path.find(|c: char| !(c.is_alphanumeric() || c == '_' || c == ':')).unwrap_or(path.len());
            path[..end].split("::").filter(|part| !part.is_empty()).map(str::to_owned).collect::<Vec<_>>()
        })
    });
    used.chain(inline).collect()
}

/// A tree of a `use` statement as single paths.
fn expand(tree: &str) -> Vec<Vec<String>> {
    let tree = tree.trim();
    let Some((head, rest)) = tree.split_once('{') else {
        let path = tree.split(" as ").next().unwrap_or_default();
        return vec![path.split("::").map(|part| part.trim().to_owned()).filter(|part| !part.is_empty()).collect()];
    };
    let Some((inside, _)) = rest.rsplit_once('}') else { return Vec::new() };
    let head: Vec<String> =
        head.split("::").map(|part| part.trim().to_owned()).filter(|part| !part.is_empty()).collect();
    let (mut depth, mut parts, mut part) = (0, Vec::new(), String::new());
    for character in inside.chars() {
        match character {
            '{' => depth += 1,
            '}' => depth -= 1,
            ',' if depth == 0 => {
                parts.push(std::mem::take(&mut part));
                continue;
            }
            _ => {}
        }
        part.push(character);
    }
    parts.push(part);
    parts
        .iter()
        .filter(|part| !part.trim().is_empty())
        .flat_map(|part| expand(part))
        .map(|path| {
            let path: Vec<String> = path.into_iter().filter(|name| name != "self").collect();
            [head.clone(), path].concat()
        })
        .collect()
}
