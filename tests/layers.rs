//! The structure of the crate, held by reading it: rooms have one direction, files no circles, only the edges touch
//! files, terminals or serialisation, and the picture in DEVELOPERS.md is the true one.

#[path = "common/structure.rs"]
mod structure;

use std::collections::BTreeSet;
use std::fs;

use structure::{Sources, circles};

/// Rooms in the order of `src/lib.rs`.
fn rooms() -> Vec<String> {
    let lib = fs::read_to_string("src/lib.rs").expect("src/lib.rs");
    lib.lines().filter_map(|line| line.strip_prefix("pub mod ")?.strip_suffix(';')).map(str::to_owned).collect()
}

/// Which room uses which.
fn room_arrows(sources: &Sources) -> BTreeSet<(String, String)> {
    let room = |module: &Vec<String>| module.first().cloned();
    let between = |(from, to): (Vec<String>, Vec<String>)| Some((room(&from)?, room(&to)?));
    sources.arrows().into_iter().filter_map(between).filter(|(from, to)| from != to).collect()
}

#[test]
fn every_room_uses_only_rooms_above_it() {
    let rooms = rooms();
    assert!((9..=11).contains(&rooms.len()), "the list of rooms was read: {rooms:?}");
    let rank = |room: &String| rooms.iter().position(|name| name == room);
    let arrows = room_arrows(&Sources::read());
    let up: Vec<_> = arrows.iter().filter(|(from, to)| rank(to) > rank(from)).collect();
    assert!(up.is_empty(), "a room uses one below it: {up:?}");
    assert!(arrows.len() > 20, "the arrows were read: {arrows:?}");
    assert!(arrows.len() <= 70, "{} arrows between rooms", arrows.len());
}

/// Files that use each other and are still to be parted; the list may only grow shorter.
const STILL_IN_CIRCLES: [&str; 25] = [
    "ball::family",
    "ball::usual",
    "cli::args",
    "cli::args_follow",
    "cli::args_levers",
    "cli::args_read",
    "cli::commands",
    "cli::follow",
    "cli::planning",
    "cli::sessions",
    "cli::staff",
    "cli::words",
    "decide::inspect::counted",
    "decide::inspect::second_look",
    "decide::model",
    "decide::new_pitch",
    "decide::recipe",
    "files::column_map",
    "files::columns",
    "files::error",
    "files::session_error",
    "report::answers::advise",
    "report::answers::advise_data",
    "report::forms::page",
    "report::forms::page::parts",
];

#[test]
fn no_further_files_use_each_other_in_a_circle() {
    let arrows = Sources::read().arrows();
    assert!(arrows.len() > 200, "the arrows were read: {}", arrows.len());
    let found: Vec<String> = circles(&arrows).iter().map(|module| module.join("::")).collect();
    let new: Vec<&String> = found.iter().filter(|module| !STILL_IN_CIRCLES.contains(&module.as_str())).collect();
    assert!(new.is_empty(), "files in circles: {new:#?}");
}

#[test]
fn only_the_edges_do_input_and_output() {
    let edges = ["files", "report", "cli", "web"];
    for (module, source) in Sources::read().all().filter(|(module, _)| !module.is_empty()) {
        if edges.contains(&module[0].as_str()) {
            continue;
        }
        for forbidden in ["std::fs", "std::io", "std::env", "println!", "eprintln!", "serde", "SystemTime"] {
            assert!(!source.code.contains(forbidden), "{} mentions {forbidden}", source.path.display());
        }
    }
}

#[test]
fn every_file_opens_with_what_it_is_for_and_is_short() {
    let sources = Sources::read();
    let mut lengths = Vec::new();
    for (_, source) in sources.all() {
        assert!(source.text.starts_with("//! "), "{} has no opening words", source.path.display());
        let lines = source.text.lines().count();
        assert!(lines <= 400, "{} has {lines} lines", source.path.display());
        lengths.push(lines);
    }
    lengths.sort_unstable();
    assert!(lengths[lengths.len() / 2] < 150, "the median file has {} lines", lengths[lengths.len() / 2]);
}

#[test]
fn the_picture_in_the_developers_page_is_the_true_one() {
    let page = fs::read_to_string("DEVELOPERS.md").expect("DEVELOPERS.md");
    let arrows = room_arrows(&Sources::read());
    for room in rooms() {
        let used: Vec<&str> = arrows.iter().filter(|(from, _)| *from == room).map(|(_, to)| to.as_str()).collect();
        let order = rooms();
        let used: Vec<&String> = order.iter().filter(|name| used.contains(&name.as_str())).collect();
        let names: Vec<&str> = used.iter().map(|name| name.as_str()).collect();
        let line =
            if names.is_empty() { format!("{room} uses nothing") } else { format!("{room} uses {}", names.join(" ")) };
        assert!(page.contains(&line), "DEVELOPERS.md does not say: {line}");
    }
}
