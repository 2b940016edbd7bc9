//! What a machine can do to the program: pipes that close, inputs without end, disks that are full,
//! a kill at any moment. Each ends in one clear error, in bounded time and memory, and a file that
//! was there is whole. Only for Unix; the limits on memory hold on Linux.
#![cfg(unix)]
#![expect(clippy::print_stdout, reason = "a test that is skipped says so, and kills are counted")]

#[path = "common/folder.rs"]
mod folder;

use std::fs;
use std::io::{Read, Write};
use std::os::unix::fs::{MetadataExt, PermissionsExt, symlink};
use std::os::unix::process::{CommandExt, ExitStatusExt};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Output, Stdio};
use std::time::{Duration, Instant};

use folder::with_copies;

const PROGRAM: &str = env!("CARGO_BIN_EXE_arsenalfit");
const HEADER: &str = "speed_mph,vertical_break_in,glove_side_break_in,pitch";
const WISH: &str = "--target 79.5,-2.5,13.5";
const DATES: &str = "--start 2031-11-03 --end 2032-02-29";
/// What an input may cost at most; a developer's build on a busy machine.
const PATIENCE: Duration = Duration::from_secs(30);
/// Address space in KiB; most of it is not memory in use.
const MEMORY: u32 = 600_000;

fn repository(path: &str) -> String {
    format!("{}/{path}", env!("CARGO_MANIFEST_DIR"))
}

/// A folder with a profile, throws and a trial.
fn folder() -> tempfile::TempDir {
    with_copies(&[
        ("profiles/three-quarter-right.toml", "athlete.toml"),
        ("demo-data/session-2031-02-03.csv", "throws.csv"),
        ("demo-data/trial-four-grips.csv", "trial.csv"),
    ])
}

/// The program behind shell words, so that pipes, limits and devices are the real ones.
fn shell(folder: &Path, script: &str) -> Command {
    let mut command = Command::new("sh");
    command.current_dir(folder).env("ARSENALFIT", PROGRAM).env("COLUMNS", "80").arg("-c").arg(script);
    command
}

/// Runs a script; longer than [`PATIENCE`] is a failure.
fn run(folder: &Path, script: &str) -> Output {
    run_command(shell(folder, script), script)
}

fn run_command(mut command: Command, script: &str) -> Output {
    command.stdin(Stdio::null()).stdout(Stdio::piped()).stderr(Stdio::piped());
    let mut child = command.spawn().expect("a shell");
    let (out, err) = (drain(child.stdout.take()), drain(child.stderr.take()));
    let started = Instant::now();
    let status = loop {
        if let Some(status) = child.try_wait().expect("it can be waited for") {
            break status;
        }
        if started.elapsed() > PATIENCE {
            child.kill().expect("it can be stopped");
            panic!("{script} takes longer than {PATIENCE:?}");
        }
        std::thread::sleep(Duration::from_millis(5));
    };
    let whole = |reader: std::thread::JoinHandle<Vec<u8>>| reader.join().expect("a reader");
    Output { status, stdout: whole(out), stderr: whole(err) }
}

fn drain(pipe: Option<impl Read + Send + 'static>) -> std::thread::JoinHandle<Vec<u8>> {
    std::thread::spawn(move || {
        let mut bytes = Vec::new();
        if let Some(mut pipe) = pipe {
            pipe.read_to_end(&mut bytes).expect("a pipe can be read");
        }
        bytes
    })
}

/// The one error a script ends in.
fn error_of(folder: &Path, script: &str) -> String {
    error_in(run(folder, script), script)
}

/// The same for a user without rights; who runs the tests as root lends them to nobody.
fn error_of_nobody(folder: &Path, script: &str) -> String {
    let mut command = shell(folder, script);
    if fs::metadata(folder).expect("a folder").uid() == 0 {
        command.uid(65_534).gid(65_534);
    }
    error_in(run_command(command, script), script)
}

fn error_in(output: Output, script: &str) -> String {
    let said = String::from_utf8(output.stderr).expect("text");
    assert_eq!(output.status.code(), Some(2), "{script}: {said}");
    assert!(output.stdout.is_empty(), "{script} leaves standard output alone");
    assert!(said.starts_with("error: ") && (said.contains("must be ") || said.contains("hint: ")), "{script}: {said}");
    assert!(said.len() < 20_000, "{script}: {} bytes of error", said.len());
    said
}

