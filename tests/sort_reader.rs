//! Session files as exporters write them, and as nobody should.

use std::io::{Read, Write};

use arsenalfit::athlete::session::{Outcome, Reason, Session};
use arsenalfit::base::geometry::Hand;
use arsenalfit::files::{ColumnMap, InputError, Quantity, ReadOptions, propose, session_from_bytes};
use proptest::prelude::*;

const PLAIN: &str = "speed_mph,vertical_break_in,glove_side_break_in,spin_rpm,pitch,date\n\
                     92.5,16.1,-7.2,2310,four-seam,2031-02-03\n\
                     84.0,2.5,6.0,2400,slider,2031-02-03\n";

fn read_with(bytes: &[u8], map: &str, hand: Option<Hand>) -> Result<Session, InputError> {
    let map = ColumnMap::from_toml(map, "columns.toml")?;
    session_from_bytes("throws.csv", bytes, ReadOptions { map, hand, progress: &mut |_| {} })
}

fn read(bytes: &[u8]) -> Result<Session, InputError> {
    read_with(bytes, "", None)
}

fn speeds(session: &Session) -> Vec<f64> {
    session.throws.iter().map(|throw| throw.shape.speed_mph).collect()
}

#[test]
fn the_same_throws_come_out_of_every_dialect() {
    let semicolons = PLAIN.replace(',', ";").replace('.', ",");
    let tabs = PLAIN.replace(',', "\t");
    let marked = format!("\u{feff}{PLAIN}");
    let windows = PLAIN.replace('\n', "\r\n");
    let blanks = PLAIN.replace('\n', "\n\n,,,,,\n");
    let quoted = PLAIN.replace("four-seam", "\"four-seam\"").replace("92.5", "\" 92.5 \"");
    let plain = read(PLAIN.as_bytes()).expect("plain");
    for dialect in [semicolons, tabs, marked, windows, blanks, quoted] {
        let session = read(dialect.as_bytes()).expect("a known dialect");
        assert_eq!(speeds(&session), speeds(&plain), "{dialect}");
        assert_eq!((&session.labels, &session.days), (&plain.labels, &plain.days), "{dialect}");
        assert!(session.set_aside.is_empty(), "{dialect}");
    }
}

#[test]
fn gzip_is_read_as_it_is() {
    let mut packed = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::fast());
    packed.write_all(PLAIN.as_bytes()).expect("memory");
    let packed = packed.finish().expect("memory");
    assert_eq!(speeds(&read(&packed).expect("gzip")), [92.5, 84.0]);
    let cut = read(&packed[..packed.len() - 12]).expect_err("a file cut short");
    assert!(cut.to_string().contains("cut short"), "{cut}");
}

#[test]
fn a_newline_in_quotes_keeps_the_row_numbers_right() {
    let text = PLAIN.replace("four-seam", "\"four\nseam\"").replace("84.0", "840");
    let session = read(format!("{text}90,15,-6,,,\n").as_bytes()).expect("quoted newline");
    assert_eq!(session.set_aside[0].place.row, 4, "the slider's row begins on line 4");
    assert_eq!(session.throws[1].place.row, 5);
}

#[test]
fn rows_are_counted_alike_whatever_ends_a_line() {
    let text = PLAIN.replace("84.0", "840").replace("four-seam", "\"four\nseam\"") + "\n \n\n931,15,-6,,,\n90,15,-6,,,";
    let good = "\n91,15,-6,,,".repeat(4);
    for ending in ["\n", "\r\n", "\r"] {
        let session = read((text.clone() + &good).replace('\n', ending).as_bytes()).expect("any ending");
        let rows: Vec<u32> = session.set_aside.iter().map(|aside| aside.place.row).collect();
        assert_eq!(rows, [4, 8], "{ending:?}");
        assert_eq!(session.throws.iter().map(|throw| throw.place.row).collect::<Vec<_>>(), [2, 9, 10, 11, 12, 13]);
    }
}

#[test]
fn every_bad_row_is_set_aside_with_its_reason() {
    let rows =
        "fast,1,1,,,\n,1,1,,,\n412,1,1,,,\nspeed_mph,vertical_break_in,glove_side_break_in,spin_rpm,pitch,date\n";
    let good = "91.0,15,-6,2300,,\n".repeat(8);
    let session = read(format!("{PLAIN}{rows}{good}").as_bytes()).expect("mostly good");
    let told: Vec<String> =
        session.set_aside.iter().map(|aside| format!("{}: {}", aside.place.row, aside.reason)).collect();
    assert_eq!(
        told,
        [
            "4: speed_mph is \"fast\", which cannot be read",
            "5: speed_mph is empty",
            "6: speed_mph is 412; allowed is 40 to 110 mph",
            "7: the header again",
        ]
    );
    assert!(matches!(session.set_aside[2].reason, Reason::Impossible { .. }));
    assert_eq!(session.throws.len(), 10);
}

