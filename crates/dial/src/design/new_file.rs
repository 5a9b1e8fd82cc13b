//! A new dial file: what the brief says, and the rarer keys as comments.

use super::counting;
use super::page::commented;
use super::parameters::DIAL_FILE;
use super::table::{Default, Kind};

/// The text of a dial file for a name, counters (name and values) and a stock.
pub fn new_file(name: &str, counters: &[(String, String)], stock: &str) -> String {
    let mut text = format!(
        "# {}: a counter dial.\n# Lengths are written with their unit: \"3.2 mm\", \"1/8 in\". What is left out is derived;\n# the lines that begin with # show how it would be written.\n\nname = {}\nstock = {}\n",
        one_line(name),
        quoted(name),
        quoted(stock)
    );
    for param in
        DIAL_FILE[0].iter().filter(|param| !matches!(param.default, Default::Required) && param.path != "stock")
    {
        text += &commented(param);
    }
    for (counter, values) in counters {
        text += &format!("\n[[counter]]\nname = {}\nvalues = {}\n", quoted(counter), written(values));
    }
    text += "# label = \"...\"  # text beside the window; \"\" for none\n# symbol = \"flame\"  # symbol beside the window; `dialwright list symbols` shows them\n";
    for group in &DIAL_FILE[1..] {
        let Some(first) = group.first() else { continue };
        let table = first.path.split('.').next().unwrap_or_default();
        if !text.contains(&format!("\n# [{table}]\n")) {
            text += &format!("\n# [{table}]\n");
        }
        for param in group.iter().filter(|param| !matches!(param.kind, Kind::List(_))) {
            text += &commented(param);
        }
    }
    text
}

/// A range as it is, a comma list as a list.
fn written(values: &str) -> String {
    match counting::range(values) {
        Ok(_) if !values.contains("..") => {
            let words: Vec<String> =
                values.split(',').map(str::trim).filter(|word| !word.is_empty()).map(quoted).collect();
            format!("[{}]", words.join(", "))
        }
        _ => quoted(values),
    }
}

/// Text as TOML writes it.
fn quoted(text: &str) -> String {
    toml::Value::String(one_line(text)).to_string()
}

/// Text on one line, without the control characters that a TOML comment must not hold.
fn one_line(text: &str) -> String {
    text.split(|c: char| c.is_whitespace() || c.is_control())
        .filter(|word| !word.is_empty())
        .collect::<Vec<_>>()
        .join(" ")
}
