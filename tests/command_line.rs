//! The program as its users meet it: every shipped profile through every command, texts as
//! snapshots, JSON by its promised keys, exit codes, and what goes to which stream.

#[path = "common/program.rs"]
mod program;

use predicates::prelude::*;
use serde_json::Value;

use program::{answer, arsenalfit, widest};

const PROFILES: [&str; 5] =
    ["three-quarter-right", "high-slot-left", "low-slot-right-with-sweeper", "fourteen-year-old", "over-the-top-right"];

fn path(profile: &str) -> String {
    format!("profiles/{profile}.toml")
}

#[test]
fn every_shipped_profile_reads_well_at_80_columns() {
    for profile in PROFILES {
        for command in ["check", "apart", "usage", "levers", "advise", "dot"] {
            let text = answer(80, &[command, &path(profile)]);
            // A command stays on one line, however long, to be copied.
            let wrapped: Vec<&str> = text.lines().filter(|line| !line.starts_with("- `")).collect();
            let wrapped = wrapped.join(
                "
",
            );
            assert!(widest(&wrapped) <= 80, "{command} {profile}: {} columns", widest(&wrapped));
            assert!(!text.contains('\u{1b}'), "no escape codes outside a terminal");
            insta::assert_snapshot!(format!("{command}-{profile}-80"), text);
        }
    }
}

#[test]
fn a_wide_terminal_is_used() {
    let text = answer(120, &["advise", &path("three-quarter-right")]);
    assert!((81..=120).contains(&widest(&text)), "{} columns", widest(&text));
    insta::assert_snapshot!("advise-three-quarter-right-120", text);
}

#[test]
fn a_wished_for_shape_is_drawn_for_both_hands() {
    insta::assert_snapshot!("dot-target-right", answer(80, &["dot", "--target", "81,-4,14"]));
    insta::assert_snapshot!("dot-target-left", answer(80, &["dot", "--target", "81,-4,14", "--throws", "left"]));
}

#[test]
fn a_shape_no_spin_gives_is_refused_in_words() {
    let refused = arsenalfit(80, &["dot", "--target", "85,-30,33", "--rpm", "4500"]).assert().failure();
    let said = String::from_utf8_lossy(&refused.get_output().stderr).into_owned();
    assert!(said.contains("needs more active spin than there is") && !said.contains("inf"), "{said}");
}

#[test]
fn advise_keeps_the_promised_json_keys() {
    for profile in PROFILES {
        let text = answer(80, &["advise", &path(profile), "--format", "json", "--draws", "16"]);
        let json: Value = serde_json::from_str(&text).expect("JSON");
        let verdict = json["verdict"].as_str().expect("a verdict");
        assert!(["add", "trial", "not_now", "other_pitch"].contains(&verdict));
        for list in ["reasons", "cautions", "alternatives"] {
            assert!(json[list].as_array().is_some_and(|list| !list.is_empty()), "{profile}: {list}");
        }
        let target = &json["target"];
        for number in [
            "/speed_mph",
            "/vertical_break_in",
            "/glove_side_break_in",
            "/spin_rpm",
            "/active_fraction",
            "/gyro_deg",
            "/seam_shift_in/vertical",
            "/seam_shift_in/glove_side",
            "/dot/thrower/radius",
            "/dot/partner/radius",
            "/window/speed_mph/low",
            "/window/vertical_break_in/high",
            "/window/glove_side_break_in/low",
        ] {
            assert!(target.pointer(number).is_some_and(Value::is_number), "{profile}: {number}");
        }
        for clock in ["/spin_clock", "/dot/thrower/clock", "/dot/partner/clock"] {
            assert!(target.pointer(clock).is_some_and(Value::is_string), "{profile}: {clock}");
        }
        for side in ["same_side", "opposite_side", "overall"] {
            for end in ["value", "low", "high"] {
                assert!(json["gain_runs_per_100"][side][end].is_number(), "{profile}: {side} {end}");
            }
        }
        for side in ["same_side", "opposite_side"] {
            for when in ["before", "after"] {
                let list = json["usage"][side][when].as_array().expect("a list");
                let shares: f64 = list.iter().map(|pitch| pitch["share"].as_f64().expect("a share")).sum();
                assert!((shares - 1.0).abs() < 0.01, "{profile}: shares sum to {shares}");
                for pitch in list {
                    assert!(pitch["pitch"].is_string());
                    for rate in ["swing_and_miss", "weak_contact", "solid_contact", "take"] {
                        assert!(pitch[rate]["value"].is_number(), "{profile}: {rate}");
                    }
                }
            }
        }
    }
}

