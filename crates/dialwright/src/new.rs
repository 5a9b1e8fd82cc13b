//! `dialwright new`: a folder with a commented dial file that already passes.

use crate::Outcome;
use crate::args::New;
use crate::talk::Talk;
use crate::{brief, load};
use dial::design;
use std::fs;
use std::path::Path;

/// Runs the command.
pub fn run(args: &New) -> Result<Outcome, Talk> {
    let counters =
        args.counters.iter().map(|one| brief::split(one)).collect::<Result<Vec<_>, _>>().map_err(Talk::Plain)?;
    let folder = Path::new(&args.name);
    let name = folder.file_name().and_then(|name| name.to_str()).unwrap_or_default();
    if name.is_empty() {
        return Err(Talk::Plain(format!(
            "“{}” does not name a folder: say a name, as `dialwright new harbour`",
            args.name
        )));
    }
    let text = design::new_file(&titled(name), &counters, &args.stock);
    let file = folder.join("dial.toml");
    // Nothing is made that does not read: a mistake in the brief is shown in the file it would have become.
    design::read(&text, &load::workshop(None, Some(&file))?).map_err(|mistakes| Talk::Mistakes {
        file: file.clone(),
        text: text.clone(),
        mistakes,
    })?;
    if file.exists() {
        return Err(Talk::Plain(format!(
            "{} is there already: choose another name, or remove it first",
            file.display()
        )));
    }
    let cannot = |error: std::io::Error| Talk::Plain(format!("{} cannot be written: {error}", file.display()));
    fs::create_dir_all(folder).map_err(cannot)?;
    fs::OpenOptions::new()
        .write(true)
        .create_new(true)
        .open(&file)
        .and_then(|mut open| std::io::Write::write_all(&mut open, text.as_bytes()))
        .map_err(cannot)?;
    if args.json {
        println!("{:#}", serde_json::json!({ "dial_file": file, "counters": counters.len() }));
    } else {
        println!("wrote {}", file.display());
        println!("next: dialwright check {}", file.display());
    }
    Ok(Outcome::Well)
}

/// The folder's name as a title: a capital first, hyphens and underlines as spaces.
fn titled(name: &str) -> String {
    let spaced = name.replace(['-', '_'], " ");
    let mut letters = spaced.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
