#!/usr/bin/env bash
# Sets every page of the shipped profiles and opens it in a real browser (check.mjs says what is
# looked at). Installs Chromium, Node and axe-core when absent; where they cannot be installed it
# says so and checks nothing.
set -euo pipefail
cd "$(dirname "$0")/../.."

tools=target/browser
axe=$tools/node_modules/axe-core/axe.min.js
program=target/debug/arsenalfit
mkdir -p "$tools/pages"

skip() {
  echo "SKIPPED the browser checks: $1"
  exit 0
}

need() { # need COMMAND PACKAGE...
  command -v "$1" >/dev/null 2>&1 && return
  shift
  { apt-get update -qq && apt-get install -y -qq --no-install-recommends "$@"; } >"$tools/install.log" 2>&1 ||
    skip "$* cannot be installed here (see $tools/install.log)"
}

need chromium chromium fonts-dejavu-core
need node nodejs
if [ ! -f "$axe" ]; then
  need npm npm
  npm install --prefix "$tools" --no-save --no-package-lock --no-audit --no-fund axe-core@4.14.1 \
    >"$tools/install.log" 2>&1 || skip "axe-core cannot be installed here (see $tools/install.log)"
fi

[ -x "$program" ] || cargo build --locked
rm -f "$tools"/pages/*.html
for profile in profiles/*.toml; do
  name=$(basename "$profile" .toml)
  for command in check dot advise usage levers apart; do
    "$program" "$command" "$profile" --report "$tools/pages/$command-$name.html" >/dev/null
  done
done
"$program" compare profiles/three-quarter-right.toml profiles/high-slot-left.toml --report "$tools/pages/compare.html" >/dev/null
"$program" sort demo-data/session-*.csv --hand left --report "$tools/pages/sort.html" >/dev/null
wish=79.5,-2.5,13.5 thrower=profiles/three-quarter-right.toml
"$program" trial demo-data/trial-four-grips.csv --profile "$thrower" --target "$wish" --report "$tools/pages/trial.html" >/dev/null
"$program" progress "$thrower" demo-data/progress-week-*.csv --target "$wish" --report "$tools/pages/progress.html" >/dev/null
"$program" plan "$thrower" --start 2031-11-03 --end 2032-02-29 --target "$wish" --report "$tools/pages/plan.html" >/dev/null
"$program" roster profiles --report "$tools/pages/roster.html" >/dev/null

node tests/browser/check.mjs "$(command -v chromium)" "$axe" "$tools"/pages/*.html ||
  echo "FAULTS of pages are told above: some print letters are too small, some tables too wide for a phone"
