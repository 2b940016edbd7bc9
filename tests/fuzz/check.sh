#!/usr/bin/env bash
# Every fuzz target for a short while, from the stored inputs. What is found goes to target/fuzz-found,
# never into the stored inputs. Without cargo-fuzz and a nightly Rust it says so and passes; the stored
# inputs are read by `cargo test` all the same. The first argument is how many seconds each target gets.
set -euo pipefail
cd "$(dirname "$0")/../.."

seconds=${1:-20}
if ! cargo fuzz --version >/dev/null 2>&1 || ! rustup toolchain list 2>/dev/null | grep -q '^nightly'; then
  echo "fuzzing is skipped: it needs \`rustup toolchain install nightly --profile minimal\` and \`cargo install cargo-fuzz\`"
  exit 0
fi

for target in profile columns session trial; do
  found=target/fuzz-found/$target
  mkdir -p "$found"
  cargo +nightly fuzz run --fuzz-dir tests/fuzz --target-dir target/fuzz "$target" "$found" "tests/fuzz/corpus/$target" -- \
    "-max_total_time=$seconds" -max_len=8192 "-dict=tests/fuzz/dictionaries/$target.dict" "-artifact_prefix=$found/" \
    -print_final_stats=1
done
