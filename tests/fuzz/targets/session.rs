//! Any bytes as throws, with a column map of their own or without. What must hold stands in `bodies.rs`, which the stable tests share.

#![no_main]

#[path = "../bodies.rs"]
mod bodies;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| bodies::run(bodies::Target::Session, bytes));