/// The one error of a hostile input, in bounded memory.
fn refused(folder: &Path, script: &str, words: &str) {
    let said = error_of(folder, &format!("ulimit -v {MEMORY} 2>/dev/null; {script}"));
    assert!(said.contains(words), "{script} says {words}: {said}");
    assert_eq!(said.matches("error: ").count(), 1, "{script}: {said}");
}

#[test]
fn a_reader_that_leaves_early_is_no_error() {
    let folder = folder();
    for command in ["check athlete.toml", "dot athlete.toml", "--help", "trial trial.csv --profile athlete.toml"] {
        for format in ["text", "json"] {
            let script = format!("\"$ARSENALFIT\" {command} --format {format} | head -c 1 > /dev/null");
            let output = run(folder.path(), &script);
            assert!(output.stderr.is_empty(), "{script}: {}", String::from_utf8_lossy(&output.stderr));
        }
    }
    // Nobody reads at all, and the answer is larger than a pipe holds.
    let script = format!("\"$ARSENALFIT\" progress athlete.toml {WISH} throws.csv --format json; echo $? >&2");
    let mut child =
        shell(folder.path(), &script).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().expect("a shell");
    drop(child.stdout.take());
    let output = child.wait_with_output().expect("it ends");
    assert_eq!(String::from_utf8_lossy(&output.stderr).trim(), "0");
}

#[test]
fn a_full_standard_output_is_one_error() {
    if !Path::new("/dev/full").exists() {
        println!("skipped: there is no /dev/full here");
        return;
    }
    for format in ["text", "json"] {
        let said =
            error_of(folder().path(), &format!("\"$ARSENALFIT\" check athlete.toml --format {format} >/dev/full"));
        assert!(said.contains("cannot write the answer"), "{said}");
    }
}

