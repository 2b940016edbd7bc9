//! Lines of a shell as a reader would type them, in a folder of their own with the shipped profiles
//! and demo data.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use tempfile::TempDir;

/// A folder like a fresh clone's, and the home of whoever types there.
pub(crate) struct Place(TempDir);

impl Place {
    pub(crate) fn new() -> Self {
        let folder = tempfile::tempdir().expect("a temporary folder");
        for shipped in ["profiles", "demo-data"] {
            let copy = folder.path().join(shipped);
            fs::create_dir(&copy).expect("a folder");
            for file in fs::read_dir(shipped).expect("part of the repository").map(|entry| entry.expect("an entry")) {
                fs::copy(file.path(), copy.join(file.file_name())).expect("a copy");
            }
        }
        Self(folder)
    }

    pub(crate) fn path(&self) -> &Path {
        self.0.path()
    }

    /// Runs a line in bash and holds it to the exit code that it tells, 0 when it tells none: a
    /// comment `# exits with 1` at its end.
    pub(crate) fn run(&self, line: &str) -> Output {
        let expected = line.split("# exits with ").nth(1).map_or(0, |code| code.trim().parse().expect("an exit code"));
        let path = format!("{}:{}", programs().display(), std::env::var("PATH").unwrap_or_default());
        let mut bash = Command::new("bash");
        bash.args(["-euo", "pipefail", "-c", line]).current_dir(self.path());
        let output = bash.env("PATH", path).env("HOME", self.path()).output().expect("bash runs");
        let complaint = String::from_utf8_lossy(&output.stderr);
        assert_eq!(output.status.code(), Some(expected), "{line}\n{complaint}");
        assert!(!complaint.contains("panicked"), "{line}\n{complaint}");
        output
    }
}

/// Where the program under test lies.
fn programs() -> PathBuf {
    assert_cmd::cargo::cargo_bin("arsenalfit").parent().expect("a folder").to_owned()
}

/// The lines of a block, those continued with a backslash made one, without their indentation.
pub(crate) fn lines_of(block: &str) -> Vec<String> {
    let whole = block.replace("\\\n", " ");
    whole.lines().map(str::trim).filter(|line| !line.is_empty()).map(str::to_owned).collect()
}
