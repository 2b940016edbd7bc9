//! Any bytes as a column map. What must hold stands in `bodies.rs`, which the stable tests share.

#![no_main]

#[path = "../bodies.rs"]
mod bodies;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| bodies::run(bodies::Target::Columns, bytes));