fn json_of(arguments: &[&str]) -> Value {
    let text = answer(80, &[arguments, &["--format", "json"]].concat());
    serde_json::from_str(&text).expect("JSON")
}

#[test]
fn usage_keeps_the_promised_json_keys_and_shares_sum_to_one() {
    for profile in PROFILES {
        let json = json_of(&["usage", &path(profile)]);
        for side in ["same_side", "opposite_side"] {
            let on = &json[side];
            assert!(on.get("gap_runs_per_100").is_some(), "{profile} {side}");
            // Where the profile does not tell today's use, nothing is said of it.
            let is_told = !on["today"].is_null();
            assert_eq!(on["left_on_the_table_runs_per_100"]["value"].is_number(), is_told, "{profile} {side}");
            let used = if is_told { ["today", "best"] } else { ["best", "best"] };
            let listed = |when: &str| on[when]["pitches"].as_array().expect("a list").clone();
            let sum = |when: &str, key: &str| -> f64 {
                listed(when).iter().map(|pitch| pitch.pointer(key).and_then(Value::as_f64).expect("a share")).sum()
            };
            for share in ["/share", "/by_count/first", "/by_count/behind", "/by_count/even", "/by_count/two_strikes"] {
                for when in used {
                    assert!((sum(when, share) - 1.0).abs() < 1e-6, "{profile} {side} {when} {share}");
                }
            }
            assert!((sum("custom", "/share") - 1.0).abs() < 0.005, "{profile} {side}");
            for pitch in listed("best") {
                let band = ["share_low", "share_high"].map(|end| pitch[end].as_f64().expect("an end"));
                assert!(band[0] <= band[1] && pitch["aim"].is_string() && pitch["aim_two_strikes"].is_string());
                let rates =
                    ["strike", "chase", "miss_per_swing", "swing_and_miss", "weak_contact", "solid_contact", "take"];
                for rate in rates {
                    let value = pitch[rate]["value"].as_f64().expect("a rate");
                    assert!((0.0..=1.0).contains(&value), "{profile} {side} {rate}: {value}");
                }
            }
        }
    }
}

#[test]
fn apart_says_how_often_one_pitch_is_taken_for_the_other() {
    let json = json_of(&["apart", &path("three-quarter-right")]);
    for pair in json["pairs"].as_array().expect("a list") {
        for side in ["same_side", "opposite_side"] {
            for key in ["first_taken_for_second", "second_taken_for_first"] {
                assert!(pair[side][key].as_f64().is_some_and(|share| (0.0..=1.0).contains(&share)), "{key}");
            }
            for key in ["release_in", "decision_in", "plate_in", "late_in", "late_share"] {
                assert!(pair[side]["own_targets"][key].is_number(), "{key}");
            }
        }
    }
}

#[test]
fn every_lever_is_an_object_of_its_own_best_first() {
    let json = json_of(&["levers", &path("three-quarter-right"), "--draws", "16"]);
    let levers = json["levers"].as_array().expect("a list");
    let values: Vec<f64> =
        levers.iter().map(|lever| lever["runs_per_season"]["value"].as_f64().expect("runs")).collect();
    assert!(values.is_sorted_by(|a, b| a >= b), "{values:?}");
    let has = |change: &str| levers.iter().any(|lever| lever["change"] == change);
    for change in ["learn", "drop", "one_mph_more", "one_inch_tighter", "recommended_use"] {
        assert!(has(change), "{change}");
    }
    for lever in levers {
        assert!(lever["chance"].is_number() && lever["cautions"].is_array() && lever["by_reading"].is_array());
    }
}

