//! The `arsenalfit` program: everything is in the library.

use std::process::ExitCode;

/// Runs the command line. A panic is our fault and says so with exit code 3.
fn main() -> ExitCode {
    std::panic::catch_unwind(|| arsenalfit::cli::run(std::env::args_os())).unwrap_or(ExitCode::from(3))
}
