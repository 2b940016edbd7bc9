#!/usr/bin/env bash
# What is written for other programs, read by programs that share no code with this one: the calendar
# by Python's icalendar, the schema by Python's jsonschema. Runs after `cargo test`, which leaves the
# calendar; installs what it needs into target/.
set -euo pipefail
cd "$(dirname "$0")/../.."

python=target/python/bin/python
if [ ! -x "$python" ] || ! "$python" -c "import icalendar, jsonschema" 2>/dev/null; then
  if ! python3 -c "import sys, venv, ensurepip, tomllib" 2>/dev/null; then
    apt-get update -qq
    apt-get install -y -qq --no-install-recommends python3 python3-venv
  fi
  python3 -m venv target/python
  "$python" -m pip install --quiet --disable-pip-version-check icalendar==7.3.2 jsonschema==4.26.0
fi

[ -f target/tmp/plan.ics ] || cargo test --locked --test plan_texts
"$python" tests/data/check_calendar.py target/tmp/plan.ics

[ -x target/debug/arsenalfit ] || cargo build --locked
target/debug/arsenalfit schema >target/tmp/profile.schema.json
"$python" tests/data/check_schema.py target/tmp/profile.schema.json
