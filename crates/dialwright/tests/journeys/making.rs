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

/// A new dial's stock is chosen by its picture, tried on the very counters that are briefed; the workshop's own are among them.
#[test]
fn a_new_dials_stock_is_chosen_by_its_picture() {
    let Some(mut desk) = Desk::with(&[]) else { return };
    let own = "[stocks.\"attic oak\"]\nlayers = [{ material = \"oak\", thickness = \"3.2 mm\" }]\nkerf = \"0.2 mm\"\n";
    fs::write(desk.path("workshop.toml"), own).expect("written");
    desk.browser.wait("document.querySelector('shelf-view form')");
    assert_eq!(desk.browser.eval("document.querySelector('nav [aria-current]').textContent"), "On the shelf");
    let usual = "document.querySelector('.cut-from summary strong').textContent";
    desk.browser.wait(&format!("{usual} === 'birch plywood 3 mm'"));
    desk.browser.wait("document.querySelector('.cut-from > img').naturalWidth > 50");
    desk.browser.click("form.brief [name=counters]");
    desk.browser.write("grain 0..24\nsacks 0..12");
    desk.browser.eval("document.querySelector('.cut-from summary').focus()");
    desk.browser.key("Enter");
    desk.browser.wait("document.querySelectorAll('.cut-from button.stock').length > 12");
    desk.browser.wait("document.querySelector('.cut-from [aria-pressed=true]').dataset.stock === 'birch plywood 3 mm'");
    // What each picture says is what `looks` says of the dial that will be.
    let told = desk.browser.eval("[...document.querySelectorAll('.cut-from button.stock')].map((one) => [one.dataset.stock, one.lastElementChild.textContent])");
    desk.pictures("brief", "form.brief");
    // By keys alone: to the next with an arrow, chosen with Enter.
    desk.browser.eval("document.querySelector('.cut-from [aria-pressed=true]').focus()");
    let own = "document.activeElement.dataset.stock === 'attic oak'";
    for _ in 0..60 {
        if desk.browser.eval(own) == true {
            break;
        }
        desk.browser.key("ArrowRight");
    }
    assert_eq!(desk.browser.eval(own), true, "the workshop's own is among them: {told}");
    desk.browser.key("Enter");
    desk.browser.wait(&format!("{usual} === 'attic oak' && document.activeElement.matches('.cut-from summary')"));
    assert_eq!(desk.browser.eval("document.querySelector('.cut-from details').open"), false);
    desk.browser.click("form.brief [name=name]");
    desk.browser.write("Mill Race");
    desk.browser.press("Begin it");
    desk.browser.wait("document.querySelector('dial-mat svg.dial .wheel')");
    assert!(desk.text("mill-race/dial.toml").contains("stock = \"attic oak\""));
    let looks = desk.command("looks", "mill-race/dial.toml");
    let pairs = looks["pairings"].as_array().expect("a list");
    for one in told.as_array().expect("a list") {
        let name = one[0].as_str().expect("a name");
        let Some(pair) = pairs.iter().find(|pair| pair["name"] == json!(format!("{name} / {name}"))) else { continue };
        let says = one[1].as_str().expect("words");
        match pair["why_not"][0].as_str() {
            Some(why) => assert!(says.contains(why), "{name}: {says}"),
            None => assert!(says.starts_with("this dial does in it"), "{name}: {says}"),
        }
    }
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
