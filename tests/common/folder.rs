//! A folder of its own for a test that runs the program on files.

/// A temporary folder with copies of shipped files: from where, and under which name.
pub(crate) fn with_copies(files: &[(&str, &str)]) -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a temporary folder");
    for (from, to) in files {
        std::fs::copy(from, folder.path().join(to)).expect("a copy");
    }
    folder
}