#[test]
fn units_signs_and_words_follow_the_map() {
    let text = "v;up;right;bats;what\n148,2;40,0;10,0;L;whiff\n";
    let map = r#"
        [columns]
        speed = { header = "v", unit = "kph" }
        vertical_break = { header = "up", unit = "cm" }
        glove_side_break = { header = "right", unit = "cm", positive = "catchers-right" }
        batter_side = { header = "bats" }
        outcome = { header = "what" }
        [outcomes]
        "whiff" = "swing and miss"
    "#;
    let session = read_with(text.as_bytes(), map, Some(Hand::Left)).expect("mapped");
    let throw = session.throws[0];
    assert!((throw.shape.speed_mph - 92.087).abs() < 0.01, "{throw:?}");
    assert!((throw.shape.vertical_break_in - 15.748).abs() < 0.01);
    assert!((throw.shape.glove_side_break_in + 3.937).abs() < 0.01, "a left-hander's glove side is the catcher's left");
    assert_eq!(throw.outcome, Some(Outcome::SwingAndMiss));
    for word in ["km/h", "kmh"] {
        let same = read_with(text.as_bytes(), &map.replace("kph", word), Some(Hand::Left)).expect("mapped");
        assert_eq!(same.throws, session.throws, "{word}");
    }
    let unknown = read_with(text.as_bytes(), map, None).expect_err("the hand is needed");
    assert!(unknown.to_string().contains("--hand"), "{unknown}");
}

#[test]
fn a_left_handers_clock_is_mirrored_inside() {
    let text = "speed_mph,vertical_break_in,glove_side_break_in,spin_clock\n92,16,-7,11:00\n";
    let session = read_with(text.as_bytes(), "throws = \"left\"", None).expect("read");
    assert_eq!(session.throws[0].spin.clock.map(|clock| clock.to_string()), Some("1:00".into()));
}

#[test]
fn errors_name_file_row_column_and_cure() {
    for (bytes, words) in [
        (&b""[..], vec!["throws.csv", "empty"]),
        (
            b"sped_mph,vertical_break_in,glove_side_break_in\n1,2,3\n",
            vec!["throws.csv:1", "speed_mph", "did you mean \"sped_mph\""],
        ),
        (b"speed_mph,speed_mph,vertical_break_in,glove_side_break_in\n", vec!["twice"]),
        (b"\xff\xfes\0p\0", vec!["UTF-16"]),
        (b"PK\x03\x04rest", vec!["spreadsheet"]),
        (
            b"speed_mph,vertical_break_in,glove_side_break_in\n150,1,2\n",
            vec!["throws.csv:2", "column speed_mph", "150", "40 to 110 mph", "--explain-columns"],
        ),
    ] {
        let message = read(bytes).expect_err("it cannot be read").to_string();
        for word in words {
            assert!(message.contains(word), "{word} in\n{message}");
        }
    }
}

#[test]
fn errors_in_a_column_map_name_the_line() {
    for (map, words) in [
        ("[columns]\nspeed = { header = \"v\", unit = \"knots\" }", vec!["columns.toml:2:", "knots", "mph"]),
        ("[columns]\nsped = { header = \"v\" }", vec!["columns.toml:2:", "sped", "speed"]),
        ("[columns]\nspeed = { header = \"v\", unit = \"cm\" }", vec!["columns.speed", "cm", "kph"]),
        ("[columns]\nspin = { header = \"s\", from_ft = 40 }", vec!["columns.spin", "from_ft"]),
        ("[columns]\nspeed = { header = \"s\", at_ft = 400 }", vec!["400"]),
    ] {
        let message = ColumnMap::from_toml(map, "columns.toml").expect_err("a bad map").to_string();
        for word in words {
            assert!(message.contains(word), "{word} in\n{message}");
        }
    }
}

/// Words of a file reach the terminal: as pitch labels, days, grips, doubts and reasons.
#[test]
fn no_word_of_a_file_can_steer_the_terminal() {
    let text = "v\u{1b}[2J,vertical_break_in,glove_side_break_in,pitch,date,grip,outcome\n\
                92,16,-7,fast\u{1b}[2J,d\u{7}ay,gr\u{9b}ip,w\u{202e}hiff\n\
                91,15,-7,fast\u{1b}[2J,d\u{7}ay,gr\u{9b}ip,ball\n\
                x,15,-7,fast,day,grip,ball\n";
    let map = "[columns]\nspeed = { header = \"v\\u001b[2J\" }";
    let session = read_with(text.as_bytes(), map, None).expect("readable");
    let reasons = session.set_aside.iter().map(|aside| aside.reason.to_string());
    let words = [&session.labels, &session.days, &session.grips, &session.notes].into_iter().flatten().cloned();
    let all: Vec<String> = reasons.chain(words).collect();
    assert!(all.len() >= 5, "{all:?}");
    assert!(all.iter().all(|word| !word.contains(|c: char| c.is_control() || c == '\u{202e}')), "{all:?}");
}