#[test]
fn the_same_seed_gives_the_same_bytes_and_another_seed_other_intervals() {
    let ask = |seed: &str| answer(80, &["advise", &path("high-slot-left"), "--format", "json", "--seed", seed]);
    assert_eq!(ask("3"), ask("3"));
    assert_ne!(ask("3"), ask("4"));
}

#[test]
fn the_athlete_who_owns_a_sweeper_is_told_that_another_adds_about_nothing() {
    let text = answer(80, &["advise", &path("low-slot-right-with-sweeper"), "--format", "json"]);
    let json: Value = serde_json::from_str(&text).expect("JSON");
    assert!(json["verdict"] == "not_now" || json["verdict"] == "other_pitch", "{}", json["verdict"]);
    assert!(json["reasons"].to_string().contains("throws one already, the sweeper"), "{}", json["reasons"]);
    let text = answer(200, &["advise", &path("low-slot-right-with-sweeper")]);
    assert!(!text.contains("\nAdd a sweeper."), "{text}");
}

/// Guidelines of USA Baseball and Major League Baseball, copy of about 2015.
#[test]
fn a_fourteen_year_old_gets_the_youth_cautions_and_never_a_plain_yes() {
    let text = answer(120, &["advise", &path("fourteen-year-old")]);
    assert!(text.contains("at 14: at most 95 pitches a day"), "{text}");
    assert!(!text.contains("\nAdd a sweeper."), "{text}");
}

#[test]
fn pain_forbids_everything() {
    let profile = std::fs::read_to_string(path("three-quarter-right")).expect("a profile");
    let file = std::env::temp_dir().join(format!("arsenalfit-pain-{}.toml", std::process::id()));
    std::fs::write(&file, profile.replace("pain = false", "pain = true")).expect("a temporary file");
    let text = answer(120, &["advise", &file.to_string_lossy(), "--draws", "16"]);
    let levers = answer(120, &["levers", &file.to_string_lossy()]);
    std::fs::remove_file(&file).expect("the temporary file goes");
    assert!(levers.contains("No change of the arsenal now.") && levers.contains("stop throwing"), "{levers}");
    assert!(!levers.contains("runs") && !levers.contains("sweeper"), "no number beside the pain: {levers}");
    assert!(text.contains("Do not add a sweeper now.") && text.contains("stop throwing"), "{text}");
    assert!(!text.contains("mph") || text.find("mph") > text.find("Assumed"), "no shape beside the pain: {text}");
}

#[test]
fn a_file_to_mend_exits_with_two_and_an_empty_standard_output() {
    for arguments in [
        vec!["advise", "profiles/none.toml"],
        vec!["advise", "tests/bad_profiles"],
        vec!["advise"],
        vec!["advise", "profiles/high-slot-left.toml", "--family", "sweper"],
        vec!["dot", "profiles/high-slot-left.toml", "--pitch", "slider"],
        vec!["dot", "--target", "81,0"],
        vec!["dot", "--target", "81,30,30"],
        vec!["nonsense"],
    ] {
        arsenalfit(80, &arguments).assert().code(2).stdout("").stderr(predicate::str::is_empty().not());
    }
}

#[test]
fn bold_type_comes_only_when_asked_for_or_on_a_terminal() {
    let arguments = ["usage", "profiles/high-slot-left.toml", "--color"];
    let with = |choice| answer(80, &[&arguments[..], &[choice]].concat());
    assert!(with("always").contains('\u{1b}'));
    assert!(!with("never").contains('\u{1b}') && !with("auto").contains('\u{1b}'));
}

