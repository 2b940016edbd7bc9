//! Any bytes as a profile. What must hold stands in `tests/common/fuzz_bodies.rs`, which the stable tests share.

#![no_main]

#[path = "../../common/fuzz_bodies.rs"]
mod bodies;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| bodies::run(bodies::Target::Profile, bytes));
