//! From an empty folder to a job folder, and what the command line says of it.

use crate::desk::Desk;
use serde_json::{Value, json};
use std::fs;

#[test]
fn from_an_empty_folder_to_a_job_folder() {
    let Some(mut desk) = Desk::with(&[]) else { return };
    let browser = &mut desk.browser;
    browser.wait("document.querySelector('shelf-view form.brief')");
    browser.click("form.brief [name=name]");
    browser.write("Mill Race");
    browser.click("form.brief [name=counters]");
    browser.write("grain 0..24\nsacks 0..12");
    browser.press("Begin it");
    browser.wait("document.querySelector('dial-mat svg.dial .wheel')");
    browser.wait("document.querySelector('.verdict-line').textContent === 'This dial can be made.'");
    browser.press("Make");
    browser.wait("document.querySelector('.made li')");
    let says = browser.eval("document.querySelector('machine-view .verdict-line').textContent");
    assert_eq!(says, "Made mill-race-job. Begin with READ-ME-FIRST.txt.");
    let listed = browser.eval("document.querySelectorAll('.made li').length").as_u64().expect("a count");
    browser.wait("[...document.querySelectorAll('.made img')].some((img) => img.complete && img.naturalWidth > 0)");
    let job = desk.path("mill-race/mill-race-job");
    let manifest: Value = serde_json::from_slice(&fs::read(job.join("job.json")).expect("a list")).expect("JSON");
    assert_eq!(manifest["files"].as_array().map(Vec::len), Some(listed as usize));
    // The same figures as the command line's, and the same files: made again there, nothing is touched.
    let report: Value = serde_json::from_slice(&fs::read(job.join("report.json")).expect("a report")).expect("JSON");
    assert_eq!(report, desk.command("check", "mill-race/dial.toml"));
    let before = fs::metadata(job.join("job.json")).and_then(|about| about.modified()).expect("a time");
    assert_eq!(desk.command("make", "mill-race/dial.toml")["job"]["setups"], json!(2));
    assert_eq!(fs::metadata(job.join("job.json")).and_then(|about| about.modified()).expect("a time"), before);
    desk.well();
}

/// The steps of a sheet are played in their order.
#[test]
fn the_steps_of_a_setup_are_played_in_order() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    let browser = &mut desk.browser;
    browser.prefer(&[("prefers-reduced-motion", "no-preference")]);
    browser.press("In the machine");
    browser.wait("document.querySelectorAll('.setup').length === 2");
    let shown = "document.querySelectorAll('.setup')[0].querySelectorAll('[id^=step-]:not(.later)').length";
    // Depths are told as a maker reads them, not as a computer adds them up.
    let told =
        browser.eval("[...document.querySelectorAll('.setup .steps button')].map((one) => one.textContent).join()");
    let long =
        told.as_str().expect("text").split(' ').any(|word| word.split('.').nth(1).is_some_and(|part| part.len() > 2));
    assert!(!long, "{told}");
    browser.press("Play the steps");
    for step in 1..=4 {
        browser.wait(&format!("{shown} === {step}"));
    }
    // The other setup too, from the first of its steps to the last.
    let steps = browser.eval("document.querySelectorAll('.setup')[1].querySelectorAll('[id^=step-]').length").as_u64();
    let shown = shown.replacen("[0]", "[1]", 1);
    browser.eval("document.querySelectorAll('.setup')[1].querySelector('button.main').click()");
    for step in 1..=steps.expect("steps") {
        browser.wait(&format!("{shown} === {step}"));
    }
    let ticket = browser.eval("document.querySelectorAll('.setup pre')[1].textContent");
    assert!(ticket.as_str().expect("text").contains("turned over"));
    desk.well();
}
