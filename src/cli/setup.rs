//! What the program says about itself to shells, readers of manuals and editors: completions, manual
//! pages and the schema of a profile. All of it is made from the command line's and the reader's own
//! descriptions.

use std::path::{Path, PathBuf};

use clap::{Command, CommandFactory};
use clap_mangen::Man;

use crate::files::profile_outline;
use crate::report;

use super::Failure;
use super::args::Cli;
use super::args_setup::{CompletionsArgs, ManArgs};
use super::files::{put_all, ready};
use super::outputs::Output;

/// The script for a shell.
pub(super) fn completions(args: &CompletionsArgs) -> String {
    let mut script = Vec::new();
    clap_complete::generate(args.shell, &mut without_hidden(&Cli::command()), "arsenalfit", &mut script);
    String::from_utf8_lossy(&script).into_owned()
}

/// The same command line, of which nothing hidden is completed.
fn without_hidden(whole: &Command) -> Command {
    Command::new("arsenalfit").args(whole.get_arguments()).subcommands(listed(whole))
}

/// The commands that `--help` lists.
fn listed(whole: &Command) -> impl Iterator<Item = &Command> {
    whole.get_subcommands().filter(|command| !command.is_hide_set())
}

/// One manual page, or all of them into a folder.
pub(super) fn man(args: &ManArgs) -> Result<String, Failure> {
    let mut command = Cli::command().disable_help_subcommand(true);
    command.build();
    match (&args.dir, &args.command) {
        (Some(folder), _) => pages(&command, folder, args.force),
        (None, Some(name)) => page(find(&command, name)?),
        (None, None) => page(&command),
    }
}

fn pages(command: &Command, folder: &Path, force: bool) -> Result<String, Failure> {
    std::fs::create_dir_all(folder).map_err(|problem| Failure::unwritten(folder, &problem))?;
    let pages: Vec<(PathBuf, String)> = std::iter::once(command)
        .chain(listed(command))
        .map(|one| Ok((folder.join(Man::new(one.clone()).get_filename()), page(one)?)))
        .collect::<Result<_, Failure>>()?;
    let output = |path| Output { flag: "--dir", path, force };
    put_all(pages.iter().map(|(path, text)| ready(output(path), text)).collect::<Result<_, _>>()?)?;
    let first = folder.join("arsenalfit.1");
    let next = report::command_line(&["man", &first.to_string_lossy()]);
    Ok(format!("Wrote the manual pages.\nNext: {next}\n"))
}

fn page(command: &Command) -> Result<String, Failure> {
    let mut page = Vec::new();
    Man::new(command.clone()).source(concat!("arsenalfit ", env!("CARGO_PKG_VERSION"))).render(&mut page)?;
    Ok(String::from_utf8_lossy(&page).into_owned())
}

fn find<'c>(command: &'c Command, name: &str) -> Result<&'c Command, Failure> {
    command.find_subcommand(name).ok_or_else(|| {
        let names: Vec<&str> = listed(command).map(Command::get_name).collect();
        Failure::request(format!("no command is called {name:?}"), format!("the commands are {}", names.join(", ")))
    })
}

/// What a profile may hold.
pub(super) fn schema() -> String {
    report::schema(&profile_outline())
}
