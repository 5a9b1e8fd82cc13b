//! The sheets of a dial, and the job folder.

use super::Desk;
use super::answer::{Sorry, aside};
use super::paper;
use crate::look::{Look, Seen};
use axum::Json;
use axum::body::{Body, Bytes};
use axum::extract::{Query, State};
use axum::http::header::{self, HeaderValue};
use axum::response::{IntoResponse, Response};
use dial::job::{self, Job, JobError};
use futures_util::stream;
use press::Written;
use serde::Deserialize;
use serde_json::{Value, json};
use std::path::PathBuf;
use std::sync::Arc;
use tokio::sync::mpsc;

/// Which dial.
#[derive(Deserialize)]
pub(super) struct Which {
    dial: String,
}

pub(super) fn seen(look: &Look) -> Result<&Seen, Sorry> {
    look.outcome.as_ref().map_err(|mistakes| Sorry::mistakes(mistakes, &look.text))
}

pub(super) fn planned(look: &Look) -> Result<Job, Sorry> {
    job::plan(&seen(look)?.laid.dial, &look.workshop).map_err(|errors| {
        let help = errors.first().map(JobError::mend).unwrap_or_default();
        Sorry::unfit(errors.iter().map(ToString::to_string).collect::<Vec<_>>().join("; "), help)
    })
}

/// Every setup as the machine gets it, with its steps in order and its ticket.
pub(super) async fn sheets(State(desk): State<Arc<Desk>>, Query(which): Query<Which>) -> Result<Json<Value>, Sorry> {
    aside(move || {
        let look = desk.look(&which.dial)?;
        let job = planned(&look)?;
        let dial = &seen(&look)?.laid.dial;
        let colours = &look.workshop.machine.colours;
        let mut report = press::job_report(&job);
        for (s, sheet) in job.sheets.iter().enumerate() {
            for (k, setup) in sheet.setups.iter().enumerate() {
                let there = &mut report["sheets"][s]["setups"][k];
                there["svg"] = json!(press::sheet(&dial.name, sheet, setup, colours));
                there["ticket"] = json!(press::ticket(dial, sheet, setup, &look.workshop));
                there["turned"] = json!(setup.is_turned());
            }
            let parts =
                sheet.parts.iter().map(|part| press::path_data(&part.outline, outline::Point::new(0.0, sheet.height)));
            report["sheets"][s]["outlines"] = json!(parts.collect::<Vec<_>>());
            report["sheets"][s]["colour"] = json!(sheet.stock.colour(process::Side::Face).to_string());
        }
        report["version"] = json!(look.version);
        Ok(Json(report))
    })
    .await
}

/// Makes the job folder beside the dial file. The answer comes line by line, each a step that is done; the last says
/// what came out.
pub(super) async fn make(State(desk): State<Arc<Desk>>, Json(which): Json<Which>) -> Result<Response, Sorry> {
    let (line, lines) = mpsc::unbounded_channel::<Value>();
    // Asked for before anything is begun: a name that leads nowhere is refused as such.
    desk.path(&which.dial)?;
    tokio::task::spawn_blocking(move || {
        let done = make_folder(&desk, &which.dial, &|step| {
            let _ = line.send(json!({ "step": step }));
        });
        let last = match done {
            Ok(value) => value,
            Err(sorry) => sorry.into_line(),
        };
        let _ = line.send(last);
    });
    let body = stream::unfold(lines, |mut lines| async {
        let line = lines.recv().await?;
        Some((Ok::<Bytes, std::convert::Infallible>(Bytes::from(format!("{line}\n"))), lines))
    });
    Ok(([(header::CONTENT_TYPE, "application/x-ndjson")], Body::from_stream(body)).into_response())
}

fn make_folder(desk: &Desk, name: &str, step: &dyn Fn(&str)) -> Result<Value, Sorry> {
    step("look");
    let look = desk.look(name)?;
    let seen = seen(&look)?;
    if dial::findings::refuses(&seen.findings) {
        return Err(Sorry::unfit("nothing was made", "mend what is to be refused first"));
    }
    step("plan");
    let job = planned(&look)?;
    step("draw");
    let words = (desk.house.words)(&seen.laid.dial, &seen.laid.sizing, &seen.findings, &look.text, &seen.design);
    let files = (desk.house.job_files)(&press::Make {
        looked: &seen.looked,
        job: &job,
        workshop: &look.workshop,
        dial_file: &look.text,
        words: &words,
    })
    .map_err(|error| Sorry::unfit(error, "this is a fault of the program; please report it"))?;
    step("write");
    let folder = folder_of(desk, name, &seen.laid.dial.name)?;
    let written = press::write_job(&folder, &files).map_err(|error| Sorry::unfit(error.to_string(), ""))?;
    let (how, kept) = match &written {
        Written::New => ("new", None),
        Written::Unchanged => ("unchanged", None),
        Written::Kept { kept, .. } => ("anew", kept.file_name().map(|name| name.to_string_lossy().into_owned())),
    };
    Ok(json!({
        "made": how,
        "kept": kept,
        "folder": folder.file_name().map(|name| name.to_string_lossy().into_owned()),
        "path": folder.display().to_string(),
        "files": files.iter().map(|(path, bytes)| json!({ "path": path, "bytes": bytes.len() })).collect::<Vec<_>>(),
    }))
}

fn folder_of(desk: &Desk, name: &str, title: &str) -> Result<PathBuf, Sorry> {
    let folder = format!("{}-job", press::slug(title));
    let beside = match name.rsplit_once('/') {
        Some((above, _)) => format!("{above}/{folder}"),
        None => folder,
    };
    Ok(desk.shelf.place(&beside)?)
}

/// A file of a job folder.
#[derive(Deserialize)]
pub(super) struct Made {
    dial: String,
    path: String,
}

/// Shows a file of the dial's job folder.
pub(super) async fn made(State(desk): State<Arc<Desk>>, Query(made): Query<Made>) -> Result<Response, Sorry> {
    let kind = match made.path.rsplit('.').next() {
        Some("png") => "image/png",
        Some("svg") => "image/svg+xml",
        Some("txt" | "toml" | "json" | "csv") => "text/plain; charset=utf-8",
        Some("html") => "text/html; charset=utf-8",
        Some("pdf") => "application/pdf",
        _ => return Err(Sorry::unfit("this is not a file of a job folder", "")),
    };
    let bytes = aside(move || {
        let look = desk.look(&made.dial)?;
        let folder = folder_of(&desk, &made.dial, &seen(&look)?.laid.dial.name)?;
        let inside = desk.shelf.name_of(&folder).ok_or_else(|| Sorry::from(crate::store::NotHere::Missing))?;
        Ok(std::fs::read(desk.shelf.place(&format!("{inside}/{}", made.path))?)?)
    })
    .await?;
    let mut answer = ([(header::CONTENT_TYPE, kind)], bytes).into_response();
    let policy = match kind {
        "application/pdf" => Some(paper::PDF),
        "text/html; charset=utf-8" => Some(paper::CLIENTS_PAGE),
        _ => None,
    };
    if let Some(policy) = policy {
        answer.headers_mut().insert(header::CONTENT_SECURITY_POLICY, HeaderValue::from_static(policy));
    }
    Ok(answer)
}