#[test]
fn help_names_only_commands_that_work() {
    let help = answer(80, &["--help"]);
    insta::assert_snapshot!("help", help);
}

/// A folder of its own for one test, gone with it.
fn folder() -> tempfile::TempDir {
    tempfile::tempdir().expect("a temporary folder")
}

#[test]
fn a_page_is_written_whole_beside_the_same_answer() {
    let folder = folder();
    let file = folder.path().join("page.html");
    let older = "<!DOCTYPE html><html><head><meta name=\"generator\" content=\"arsenalfit\"></head>an older page";
    std::fs::write(&file, older).expect("a file");
    let page = file.to_string_lossy();
    for (command, profile) in [
        ("advise", "fourteen-year-old"),
        ("usage", "high-slot-left"),
        ("levers", "high-slot-left"),
        ("apart", "high-slot-left"),
    ] {
        let profile = path(profile);
        let with_page = answer(80, &[command, &profile, "--report", &page]);
        assert_eq!(with_page, answer(80, &[command, &profile]), "{command}");
        let text = std::fs::read_to_string(&file).expect("a page");
        assert!(text.starts_with("<!DOCTYPE html>") && text.ends_with("</html>"), "{command}");
        assert_eq!(std::fs::read_dir(folder.path()).expect("the folder").count(), 1, "nothing else is left");
    }
}

#[test]
fn a_page_replaces_no_file_that_is_none() {
    let folder = folder();
    let file = folder.path().join("athlete.toml");
    std::fs::write(&file, "# years of notes").expect("a file");
    let arguments = ["usage", &path("high-slot-left"), "--report", &file.to_string_lossy()];
    let refused = predicate::str::contains("is there already").and(predicate::str::contains("--force"));
    arsenalfit(80, &arguments).assert().code(2).stdout("").stderr(refused);
    assert_eq!(std::fs::read_to_string(&file).expect("the file"), "# years of notes");
}

#[test]
fn a_page_that_cannot_be_written_is_an_error_and_no_answer() {
    let nowhere = folder().path().join("gone/page.html");
    let arguments = ["usage", "profiles/high-slot-left.toml", "--report", &nowhere.to_string_lossy()];
    arsenalfit(80, &arguments).assert().code(2).stdout("").stderr(predicate::str::contains("cannot write"));
}

#[test]
fn two_athletes_are_compared_and_the_chances_do_not_depend_on_the_order() {
    let (a, b) = (path("three-quarter-right"), path("high-slot-left"));
    insta::assert_snapshot!("compare-80", answer(80, &["compare", &a, &b]));
    let ask = |one: &str, other: &str| -> Value {
        serde_json::from_str(&answer(80, &["compare", one, other, "--family", "slider", "--format", "json"]))
            .expect("JSON")
    };
    let (there, back) = (ask(&a, &b), ask(&b, &a));
    assert_eq!(there["chance_first_gains_more"], back["chance_second_gains_more"]);
    assert_eq!(there["athletes"][0]["gain_runs_per_100"], back["athletes"][1]["gain_runs_per_100"]);
    for swap in there["athletes"][1]["with_the_others"].as_array().expect("swaps") {
        assert!(["release", "command", "pitches", "hitters"].contains(&swap["thing"].as_str().expect("a thing")));
    }
}

#[test]
fn an_athlete_beside_himself_gains_as_much_in_every_world() {
    let same = path("over-the-top-right");
    let text = answer(80, &["compare", &same, &same, "--format", "json"]);
    let json: Value = serde_json::from_str(&text).expect("JSON");
    assert_eq!(json["chance_first_gains_more"], 0.0);
    assert_eq!(json["chance_second_gains_more"], 0.0);
    assert_eq!(json["athletes"][0], json["athletes"][1]);
}

