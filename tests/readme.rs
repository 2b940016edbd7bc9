//! What the README shows is what the program says.

use assert_cmd::Command;

#[test]
fn the_run_in_the_readme_is_what_the_program_prints_today() {
    let readme = std::fs::read_to_string("README.md").expect("the README");
    let shown = readme.split("```text\n").nth(1).and_then(|rest| rest.split("```").next()).expect("a run");
    let output = Command::cargo_bin("arsenalfit")
        .expect("the program")
        .env("COLUMNS", "80")
        .args(["advise", "profiles/three-quarter-right.toml"])
        .output()
        .expect("it runs");
    assert_eq!(shown, String::from_utf8_lossy(&output.stdout));
}

#[test]
fn the_profile_in_the_readme_is_a_valid_one() {
    let readme = std::fs::read_to_string("README.md").expect("the README");
    let profile = readme.split("```toml\n").nth(1).and_then(|rest| rest.split("```").next()).expect("a profile");
    arsenalfit::input::profile_from_toml(profile, "README.md").expect("it loads");
}
