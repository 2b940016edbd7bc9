#!/usr/bin/env bash
# Every fuzz target for a short while, from the stored inputs. What is found goes to target/fuzz-found,
# never into the stored inputs. The first argument is how many seconds each target gets. Without
# cargo-fuzz and a nightly Rust it says so and passes: `cargo test` reads the stored inputs, and
# changes of them, on any Rust.
set -euo pipefail
cd "$(dirname "$0")/../.."

seconds=${1:-20}
if ! cargo fuzz --version >/dev/null 2>&1 || ! rustup toolchain list 2>/dev/null | grep -q '^nightly-[^0-9]'; then
  echo "fuzzing is skipped; for it, \`rustup toolchain install nightly --profile minimal\` and \`cargo install cargo-fuzz\`"
  exit 0
fi

for target in profile columns session trial; do
  found=target/fuzz-found/$target
  mkdir -p "$found"
  if ! cargo +nightly fuzz run --fuzz-dir tests/fuzz --target-dir target/fuzz "$target" "$found" "tests/fuzz/corpus/$target" -- \
    "-max_total_time=$seconds" -max_len=8192 "-dict=tests/fuzz/dictionaries/$target.dict" "-artifact_prefix=$found/" \
    >"$found.log" 2>&1; then
    tail -n 60 "$found.log"
    echo "fuzzing $target: a finding, or it could not be run; all of it is in $found.log"
    exit 1
  fi
  echo "fuzzing $target: $(grep '^Done' "$found.log")"
done