#[test]
fn a_roster_is_ranked_and_one_bad_profile_does_not_stop_it() {
    let folder = folder();
    for profile in PROFILES {
        std::fs::copy(path(profile), folder.path().join(format!("{profile}.toml"))).expect("a copy");
    }
    let place = folder.path().to_string_lossy();
    // Asked from inside, so that the file it names for the next step is the same on every machine.
    let asked = arsenalfit(80, &["roster", ".", "--draws", "16"]).current_dir(folder.path()).output().expect("it runs");
    insta::assert_snapshot!("roster-80", String::from_utf8_lossy(&asked.stdout));
    let good = answer(80, &["roster", &place, "--draws", "16", "--format", "json"]);
    std::fs::copy("tests/bad_profiles/11-speed-missing.toml", folder.path().join("bad.toml")).expect("a copy");
    let output = arsenalfit(80, &["roster", &place, "--draws", "16", "--format", "json"]).output().expect("it runs");
    assert_eq!(output.status.code(), Some(2));
    assert_eq!(String::from_utf8_lossy(&output.stdout), good, "the good ones are answered all the same");
    assert!(String::from_utf8_lossy(&output.stderr).contains("bad.toml"));
    let worths: Vec<f64> = good
        .lines()
        .map(|line| serde_json::from_str::<Value>(line).expect("an object a line"))
        .map(|member| member["gain_runs_per_100"]["value"].as_f64().unwrap_or(0.0))
        .collect();
    assert_eq!(worths.len(), PROFILES.len());
    assert!(worths.is_sorted_by(|a, b| a >= b), "{worths:?}");
}

/// A changed copy of the first shipped profile in `folder`.
fn changed(folder: &std::path::Path, name: &str, changes: &[(&str, &str)]) -> String {
    let text = std::fs::read_to_string(path(PROFILES[0])).expect("a profile");
    let text = changes.iter().fold(text, |text, (from, to)| {
        assert!(text.contains(from), "{from}");
        text.replace(from, to)
    });
    let file = folder.join(name);
    std::fs::write(&file, text).expect("the temporary folder can be written");
    file.to_string_lossy().into_owned()
}

#[test]
fn a_wrong_sign_on_the_command_line_is_told_as_of_the_command_line() {
    let folder = folder();
    let file = folder.path().join("never.toml").to_string_lossy().into_owned();
    let pitches = ["--pitch", "changeup 80 5 -12", "--pitch", "four-seam 88 15 9"];
    let refused = arsenalfit(120, &[&["new", &file, "--throws", "right"], &pitches[..]].concat()).assert().code(2);
    let said = String::from_utf8_lossy(&refused.get_output().stderr).into_owned();
    assert!(said.contains("the glove-side break of --pitch \"four-seam 88 15 9\" is 9"), "{said}");
    assert!(!said.contains("never.toml"), "no file was written to point at: {said}");
}

#[test]
fn the_page_of_usage_shows_what_the_profile_tells_as_the_text_does() {
    let folder = folder();
    let page = folder.path().join("page.html").to_string_lossy().into_owned();
    let text = answer(80, &["usage", &path(PROFILES[0]), "--report", &page]);
    let page = std::fs::read_to_string(&page).expect("a page");
    assert!(text.contains("48 %") && page.contains("<th scope=\"col\">own</th>") && page.contains("<td>48 %</td>"));
}

#[test]
fn pain_and_injury_stand_before_anything_else() {
    let folder = folder();
    for (key, says) in [("pain", "reports pain"), ("recent_injury", "recent arm injury")] {
        let told = (format!("{key} = false"), format!("{key} = true"));
        let ill = changed(folder.path(), "ill.toml", &[(&told.0, &told.1)]);
        let page = folder.path().join("page.html").to_string_lossy().into_owned();
        let well = path(PROFILES[1]);
        for command in [vec!["usage", &ill], vec!["apart", &ill], vec!["compare", &well, &ill, "--draws", "16"]] {
            let text = answer(120, &[&command[..], &["--report", &page]].concat());
            let page = std::fs::read_to_string(&page).expect("a page");
            for text in [text, page] {
                let (health, rest) = (text.find(says), text.find("How to read this").or(text.find("Why they differ")));
                assert!(
                    text.contains("Before anything else") && health.is_some() && health < rest,
                    "{command:?}: {text}"
                );
            }
            let json = answer(80, &[&command[..], &["--format", "json"]].concat());
            assert!(json.contains(says), "{command:?}: {json}");
        }
        let text = answer(80, &["usage", &ill]);
        assert!(!text.contains("arsenalfit advise"), "nothing new is proposed: {text}");
    }
    assert!(!answer(80, &["usage", &path(PROFILES[0])]).contains("Before anything else"));
}

