//! A soak: random edits, drags, reloads, outside edits, undo and cut connections. No error, no lost change, memory flat.
//! Short by itself; `DIALWRIGHT_SOAK=1200 cargo test -p dialwright --test journeys soak -- --nocapture` runs 20 minutes.

use crate::desk::Desk;
use crate::idle::DESK;
use serde_json::{Value, json};
use std::fs;
use std::time::{Duration, Instant};

const FILE: &str = "harbour/dial.toml";
/// How long without being asked for more, in seconds.
const SHORT: u64 = 6;
/// What a desk may grow after it is warm, in kB: looks that are remembered come and go.
const GROWTH: u64 = 40_000;

/// A plain generator of numbers (xorshift, Marsaglia 2003), so that a run can be had again.
struct Dice(u64);

impl Dice {
    fn roll(&mut self, sides: u64) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0 % sides
    }
}

/// Resident memory of a process in kB, where the system tells it so.
fn memory(process: u32) -> Option<u64> {
    let status = fs::read_to_string(format!("/proc/{process}/status")).ok()?;
    status.lines().find(|line| line.starts_with("VmRSS"))?.split_whitespace().nth(1)?.parse().ok()
}

fn settled(desk: &mut Desk) {
    desk.browser.wait("document.querySelector('order-story .value') && window.desk");
    // All that was asked is answered, and the page shows what is on disk.
    let now = desk.text(FILE);
    let quoted = json!(now).to_string();
    desk.browser.wait(&format!("window.desk.state?.text === {quoted} && !window.desk.trying"));
}

fn hold(desk: &mut Desk) {
    desk.browser.wait("document.querySelector('order-story .value')");
    desk.browser.eval("import('/page/lib/board.js').then(({ board }) => { window.desk = board; return 0 })");
}

#[test]
fn a_soak_loses_nothing() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    let seconds = std::env::var("DIALWRIGHT_SOAK").ok().and_then(|text| text.parse().ok()).unwrap_or(SHORT);
    let mut dice = Dice(0x9e37_79b9_7f4a_7c15);
    let began = Instant::now();
    let (mut deeds, mut held) = ([0_u32; 7], Vec::new());
    let mut texts = vec![desk.text(FILE)];
    hold(&mut desk);
    while began.elapsed() < Duration::from_secs(seconds) {
        settled(&mut desk);
        let deed = dice.roll(7) as usize;
        deeds[deed] += 1;
        match deed {
            0 => {
                let (path, value) = [
                    ("cover.corner", 3 + dice.roll(6)),
                    ("mark.height", 4 + dice.roll(2)),
                    ("notch.width", 14 + dice.roll(5)),
                ][dice.roll(3) as usize];
                let refused = desk.browser.eval(&format!("window.desk.edit([{{ do: 'set', path: '{path}', value: '{value} mm' }}], 'soak').then((r) => r && r.message)"));
                assert_eq!(refused, Value::Null);
                let key = path.rsplit('.').next().expect("a key");
                assert!(desk.text(FILE).contains(&format!("{key} = \"{value} mm\"")), "{path}: {}", desk.text(FILE));
            }
            1 => {
                desk.browser.press("Move things");
                if desk.browser.eval("Boolean(document.querySelector('[data-handle]'))") == false {
                    desk.browser.press("Move things");
                }
                let at = desk.browser.middle("[data-handle='window/0'] .reach");
                let by = 20.0 + dice.roll(40) as f64;
                desk.browser.drag(at, (at.0 - 10.0, at.1 + by), 12);
                desk.browser.wait(
                    "['kept on disk', 'not kept'].includes(document.querySelector('desk-head .kept').textContent)",
                );
            }
            2 => {
                desk.browser.call("Page.reload", json!({}));
                hold(&mut desk);
            }
            3 => {
                let text = format!("{}# outside {}\n", desk.text(FILE), deeds[3]);
                fs::write(desk.path(FILE), &text).expect("written");
            }
            4 | 5 => {
                let step = if deed == 4 { "undo" } else { "redo" };
                desk.browser.eval(&format!("window.desk.{step}().then(() => 0)"));
            }
            _ => {
                let line = |offline| json!({ "offline": offline, "latency": 0, "downloadThroughput": -1, "uploadThroughput": -1 });
                desk.browser.call("Network.enable", json!({}));
                desk.browser.call("Network.emulateNetworkConditions", line(true));
                let text = format!("{}# while cut off {}\n", desk.text(FILE), deeds[6]);
                fs::write(desk.path(FILE), &text).expect("written");
                std::thread::sleep(Duration::from_millis(300));
                desk.browser.call("Network.emulateNetworkConditions", line(false));
                // Sometimes the page is loaded again, sometimes it must find its way back by itself.
                if dice.roll(2) == 0 {
                    desk.browser.call("Page.reload", json!({}));
                    hold(&mut desk);
                }
            }
        }
        texts.push(desk.text(FILE));
        if began.elapsed().as_secs_f64() > seconds as f64 * held.len() as f64 / 12.0 {
            held.extend(memory(desk.served.id()));
        }
    }
    settled(&mut desk);
    lost_nothing(&desk, &texts);
    held.extend(memory(desk.served.id()));
    // The first third warms up.
    if let (Some(start), Some(end)) = (held.get(held.len() / 3), held.last()) {
        println!(
            "soak of {seconds} s: {} edits, {} drags, {} reloads, {} outside, {} undo, {} redo, {} cuts; memory in kB, twelve times: {held:?}",
            deeds[0], deeds[1], deeds[2], deeds[3], deeds[4], deeds[5], deeds[6]
        );
        assert!(*end < start + GROWTH, "memory grew from {start} to {end} kB");
    }
    idle(&desk);
    // What the browser notes of connections that were cut is no fault of the page.
    let errors: Vec<String> = desk
        .browser
        .errors()
        .into_iter()
        .filter(|error| !error.contains("net::ERR_") && !error.contains("Failed to fetch"))
        .collect();
    assert!(errors.is_empty(), "{errors:#?}");
}

/// Every text that the file ever had is among its steps or lies beside them.
fn lost_nothing(desk: &Desk, texts: &[String]) {
    let folder = desk.path("harbour/.dialwright/dial.toml/texts");
    let kept: Vec<String> = fs::read_dir(folder)
        .expect("a history")
        .flatten()
        .map(|entry| fs::read_to_string(entry.path()).expect("reads"))
        .collect();
    for text in texts.iter().rev().take(900) {
        assert!(kept.contains(text), "lost: {text}");
    }
}

/// A desk that nobody uses does next to nothing, even with a page open.
fn idle(desk: &Desk) {
    // What was asked last may still be worked at.
    std::thread::sleep(Duration::from_secs(1));
    let Some(before) = desk.worked() else { return };
    std::thread::sleep(Duration::from_secs(2));
    let share = (desk.worked().unwrap_or(before) - before) / 2.0;
    println!("idle with a page open: {:.1} % of a core", share * 100.0);
    assert!(share <= DESK, "{:.1} % of a core", share * 100.0);
}
