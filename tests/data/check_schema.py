"""Read the profile's schema as others will: Python's jsonschema, a validator that shares no code
with the reader. Every shipped profile must pass; a wrong one must not, unless it is wrong in a way
that no schema can say. Run from the top of the repository:

    arsenalfit schema > schema.json && python tests/data/check_schema.py schema.json
"""
import json
import pathlib
import sys
import tomllib

import jsonschema

# Wrong profiles whose values are each right by themselves: names used twice, values that contradict
# each other or physics; and "not a number", which no range excludes.
BEYOND_A_SCHEMA = {
    "38-speed-not-a-number",
    "59-pitch-name-used-twice",
    "61-age-against-level",
    "62-humidity-without-temperature",
    "63-pressure-reduced-to-sea-level",
    "64-usage-of-some-pitches-only",
    "65-usage-sums-to-more-than-one",
    "67-more-swings-than-pitches",
    "68-more-misses-than-swings",
    "69-more-weak-contacts-than-contacts",
    "71-spin-zero-but-partly-active",
    "72-bullet-spin-with-a-clock",
    "73-left-handers-fastball-sign",
    "74-four-seam-below-the-spinless-throw",
    "75-clock-seen-by-the-catcher",
    "76-clock-against-the-breaks",
    "77-left-handers-clock-not-mirrored",
    "78-break-beyond-physics",
    "79-break-too-large-for-the-spin",
    "80-fastball-floor-without-a-fastball",
    "81-breaking-cap-with-only-breaking-balls",
}


def load(path):
    """The document, or nothing when it is no TOML at all."""
    try:
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except tomllib.TOMLDecodeError:
        return None


with open(sys.argv[1], encoding="utf-8") as file:
    schema = json.load(file)
jsonschema.Draft202012Validator.check_schema(schema)
validator = jsonschema.Draft202012Validator(schema)

good = sorted(pathlib.Path("profiles").glob("*.toml"))
assert len(good) >= 5, good
for path in good:
    errors = [error.message for error in validator.iter_errors(load(path))]
    assert not errors, (path.name, errors)

wrong = {path.stem: load(path) for path in sorted(pathlib.Path("tests/bad_profiles").glob("*.toml"))}
documents = {name: document for name, document in wrong.items() if document is not None}
passing = {name for name, document in documents.items() if validator.is_valid(document)}
assert len(documents) >= 70, len(documents)
assert passing == BEYOND_A_SCHEMA, (
    "a schema could refuse these, and does not: " + ", ".join(sorted(passing - BEYOND_A_SCHEMA)),
    "these are refused after all, or gone; take them from the list: " + ", ".join(sorted(BEYOND_A_SCHEMA - passing)),
)
print(f"{len(good)} profiles pass, {len(documents) - len(passing)} wrong ones do not, {len(passing)} are beyond a schema")
