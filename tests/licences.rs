//! Whoever gets the program may use, change and pass on every part of it: each crate it is built or
//! tested with is under a licence of this list, and the texts of our own lie beside the manifest.

use std::process::Command;

use serde_json::Value;
use spdx::{Expression, LicenseReq, ParseMode};

/// Permissive licences; a choice ("or") needs one of them, a sum ("and") needs all.
const ALLOWED: [&str; 5] = ["MIT", "Apache-2.0", "Zlib", "Unicode-3.0", "BSD-2-Clause"];

/// Every crate of `Cargo.lock`, those for other systems too; with it the manifest of this one.
fn packages() -> Vec<Value> {
    let cargo = Command::new(env!("CARGO"))
        .args(["metadata", "--locked", "--format-version", "1", "--all-features"])
        .output()
        .expect("cargo runs");
    assert!(cargo.status.success(), "{}", String::from_utf8_lossy(&cargo.stderr));
    let metadata: Value = serde_json::from_slice(&cargo.stdout).expect("JSON");
    metadata["packages"].as_array().expect("a list").clone()
}

fn is_allowed(needed: &LicenseReq) -> bool {
    needed.addition.is_none() && needed.license.id().is_some_and(|id| ALLOWED.contains(&id.name))
}

#[test]
fn every_dependency_is_under_an_allowed_licence() {
    let packages = packages();
    assert!(packages.len() > 100, "only {} crates", packages.len());
    for package in packages {
        let name = &package["name"];
        let terms = package["license"].as_str().unwrap_or_else(|| panic!("{name} names no licence"));
        let terms = Expression::parse_mode(terms, ParseMode::LAX).unwrap_or_else(|error| panic!("{name}: {error}"));
        assert!(terms.evaluate(is_allowed), "{name} is under {terms}");
    }
}

#[test]
fn a_licence_not_on_the_list_is_noticed() {
    let allows = |terms: &str| Expression::parse_mode(terms, ParseMode::LAX).expect("terms").evaluate(is_allowed);
    assert!(allows("GPL-3.0-only OR MIT") && allows("Unlicense/MIT"));
    assert!(!allows("GPL-3.0-only") && !allows("MIT AND MPL-2.0") && !allows("Apache-2.0 WITH LLVM-exception"));
}

#[test]
fn the_texts_of_our_own_licences_lie_beside_the_manifest() {
    assert!(include_str!("../Cargo.toml").contains("license = \"MIT OR Apache-2.0\""));
    let mit = include_str!("../LICENSE-MIT");
    assert!(mit.starts_with("MIT License") && mit.contains("the arsenalfit authors"));
    assert!(include_str!("../LICENSE-APACHE").contains("Version 2.0, January 2004"));
}
