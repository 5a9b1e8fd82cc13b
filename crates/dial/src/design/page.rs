//! The reference page and the schema, made from the table of parameters.

use super::table::{Default, Groups, Kind, Param, all};
use super::value::example;
use serde_json::{Map, Value, json};

/// A page in Markdown: one section for each table, one row for each parameter.
pub fn reference_page(title: &str, opening: &str, groups: Groups) -> String {
    let mut page = format!("# {title}\n\nThis page is generated from the table of parameters.\n\n{opening}\n");
    for group in groups {
        section(&mut page, group, "");
    }
    page
}

fn section(page: &mut String, group: &[Param], within: &str) {
    let Some(first) = group.first() else { return };
    let table = first.path.rsplit_once('.').map_or("", |(table, _)| table);
    let heading = match (within.is_empty(), table.is_empty()) {
        (true, true) => "The whole file".to_owned(),
        (true, false) => format!("`[{table}]`"),
        (false, true) => format!("`{within}`: its own keys"),
        (false, false) => format!("`{within}`: its own `{table}`, as in `[{table}]`"),
    };
    page.push_str(&format!("\n## {heading}\n\n"));
    if !within.is_empty() && !table.is_empty() {
        let keys: Vec<String> = group.iter().map(|param| format!("`{}`", param.key())).collect();
        page.push_str(&format!("Overrides the dial's {}.\n", keys.join(", ")));
        return;
    }
    page.push_str("| key | what is written | default | what it means | source |\n|---|---|---|---|---|\n");
    for param in group {
        let default = match param.default {
            Default::Required => "must be given".to_owned(),
            Default::Fixed(text) => {
                format!("`{}`", if text.is_empty() { "\"\"".to_owned() } else { example(param) })
            }
            Default::Derived(words) => words.to_owned(),
        };
        page.push_str(&format!(
            "| `{}` | {} | {} | {} | {} |\n",
            param.key(),
            param.kind.words(),
            default,
            param.words,
            param.source
        ));
    }
    for param in group {
        if let Kind::List(groups) | Kind::Named(groups) = param.kind {
            let brackets = if matches!(param.kind, Kind::List(_)) {
                format!("[[{}]]", param.path)
            } else {
                format!("[{}.\"a name\"]", param.path)
            };
            for group in groups {
                section(page, group, &brackets);
            }
        }
    }
}

/// A JSON Schema (2020-12) for editors.
pub fn schema(title: &str, groups: Groups) -> Value {
    let mut root = object(groups);
    root.insert("$schema".into(), json!("https://json-schema.org/draft/2020-12/schema"));
    root.insert("title".into(), json!(title));
    Value::Object(root)
}

fn object(groups: Groups) -> Map<String, Value> {
    let mut properties = Map::new();
    let mut required = Vec::new();
    for param in all(groups) {
        match param.path.split_once('.') {
            None => {
                properties.insert(param.path.into(), of(param));
                if param.default == Default::Required {
                    required.push(json!(param.path));
                }
            }
            Some((table, key)) => {
                let inner = properties
                    .entry(table)
                    .or_insert_with(|| json!({ "type": "object", "additionalProperties": false, "properties": {} }));
                inner["properties"][key] = of(param);
            }
        }
    }
    let mut object = Map::new();
    object.insert("type".into(), json!("object"));
    object.insert("additionalProperties".into(), json!(false));
    object.insert("properties".into(), Value::Object(properties));
    if !required.is_empty() {
        object.insert("required".into(), Value::Array(required));
    }
    object
}

/// A length with its unit.
const LENGTH: &str = "^\\s*-?[0-9./ ]+(mm|cm|in|inch|inches|\")\\s*$";

fn of(param: &Param) -> Value {
    let length = || json!({ "type": "string", "pattern": LENGTH });
    let point = || json!({ "type": "array", "items": length(), "minItems": 2, "maxItems": 2 });
    let mut schema = match param.kind {
        Kind::Text | Kind::Stock => json!({ "type": "string" }),
        Kind::Length(..) => length(),
        Kind::Angle => json!({ "type": "string", "pattern": "(deg|degrees|°|rad|o'clock)\\s*$" }),
        Kind::Share(low, high) | Kind::Number(low, high) => {
            json!({ "type": "number", "minimum": low, "maximum": high })
        }
        Kind::Unit(unit, ..) => json!({ "type": "string", "pattern": format!("^\\s*[0-9.]+\\s*{unit}\\s*$") }),
        Kind::Grade => {
            json!({ "type": "string", "pattern": "^\\s*([Nn][0-9]{2}[A-Za-z]{0,2}|[0-9.]+(\\s*to\\s*[0-9.]+)?\\s*[Tt])\\s*$" })
        }
        Kind::Friction => {
            json!({ "type": "string", "pattern": "^\\s*[0-9.]+(\\s*to\\s*[0-9.]+)?\\s*(deg|degrees|\u{b0})?\\s*$" })
        }
        Kind::Count(low, high) => json!({ "type": "integer", "minimum": low, "maximum": high }),
        Kind::Flag => json!({ "type": "boolean" }),
        Kind::Choice(words) => json!({ "enum": words }),
        Kind::Words([]) => json!({ "type": "array", "items": { "type": "string" }, "minItems": 2 }),
        Kind::Words(words) => json!({ "type": "array", "items": { "enum": words } }),
        Kind::Point => point(),
        Kind::Points => json!({ "type": "array", "items": point(), "minItems": 3 }),
        Kind::Values => json!({ "anyOf": [
            { "type": "string" },
            { "type": "array", "items": { "type": ["string", "integer"] }, "minItems": 2, "maxItems": 100 },
        ] }),
        Kind::Symbols => {
            json!({ "type": "array", "items": symbol(), "minItems": 2, "maxItems": 100 })
        }
        Kind::Symbol => symbol(),
        Kind::Colour => json!({ "type": "string", "pattern": "^#[0-9a-fA-F]{6}$" }),
        Kind::List(groups) => {
            let mut list = json!({ "type": "array", "items": Value::Object(object(groups)) });
            if param.default == Default::Required {
                list["minItems"] = json!(1);
            }
            list
        }
        Kind::Named(groups) => {
            json!({ "type": "object", "additionalProperties": Value::Object(object(groups)) })
        }
    };
    schema["description"] = json!(format!("{}; {}", param.words, param.kind.words()));
    match (param.default, param.kind) {
        (Default::Fixed(text), Kind::Flag) => schema["default"] = json!(text == "true"),
        (Default::Fixed(text), Kind::Count(..)) => schema["default"] = json!(text.parse::<i64>().ok()),
        (Default::Fixed(text), Kind::Share(..) | Kind::Number(..)) => {
            schema["default"] = json!(text.parse::<f64>().ok())
        }
        (Default::Fixed(text), Kind::Words(_)) => schema["default"] = json!([text]),
        (Default::Fixed(text), _) => schema["default"] = json!(text),
        _ => {}
    }
    schema
}

fn symbol() -> Value {
    json!({ "enum": lettering::Symbol::all().map(|symbol| symbol.name()).collect::<Vec<_>>() })
}

/// A key as a comment in a new file, with its default and its meaning.
pub(crate) fn commented(param: &Param) -> String {
    let value = match param.default {
        Default::Fixed(_) => example(param),
        _ => match param.kind {
            Kind::List(_) | Kind::Named(_) => return String::new(),
            _ => example(param),
        },
    };
    let default = match param.default {
        Default::Derived(words) => format!("; without it: {words}"),
        _ => String::new(),
    };
    format!("# {} = {value}  # {}{default}\n", param.key(), param.words)
}
