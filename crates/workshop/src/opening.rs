//! Comments that a file opens with.

use toml_edit::DocumentMut;

/// Takes the comments out of a file that holds nothing else, to be written above whatever comes into it: left in, they would trail it.
pub fn opening_comments(document: &mut DocumentMut) -> String {
    if !document.is_empty() {
        return String::new();
    }
    let comments = document.trailing().as_str().unwrap_or_default().trim_end();
    let opening = if comments.is_empty() { String::new() } else { format!("{comments}\n\n") };
    document.set_trailing("");
    opening
}

/// What came into the file, under its opening comments, if it has any.
pub fn below(opening: String, text: &str) -> String {
    if opening.is_empty() { text.to_owned() } else { opening + text.trim_start() }
}
