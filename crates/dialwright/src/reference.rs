//! `dialwright reference`: the pages and schemas that are generated from the parameter tables and the report's types.

use crate::Outcome;
use crate::talk::Talk;
use std::fs;
use std::path::Path;

/// Writes all of them into a folder.
pub fn run(into: &Path) -> Result<Outcome, Talk> {
    let pages = [
        ("dial-file.md", dial::design::reference_page()),
        ("dial-file.schema.json", format!("{:#}\n", dial::design::schema())),
        ("workshop-file.md", workshop::reference_page()),
        ("workshop-file.schema.json", format!("{:#}\n", workshop::schema())),
        ("report.schema.json", format!("{:#}\n", press::report_schema())),
        ("steps.schema.json", format!("{:#}\n", press::job_schema())),
        ("votes-file.md", workshop::votes_page()),
        ("votes-file.schema.json", format!("{:#}\n", workshop::votes_schema())),
    ];
    let cannot =
        |path: &Path, error: std::io::Error| Talk::Plain(format!("{} cannot be written: {error}", path.display()));
    fs::create_dir_all(into).map_err(|error| cannot(into, error))?;
    for (name, text) in pages {
        let path = into.join(name);
        fs::write(&path, text).map_err(|error| cannot(&path, error))?;
    }
    Ok(Outcome::Well)
}
