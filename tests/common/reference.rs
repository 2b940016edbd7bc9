//! The teaching data under `tests/data` (its README names the source), by its own labels.

use std::collections::BTreeMap;

use serde::de::DeserializeOwned;

/// All pitches by label; the label "pitch" (one throw) says nothing and is left out.
pub(crate) fn by_label<Row: DeserializeOwned>() -> BTreeMap<String, Vec<Row>> {
    let mut reader = csv::Reader::from_reader(include_str!("../data/reference_pitches.csv").as_bytes());
    let headers = reader.headers().expect("a header").clone();
    let label = headers.iter().position(|header| header == "pitch").expect("a column of labels");
    let mut labels = BTreeMap::<String, Vec<Row>>::new();
    for record in reader.records() {
        let record = record.expect("a row");
        if &record[label] != "pitch" {
            let row = record.deserialize(Some(&headers)).expect("a complete row");
            labels.entry(record[label].to_owned()).or_default().push(row);
        }
    }
    labels
}