/// Every place a file is read: profile, column map, session, trial, outing.
fn readers(file: &str) -> [(&'static str, String); 6] {
    [
        ("profile", format!("\"$ARSENALFIT\" check {file}")),
        ("map", format!("\"$ARSENALFIT\" sort throws.csv --hand left --columns {file}")),
        ("session", format!("\"$ARSENALFIT\" sort {file} --hand left")),
        ("to explain", format!("\"$ARSENALFIT\" sort {file} --explain-columns")),
        ("trial", format!("\"$ARSENALFIT\" trial {file} --profile athlete.toml {WISH}")),
        ("outing", format!("\"$ARSENALFIT\" progress athlete.toml {file} {WISH}")),
    ]
}

#[test]
fn inputs_that_are_no_files_of_ours_are_one_error() {
    let folder = folder();
    let place = folder.path();
    fs::create_dir(place.join("dir")).expect("a folder");
    symlink("loop", place.join("loop")).expect("a link");
    let sparse = fs::File::create(place.join("sparse")).expect("a file");
    sparse.set_len(2 << 30).expect("a sparse file");
    let noise: Vec<u8> = (0..100_000_u32).map(|n| n.wrapping_mul(2_654_435_761).to_be_bytes()[0]).collect();
    fs::write(place.join("noise"), noise).expect("a file");
    fs::write(place.join("empty"), "").expect("a file");
    fs::write(place.join("utf16"), b"\xff\xfes\0p\0e\0e\0d\0").expect("a file");
    for file in ["none", "dir", "loop", "dir/none", "athlete.toml/none", "sparse", "noise", "utf16", "/dev/zero"] {
        for (reader, script) in readers(file) {
            let said = error_of(place, &format!("ulimit -v {MEMORY} 2>/dev/null; {script}"));
            assert_eq!(said.matches("error: ").count(), 1, "{reader} of {file}: {said}");
            assert!(said.contains(file.trim_start_matches("dir/")), "{reader} of {file} is named: {said}");
        }
    }
    for (reader, script) in readers("empty").into_iter().filter(|(reader, _)| *reader != "map") {
        let said = error_of(place, &script);
        assert!(said.contains("the file is empty") || said.contains("athlete is missing"), "{reader}: {said}");
    }
}

#[test]
fn what_one_may_not_read_or_write_is_one_error() {
    let folder = folder();
    let place = folder.path();
    fs::write(place.join("locked"), HEADER).expect("a file");
    fs::set_permissions(place.join("locked"), PermissionsExt::from_mode(0o000)).expect("permissions");
    fs::set_permissions(place, PermissionsExt::from_mode(0o555)).expect("permissions");
    for (reader, script) in readers("locked") {
        assert!(error_of_nobody(place, &script).contains("permission denied"), "{reader}");
    }
    for (file, script) in writers() {
        let said = error_of_nobody(place, &script);
        assert!(said.contains(&format!("cannot write {file}: permission denied")), "{said}");
    }
    fs::set_permissions(place, PermissionsExt::from_mode(0o755)).expect("permissions");
    assert_eq!(names(place).len(), 4, "{:?}", names(place));
}

#[test]
fn inputs_without_end_are_one_error_in_bounded_memory() {
    let folder = folder();
    let rows = |first: &str, rest: &str| format!("(echo {HEADER}{first}; {rest}) | \"$ARSENALFIT\" sort -");
    let cases = [
        (rows("", "yes 90 | tr -d '\\n'"), "longer than 1 MiB"),
        ("yes 90 | tr -d '\\n' | \"$ARSENALFIT\" sort /dev/stdin".into(), "longer than 1 MiB"),
        (rows("", "echo '90,2,3,\"x'; yes 90,2,3,x"), "quotation mark"),
        (rows("", "yes 90,2,3,x | head -3000; yes 90,x,3,x"), "rows cannot be used"),
        (rows("", "yes \"$(printf '90,2,3,x\\n9,2,3,x\\n91,2,3,x')\""), "more than 250,000 rows"),
        (rows("", "seq 1 10000000 | sed s/^/90,2,3,/"), "more than 5000 different"),
        (rows("", "yes ,,,"), "a million blank rows"),
        (rows("", "yes 90 | tr -d '\\n' | head -c 100000000").replace(" | \"", " | gzip -1 | \""), "longer than 1 MiB"),
        ("yes '' | \"$ARSENALFIT\" sort -".into(), "longer than 1 MiB"),
        ("yes | \"$ARSENALFIT\" sort /dev/stdin".into(), "the file has y"),
        ("yes | \"$ARSENALFIT\" check /dev/stdin".into(), "larger than 1 MiB"),
        ("yes | \"$ARSENALFIT\" sort throws.csv --columns /dev/stdin".into(), "larger than 1 MiB"),
        ("yes | \"$ARSENALFIT\" trial /dev/stdin --profile athlete.toml".into(), "the file has y"),
        ("mkfifo pipe; (yes > pipe &) ; \"$ARSENALFIT\" check pipe".into(), "larger than 1 MiB"),
        ("(yes > pipe &) ; \"$ARSENALFIT\" sort pipe".into(), "the file has y"),
        ("yes [ | tr -d '\\n' | head -c 900000 | sed 's/^/x = /' | \"$ARSENALFIT\" check /dev/stdin".into(), "recurse"),
        ("(printf 'x = '; yes x | tr -d '\\n' | head -c 900000) | \"$ARSENALFIT\" check /dev/stdin".into(), "quoted"),
    ];
    for (script, words) in cases {
        refused(folder.path(), &script, words);
    }
}

/// Two million throws are kept before they are too many: this one may have more memory.
#[test]
fn good_throws_without_end_are_too_many() {
    let script = format!("ulimit -v 2000000 2>/dev/null; (echo {HEADER}; yes 90,2,3,x) | \"$ARSENALFIT\" sort -");
    assert!(error_of(folder().path(), &script).contains("more than 2 million throws"));
}

#[test]
fn other_endings_and_marks_read_like_the_plain_file() {
    let folder = folder();
    for name in ["athlete.toml", "throws.csv"] {
        let plain = fs::read_to_string(folder.path().join(name)).expect("text");
        fs::write(folder.path().join(format!("marked-{name}")), format!("\u{feff}{plain}")).expect("a file");
        fs::write(folder.path().join(format!("windows-{name}")), plain.replace('\n', "\r\n")).expect("a file");
    }
    for (command, name) in [("check", "athlete.toml"), ("sort --hand left --format json", "throws.csv")] {
        let answer = |name: &str| {
            let output = run(folder.path(), &format!("\"$ARSENALFIT\" {command} {name}"));
            assert!(output.status.success(), "{name}: {}", String::from_utf8_lossy(&output.stderr));
            String::from_utf8(output.stdout).expect("text")
        };
        let plain = answer(name);
        for other in [format!("marked-{name}"), format!("windows-{name}")] {
            assert_eq!(answer(&other).replace(&other, name), plain, "{other}");
        }
    }
}

#[test]
fn bytes_that_are_not_utf_8_are_refused_in_a_profile_and_replaced_in_a_label() {
    let folder = folder();
    fs::write(folder.path().join("latin.toml"), b"[athlete]\nname = \"Jos\xe9\"\n").expect("a file");
    refused(folder.path(), "\"$ARSENALFIT\" check latin.toml", "line 2 is not UTF-8 text");
    let rows = b"90,2,3,sl\xefder\n91,2,3,sl\xefder\n".repeat(20);
    fs::write(folder.path().join("latin.csv"), [HEADER.as_bytes(), b"\n", &rows].concat()).expect("a file");
    let output = run(folder.path(), "\"$ARSENALFIT\" sort latin.csv --format json");
    assert!(output.status.success());
    serde_json::from_slice::<serde_json::Value>(&output.stdout).expect("JSON");
}

/// Every way to write a file, with the file it writes.
fn writers() -> [(&'static str, String); 4] {
    [
        ("a.toml", "\"$ARSENALFIT\" sort throws.csv --hand left --write a.toml --force".into()),
        ("page.html", "\"$ARSENALFIT\" apart athlete.toml --report page.html".into()),
        ("plan.ics", format!("\"$ARSENALFIT\" plan athlete.toml {DATES} {WISH} --ics plan.ics --force")),
        ("plan.md", format!("\"$ARSENALFIT\" plan athlete.toml {DATES} {WISH} --markdown plan.md --force")),
    ]
}

/// The head of a page of this program's.
const OLDER_PAGE: &str = "<!DOCTYPE html><html><head><meta name=\"generator\" content=\"arsenalfit\"></head>\n";

/// What stood in the file before.
fn old(file: &str) -> String {
    let profile = fs::read_to_string(repository("profiles/high-slot-left.toml")).expect("a profile");
    match file {
        "a.toml" => format!("# my own words\n{profile}"),
        "page.html" => format!("{OLDER_PAGE}{}", "an older page\n".repeat(5000)),
        _ => "an older file\n".repeat(5000),
    }
}

#[test]
fn a_folder_that_cannot_be_written_leaves_nothing() {
    let folder = folder();
    for (file, script) in writers() {
        for (nowhere, said) in
            [("/proc/", "no such folder"), ("athlete.toml/", "no folder"), ("none/", "no such folder")]
        {
            let script = script.replace(file, &format!("{nowhere}{file}"));
            let error = error_of(folder.path(), &script);
            assert!(error.contains("cannot") && error.contains(file), "{script}: {error}");
            assert!(error.contains(said) || file == "a.toml", "{script}: {error}");
        }
    }
    assert_eq!(names(folder.path()).len(), 3, "{:?}", names(folder.path()));
}

/// The file that could be written waits for the one that could not.
#[test]
fn of_several_files_all_are_written_or_none() {
    let folder = folder();
    for (ics, markdown, page) in [("plan.ics", "none/plan.md", "page.html"), ("plan.ics", "plan.md", "none/page.html")]
    {
        let plan = format!("\"$ARSENALFIT\" plan athlete.toml {DATES} {WISH}");
        let error = error_of(folder.path(), &format!("{plan} --ics {ics} --markdown {markdown} --report {page}"));
        assert!(error.contains("cannot write none/"), "{error}");
        assert_eq!(names(folder.path()).len(), 3, "{:?}", names(folder.path()));
    }
}

fn names(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).expect("a folder");
    entries.map(|entry| entry.expect("an entry").file_name().to_string_lossy().into_owned()).collect()
}

/// A tiny disk, mounted for one test.
struct TinyDisk(PathBuf);

impl TinyDisk {
    fn mount(at: PathBuf) -> Option<Self> {
        fs::create_dir(&at).expect("a folder");
        let mut mount = Command::new("mount");
        mount.args(["-t", "tmpfs", "-o", "size=256k", "tmpfs"]).arg(&at).stderr(Stdio::null());
        mount.status().is_ok_and(|status| status.success()).then_some(Self(at))
    }
}

impl Drop for TinyDisk {
    fn drop(&mut self) {
        Command::new("umount").arg(&self.0).status().expect("it can be taken away");
    }
}

#[test]
fn a_full_disk_leaves_the_old_file_whole() {
    let folder = folder();
    let Some(disk) = TinyDisk::mount(folder.path().join("tiny")) else {
        println!("skipped: a tiny disk cannot be mounted here");
        return;
    };
    for (file, script) in writers() {
        let path = disk.0.join(file);
        let before = old(file);
        fs::write(&path, &before).expect("it fits");
        let filler = disk.0.join("filler");
        let mut rest = fs::File::create(&filler).expect("a file");
        while rest.write_all(&[b'x'; 1024]).is_ok() {}
        let error = error_of(folder.path(), &script.replace(&format!(" {file}"), &format!(" tiny/{file}")));
        assert!(error.contains("the disk is full"), "{error}");
        assert_eq!(fs::read_to_string(&path).expect("the old file"), before, "{file}");
        assert_eq!(names(&disk.0).len(), 2, "{:?}", names(&disk.0));
        // A process that another test is just starting may still hold the file: emptied, it takes no room.
        rest.set_len(0).and_then(|()| fs::remove_file(&filler)).expect("it goes");
        fs::remove_file(&path).expect("it goes");
    }
}

#[test]
fn a_link_stays_a_link_and_a_device_a_device() {
    let folder = folder();
    fs::write(folder.path().join("real.html"), OLDER_PAGE).expect("a file");
    symlink("real.html", folder.path().join("page.html")).expect("a link");
    assert!(run(folder.path(), &writers()[1].1).status.success());
    assert!(fs::symlink_metadata(folder.path().join("page.html")).expect("a link").is_symlink());
    assert!(fs::read_to_string(folder.path().join("real.html")).expect("a page").starts_with("<!DOCTYPE html>"));
    assert_eq!(run(folder.path(), "mkfifo pipe.html").status.code(), Some(0));
    let error = error_of(folder.path(), "\"$ARSENALFIT\" apart athlete.toml --report pipe.html");
    assert!(error.contains("no ordinary file"), "{error}");
}

/// What kills at random moments did.
#[derive(Debug, Default)]
struct Kills {
    done: usize,
    old: usize,
    new: usize,
    strays: usize,
}

/// Kills one way of writing until `wanted` runs have died of it: half of them anywhere in the run,
/// half near its end, where it writes.
fn kill(file: &str, script: &str, wanted: usize) -> Kills {
    let folder = folder();
    let path = folder.path().join(file);
    let before = old(file);
    fs::write(&path, &before).expect("a file");
    let mut usual = (0..3).map(|_| time_of(folder.path(), script)).min().expect("three runs");
    let after = fs::read_to_string(&path).expect("the new file");
    assert_ne!(before, after);
    let mut kills = Kills::default();
    for turn in 0..wanted * 8 {
        if kills.done == wanted {
            break;
        }
        fs::write(&path, &before).expect("a file");
        // The golden ratio spreads the moments evenly.
        let part = (turn as f64 * 0.618_034).fract();
        let moment = usual.mul_f64(if turn % 2 == 0 { part } else { 0.6 + 0.4 * part });
        let mut child: Child = shell(folder.path(), &format!("exec {script}"))
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .expect("a shell");
        std::thread::sleep(moment);
        child.kill().expect("a signal can be sent");
        let status = child.wait().expect("it ends");
        let is_killed = status.signal() == Some(9);
        kills.done += usize::from(is_killed);
        // Other work makes runs slower or faster than the first three: the moments follow.
        usual = usual.mul_f64(if is_killed { 1.005 } else { 0.98 });
        let found = fs::read_to_string(&path).expect("a file is there");
        assert!(found == before || found == after, "{file} is neither the old one nor the new one");
        kills.old += usize::from(found == before);
        kills.new += usize::from(found == after);
        kills.strays += strays_of(folder.path());
    }
    assert_eq!(kills.done, wanted, "{script}: {kills:?}");
    assert!(run(folder.path(), script).status.success(), "what a kill leaves does not stand in the way");
    kills
}

fn time_of(folder: &Path, script: &str) -> Duration {
    let started = Instant::now();
    assert!(run(folder, script).status.success(), "{script}");
    started.elapsed()
}

/// Counts and clears what killed runs left: nothing but hidden files of our own name.
fn strays_of(folder: &Path) -> usize {
    let strays: Vec<String> = names(folder).into_iter().filter(|name| name.starts_with(".arsenalfit-")).collect();
    assert_eq!(names(folder).len(), strays.len() + 4, "{:?}", names(folder));
    for stray in &strays {
        fs::remove_file(folder.join(stray)).expect("it goes");
    }
    strays.len()
}

fn kill_every_writer(times: usize) {
    for (file, script) in writers() {
        println!("{file}: {:?}", kill(file, &script, times));
    }
}

#[test]
fn a_kill_at_any_moment_leaves_the_old_file_or_the_new_one() {
    kill_every_writer(50);
}

#[test]
#[ignore = "takes minutes; run it after changing how files are written"]
fn a_thousand_kills_leave_the_old_file_or_the_new_one() {
    kill_every_writer(1000);
}
