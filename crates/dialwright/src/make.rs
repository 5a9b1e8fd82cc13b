//! `dialwright make`: the job folder.

use crate::Outcome;
use crate::args::Make;
use crate::check::look;
use crate::talk::Talk;
use dial::findings;
use dial::job;
use press::Written;
use std::path::PathBuf;

/// Runs the command.
pub fn run(args: &Make) -> Result<Outcome, Talk> {
    let looked = look(&args.on, &[])?;
    let words = looked.words();
    if findings::refuses(&looked.dial.findings) {
        if args.on.json {
            println!("{:#}", looked.report());
        } else {
            print!("{words}");
        }
        eprintln!("nothing was made: mend what is to be refused first");
        return Ok(Outcome::Refused);
    }
    let job = job::plan(&looked.dial.laid.dial, &looked.loaded.workshop)
        .map_err(|errors| Talk::Plain(errors.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n")))?;
    let files = files(
        &press::Make {
            looked: &looked.dial,
            job: &job,
            workshop: &looked.loaded.workshop,
            dial_file: &looked.loaded.text,
            words: &words,
        },
        paper(args),
    )
    .map_err(Talk::Plain)?;
    let target = args.to.clone().unwrap_or_else(|| beside(&looked.loaded.file, &looked.dial.laid.dial.name));
    let written = press::write_job(&target, &files).map_err(|error| Talk::Plain(error.to_string()))?;
    if args.on.json {
        let mut report = looked.report();
        report["job"] = press::job_report(&job);
        report["job"]["folder"] = serde_json::json!(target);
        report["job"]["files"] = serde_json::json!(files.iter().map(|(path, _)| path).collect::<Vec<_>>());
        println!("{report:#}");
        return Ok(Outcome::Well);
    }
    print!("{words}");
    let what = match written {
        Written::New => "made".to_owned(),
        Written::Unchanged => "unchanged".to_owned(),
        Written::Kept { kept, foreign } => {
            let why = if foreign { ", with files that are not ours or were changed" } else { "" };
            format!("made anew; what was there is kept as {}{why}:", kept.display())
        }
    };
    println!("{what} {} ({} files); begin with READ-ME-FIRST.txt", target.display(), files.len());
    Ok(Outcome::Well)
}

/// The paper that was asked for, if this program sets paper.
#[cfg(feature = "workbook")]
type Paper = workbook::Paper;
/// No paper without the workbook.
#[cfg(not(feature = "workbook"))]
type Paper = ();

#[cfg(feature = "workbook")]
fn paper(args: &Make) -> Option<Paper> {
    args.paper
}

#[cfg(not(feature = "workbook"))]
fn paper(_: &Make) -> Option<Paper> {
    None
}

/// All files of a job folder, for the command and for the desk alike.
///
/// # Errors
/// A fault of our own, in words.
#[cfg_attr(not(feature = "workbook"), expect(unused_mut, unused_variables, reason = "only the workbook adds to them"))]
pub fn files(make: &press::Make, paper: Option<Paper>) -> Result<Vec<(PathBuf, Vec<u8>)>, String> {
    let mut files = press::job_files(make).map_err(|error| error.to_string())?;
    #[cfg(feature = "workbook")]
    {
        let book = crate::workbook::set(make.looked, make.workshop, make.job, None, paper)?;
        crate::workbook::tell(&book);
        press::add_file(
            &mut files,
            "workbook.pdf",
            "all of it on paper: proof, tickets, assembly, hand-over",
            book.pdf,
        );
    }
    Ok(files)
}

fn beside(dial: &std::path::Path, name: &str) -> PathBuf {
    dial.parent().unwrap_or(std::path::Path::new("")).join(format!("{}-job", press::slug(name)))
}
