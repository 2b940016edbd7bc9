//! The examples at the end of each command's help. A test runs every one of them on the shipped
//! profiles and demo data, so they must stay within 80 columns and end well.

pub(super) const ARSENALFIT: &str = "\
Examples:
  arsenalfit advise profiles/three-quarter-right.toml
  arsenalfit new athlete.toml --throws right --pitch \"four-seam 91 16 -7\"

Every command has examples of its own: arsenalfit advise --help";

pub(super) const CHECK: &str = "\
Examples:
  arsenalfit check profiles/three-quarter-right.toml
  arsenalfit check profiles/high-slot-left.toml --elevation 5200";

pub(super) const SORT: &str = "\
Examples:
  arsenalfit sort demo-data/session-*.csv --hand left
  arsenalfit sort demo-data/session-*.csv --hand left --write athlete.toml
  arsenalfit sort demo-data/session-2031-02-03.csv --explain-columns";

pub(super) const APART: &str = "\
Examples:
  arsenalfit apart profiles/three-quarter-right.toml
  arsenalfit apart profiles/high-slot-left.toml --report apart.html";

pub(super) const USAGE: &str = "\
Examples:
  arsenalfit usage profiles/three-quarter-right.toml
  arsenalfit usage profiles/high-slot-left.toml --report usage.html";

pub(super) const LEVERS: &str = "\
Examples:
  arsenalfit levers profiles/three-quarter-right.toml
  arsenalfit levers profiles/high-slot-left.toml --report levers.html";

pub(super) const ADVISE: &str = "\
Examples:
  arsenalfit advise profiles/three-quarter-right.toml
  arsenalfit advise profiles/high-slot-left.toml --family splitter --why
  arsenalfit advise --session demo-data/session-2031-02-03.csv --hand left";

pub(super) const DOT: &str = "\
Examples:
  arsenalfit dot profiles/three-quarter-right.toml --pitch slider
  arsenalfit dot --target 81,-4,14 --throws left";

pub(super) const TRIAL: &str = "\
Examples:
  arsenalfit trial demo-data/trial-four-grips.csv \\
    --profile profiles/three-quarter-right.toml --target 79.5,-2.5,13.5";

pub(super) const PROGRESS: &str = "\
Examples:
  arsenalfit progress profiles/three-quarter-right.toml \\
    demo-data/progress-week-*.csv --target 79.5,-2.5,13.5";

pub(super) const PLAN: &str = "\
Examples:
  arsenalfit plan profiles/three-quarter-right.toml \\
    --start 2031-11-03 --end 2032-02-29 --markdown plan.md --ics plan.ics";

pub(super) const COMPARE: &str = "\
Examples:
  arsenalfit compare profiles/three-quarter-right.toml \\
    profiles/high-slot-left.toml --family slider";

pub(super) const ROSTER: &str = "\
Examples:
  arsenalfit roster profiles
  arsenalfit roster profiles --format json";

pub(super) const NEW: &str = "\
Examples:
  arsenalfit new athlete.toml --throws right --age 20 \\
    --pitch \"four-seam 91 16 -7\" --pitch \"changeup 83 6 -14\"";

pub(super) const COMPLETIONS: &str = "\
Examples:
  arsenalfit completions bash > arsenalfit.bash
  arsenalfit completions zsh > _arsenalfit";

pub(super) const MAN: &str = "\
Examples:
  arsenalfit man advise > advise.1
  arsenalfit man --dir man1";

pub(super) const SCHEMA: &str = "\
Examples:
  arsenalfit schema > profile.schema.json";