#[test]
fn a_roster_says_why_not_who_and_how_many_could_not_be_read() {
    let folder = folder();
    let name = "name = \"Sample Athlete A\"";
    changed(folder.path(), "one.toml", &[]);
    changed(folder.path(), "two.toml", &[("pain = false", "pain = true")]);
    changed(
        folder.path(),
        "three.toml",
        &[(name, "name = \"Hurt\""), ("recent_injury = false", "recent_injury = true")],
    );
    let page = folder.path().join("page.html");
    let asked = ["roster", ".", "--draws", "16"];
    let all = arsenalfit(120, &[&asked[..], &["--report", "page.html"]].concat())
        .current_dir(folder.path())
        .output()
        .expect("it runs");
    let text = String::from_utf8_lossy(&all.stdout).into_owned();
    assert!(text.starts_with("3 athletes, ranked") && text.contains("Intervals: from 16"), "{text}");
    let page = std::fs::read_to_string(page).expect("a page").replace("<bdi>", "").replace("</bdi>", "");
    for text in [text, page] {
        for said in ["Hurt: a recent arm injury is reported", "Sample Athlete A (two.toml): pain is reported"] {
            assert!(text.contains(said), "{said}: {text}");
        }
    }
    std::fs::write(folder.path().join("bad.toml"), "bad").expect("it can be written");
    let run = |more: &[&str]| {
        let mut asked = arsenalfit(120, &[&asked[..], more].concat());
        String::from_utf8_lossy(&asked.current_dir(folder.path()).output().expect("it runs").stdout).into_owned()
    };
    assert!(run(&[]).starts_with("3 athletes, 1 file could not be read"));
    let lines = run(&["--format", "json"]);
    let reasons: Vec<Value> = lines.lines().map(|line| serde_json::from_str::<Value>(line).expect("JSON")).collect();
    assert!(reasons.iter().all(|member| member["reason"].is_string() == (member["verdict"] == "not_now")), "{lines}");
}

#[test]
fn a_starter_profile_is_written_once_loads_and_is_never_written_over() {
    let folder = folder();
    let file = folder.path().join("new.toml").to_string_lossy().into_owned();
    let flags = ["new", &file, "--throws", "left", "--name", "Invented O'Name", "--pitch"];
    answer(80, &[&flags[..], &["four-seam 90 16 -8", "--pitch", "changeup, 81, 6, -14"]].concat());
    assert!(answer(80, &["check", &file]).starts_with("Invented O'Name, throws left"));
    let before = std::fs::read(&file).expect("the file");
    arsenalfit(80, &[&flags[..], &["slider 80 1 4"]].concat()).assert().code(2).stdout("");
    assert_eq!(std::fs::read(&file).expect("the file"), before);
    for wrong in ["four-seam 91", "sweper 80 1 4", "four-seam 91 -20 0", "slider fast 1 4"] {
        let other = folder.path().join("other.toml");
        let arguments = ["new", &other.to_string_lossy(), "--throws", "right", "--pitch", wrong];
        arsenalfit(80, &arguments).assert().code(2).stdout("").stderr(predicate::str::is_empty().not());
        assert!(!other.exists(), "{wrong} leaves nothing behind");
    }
    arsenalfit(80, &["new", "somewhere.toml"]).assert().code(2).stderr(predicate::str::contains("--throws"));
}