#[test]
fn the_air_of_a_column_map_is_one_that_can_be() {
    for (line, allowed) in [
        ("temperature_f = nan", "-20 to 130"),
        ("pressure_inhg = 1013", "18 to 32"),
        ("elevation_ft = inf", "-1500 to 15000"),
        ("temperature_f = 70\nhumidity_percent = 101", "0 to 100"),
    ] {
        let message = ColumnMap::from_toml(&format!("[air]\n{line}"), "columns.toml").expect_err(line).to_string();
        assert!(message.contains(allowed) && message.contains("air."), "{message}");
    }
    assert!(ColumnMap::from_toml("[air]\nelevation_ft = 5200\ntemperature_f = 75", "columns.toml").is_ok());
}

#[test]
fn a_million_rows_of_garbage_end_in_one_clear_error() {
    let header = b"speed_mph,vertical_break_in,glove_side_break_in\n";
    let garbage = std::io::repeat(b'\n').take(0).chain(&header[..]).chain(Repeated {
        row: b"x\xff,\"y\",z z\n",
        at: 0,
        left: 1_000_000,
    });
    let map = ColumnMap::default();
    let error = session_from_bytes("garbage.csv", garbage, ReadOptions { map, hand: None, progress: &mut |_| {} })
        .expect_err("garbage");
    let message = error.to_string();
    assert!(message.contains("garbage.csv:2") && message.matches("error: ").count() == 1, "{message}");
}

/// The same row many times over.
struct Repeated {
    row: &'static [u8],
    at: usize,
    left: usize,
}

impl Read for Repeated {
    fn read(&mut self, buffer: &mut [u8]) -> std::io::Result<usize> {
        let mut written = 0;
        while written < buffer.len() && self.left > 0 {
            buffer[written] = self.row[self.at];
            written += 1;
            self.at = (self.at + 1) % self.row.len();
            self.left -= usize::from(self.at == 0);
        }
        Ok(written)
    }
}

#[test]
fn a_proposed_map_can_be_shown_and_still_names_the_header() {
    let header = "speed \u{202e}\u{7}'\\mph\u{200b}";
    let text = format!("{header},vertical break,arm side break\n91,15,7\n");
    let proposal = propose("odd.csv", text.as_bytes()).expect("a table");
    let shown = proposal.map.to_toml();
    assert!(!shown.contains(['\u{202e}', '\u{7}', '\u{200b}']), "{shown:?}");
    let again = ColumnMap::from_toml(&shown, "proposed.toml").expect("a proposal can be used");
    assert_eq!(again.columns[&Quantity::Speed].header, header);
}

#[test]
fn plain_abbreviations_are_recognised() {
    let text = "Velo,Vert Break,Horz Break,Rel Height,Rel Side,Ext\n91,15,-7,5.9,2,6\n";
    let proposal = propose("short.csv", text.as_bytes()).expect("a table");
    for (quantity, header) in
        [(Quantity::ReleaseHeight, "Rel Height"), (Quantity::ReleaseSide, "Rel Side"), (Quantity::Extension, "Ext")]
    {
        assert_eq!(proposal.map.columns[&quantity].header, header);
    }
}

#[test]
fn metric_numbers_are_recognised_by_their_size() {
    let text = "Velo;Vertical movement;Horizontal movement\n148,5;0,41;-0,12\n136,0;0,05;0,15\n";
    let proposal = propose("metric.csv", text.as_bytes()).expect("a table");
    let unit = |quantity: Quantity| proposal.map.columns[&quantity].unit.map(arsenalfit::files::Unit::name);
    assert_eq!((unit(Quantity::Speed), unit(Quantity::VerticalBreak)), (Some("kph"), Some("m")));
}

proptest! {
    /// The reader's fuzz test: a sound file with bytes changed, dropped and doubled.
    #[test]
    fn no_file_makes_the_reader_panic_or_hang(
        changes in proptest::collection::vec((any::<usize>(), any::<u8>(), 0..4_u8), 0..40), gzip in any::<bool>(),
    ) {
        let mut bytes = PLAIN.repeat(3).into_bytes();
        if gzip {
            let mut packed = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::fast());
            packed.write_all(&bytes).expect("memory");
            bytes = packed.finish().expect("memory");
        }
        for (place, byte, kind) in changes {
            let at = place % bytes.len().max(1);
            match kind {
                0 if !bytes.is_empty() => bytes[at] = byte,
                1 if !bytes.is_empty() => { bytes.remove(at); }
                2 => bytes.insert(at, byte),
                _ => bytes.extend_from_within(at.min(bytes.len())..),
            }
            bytes.truncate(100_000);
        }
        let _ = read(&bytes);
        let _ = propose("mutated.csv", &bytes[..]);
        if let Ok(text) = std::str::from_utf8(&bytes) {
            let _ = ColumnMap::from_toml(text, "mutated.toml");
        }
    }
}
