//! `fuelwright.toml` as plain entries: line, key, text. Judging them is for whoever knows the keys.

use super::{BadConfig, bad};

/// Line, key and value of every entry; one level of tables is folded into the key.
pub(super) fn entries(text: &str) -> Result<Vec<(usize, String, String)>, BadConfig> {
    use toml::de::DeTable;
    let line = |at: usize| text[..at.min(text.len())].matches('\n').count() + 1;
    let table = DeTable::parse(text).map_err(|error| {
        let place = format!("fuelwright.toml line {}", line(error.span().map_or(0, |span| span.start)));
        bad(&place, "the text", error.message(), "TOML")
    })?;
    let mut all = vec![];
    for (key, value) in table.get_ref() {
        if let Some(inner) = value.get_ref().as_table() {
            for (inner_key, value) in inner {
                let key = format!("{}.{}", key.get_ref(), inner_key.get_ref());
                all.push((line(inner_key.span().start), key, plain(value.get_ref())));
            }
        } else {
            all.push((line(key.span().start), key.get_ref().to_string(), plain(value.get_ref())));
        }
    }
    all.sort();
    Ok(all)
}

fn plain(value: &toml::de::DeValue<'_>) -> String {
    use toml::de::DeValue;
    match value {
        DeValue::String(text) => text.to_string(),
        DeValue::Integer(number) => number.to_string(),
        DeValue::Boolean(truth) => truth.to_string(),
        DeValue::Array(all) => all.iter().map(|one| plain(one.get_ref())).collect::<Vec<_>>().join(","),
        other => format!("{other:?}"),
    }
}
