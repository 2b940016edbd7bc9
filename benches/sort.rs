//! A million throws: made, then read, screened, sorted and summarised, with the time of each step.
//!
//! `cargo bench --bench sort` writes the file under `target/` once and measures; `-- --keep FILE`
//! writes it elsewhere. No harness: one run of seconds needs no statistics. `sort_elsewhere.py`
//! gives the same file to pandas and scikit-learn in the same run when `--against` is given.

#![expect(clippy::print_stdout, reason = "a benchmark reports on standard output")]

#[path = "../tests/common/demo/mod.rs"]
mod demo;

use std::fs::File;
use std::io::{BufWriter, Write};
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::Instant;

use arsenalfit::base::geometry::Hand;
use arsenalfit::files::{ColumnMap, ReadOptions, read_sessions};
use arsenalfit::throws::{Options, sort};
use demo::{DemoDay, Scenario, csv, session, six_weeks};

const ROWS: usize = 1_000_000;
const DAYS: usize = 40;
/// Throws really flown; the file repeats them with small changes, for flying a million takes long.
const FLOWN_PER_DAY: usize = 500;

fn main() {
    let path = file_wanted();
    if !path.exists() {
        make(&path).expect("the file is written");
    }
    let ours = measure(&path);
    if std::env::args().any(|argument| argument == "--against") {
        against(&path, ours);
    }
}

fn measure(path: &Path) -> f64 {
    let start = Instant::now();
    let options = ReadOptions { map: ColumnMap::default(), hand: Some(Hand::Left), progress: &mut |_| {} };
    let session = read_sessions(&[path.to_owned()], options).expect("the file is read");
    let read = start.elapsed().as_secs_f64();
    let sorted = sort(&session, Options::default());
    let all = start.elapsed().as_secs_f64();
    println!("{} throws, {} set aside", session.throws.len(), sorted.set_aside.len());
    println!("{} pitches, adjusted Rand {:.4}", sorted.groups.len(), sorted.agreement.map_or(0.0, |a| a.adjusted_rand));
    println!("read {read:.2} s, screen, sort and summarise {:.2} s, all {all:.2} s", all - read);
    println!("most memory {:.0} MB", most_memory_mb());
    all
}

/// The other program on the same file: fitted on every row, and on a sample as we do.
fn against(path: &Path, ours: f64) {
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("benches/sort_elsewhere.py");
    for (how, sample) in [("fitted on every row", None), ("fitted on 20,000 rows", Some("20000"))] {
        let start = Instant::now();
        let status = Command::new("python3").arg(&script).arg(path).args(sample).status().expect("python3 runs");
        let theirs = start.elapsed().as_secs_f64();
        assert!(status.success(), "the other program ended well");
        println!("pandas and scikit-learn, {how}: {theirs:.1} s, {:.1} times as long", theirs / ours);
    }
}

fn file_wanted() -> PathBuf {
    let mut arguments = std::env::args().skip_while(|argument| argument != "--keep").skip(1);
    arguments.next().map_or_else(|| Path::new(env!("CARGO_TARGET_TMPDIR")).join("sort-million.csv"), PathBuf::from)
}

fn make(path: &Path) -> std::io::Result<()> {
    let days = (1..=DAYS).map(|day| DemoDay {
        name: format!("2031-{:02}-{:02}", 1 + day / 28, 1 + day % 28),
        throws: FLOWN_PER_DAY,
        zero_in: if day % 20 == 7 { [-14.0, 0.0] } else { [0.2, -0.2] },
    });
    let scenario = Scenario { days: days.collect(), ..six_weeks() };
    let text = csv(&session(&scenario), None);
    let mut lines = text.lines();
    let mut file = BufWriter::new(File::create(path)?);
    writeln!(file, "{}", lines.next().unwrap_or_default())?;
    let split = lines.filter_map(|line| line.split_once(','));
    let flown: Vec<(f64, &str)> = split.map(|(speed, rest)| (speed.parse().unwrap_or(90.0), rest)).collect();
    for row in 0..ROWS {
        let (speed, rest) = flown[row % flown.len()];
        writeln!(file, "{:.3},{rest}", speed + (row / flown.len()) as f64 * 0.001)?;
    }
    file.flush()
}

/// The process's largest resident size so far (Linux; zero elsewhere).
fn most_memory_mb() -> f64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find(|line| line.starts_with("VmHWM")).unwrap_or_default();
    line.split_whitespace().nth(1).and_then(|kb| kb.parse::<f64>().ok()).unwrap_or(0.0) / 1024.0
}
