//! When nothing happens, nothing is computed: no view keeps the processor busy, in the page or in the desk, or asks for anything.

use crate::desk::{Desk, VIEWS};
use crate::looks::card::before_camera;
use serde_json::json;
use std::fmt;
use std::time::{Duration, Instant};

/// How long each view is watched.
const WATCHED: Duration = Duration::from_millis(1200);
/// What a page may spend of that: a wide limit, since the browser itself does something now and then, and machines are busy. A
/// clock that draws each frame, or a question asked again and again, needs many times as much.
const PAGE: f64 = 0.05;
/// What the desk may spend of it: it looks at the time of three files, four times a second.
pub const DESK: f64 = 0.05;

/// What was spent while nothing was done.
struct Spent {
    page: f64,
    /// Where the system tells it.
    desk: Option<f64>,
    moving: i64,
    asked: i64,
}

impl Spent {
    fn is_nothing(&self) -> bool {
        self.page <= PAGE && self.desk.is_none_or(|share| share <= DESK) && self.moving == 0 && self.asked == 0
    }
}

impl fmt::Display for Spent {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let desk = self.desk.map_or("not told".into(), |share| format!("{:.2} %", share * 100.0));
        write!(f, "page {:.2} %, desk {desk}, {} animations, {} questions", self.page * 100.0, self.moving, self.asked)
    }
}

#[test]
fn nothing_is_spent_when_nothing_happens() {
    let Some((mut desk, _)) = before_camera() else { return };
    desk.browser.call("Performance.enable", json!({}));
    let mut told = Vec::new();
    for (view, _) in VIEWS {
        desk.open(view);
        settle(&mut desk);
        told.push((view.to_owned(), watch(&mut desk)));
    }
    // After work too: things were moved, steps have played, the camera was on.
    desk.open("mat");
    desk.browser.press("Move things");
    let (x, y) = desk.browser.middle("[data-handle='window/0'] .reach");
    desk.browser.drag((x, y), (x - 3.0, y + 12.0), 6);
    desk.browser.wait("document.querySelector('desk-head .kept').textContent === 'kept on disk'");
    settle(&mut desk);
    told.push(("mat, after a drag".into(), watch(&mut desk)));
    desk.open("machine");
    desk.browser.press("Play the steps");
    desk.browser.wait("!document.querySelector('.setup .later') && [...document.querySelectorAll('.setup button.main')].every((b) => b.textContent === 'Play the steps')");
    told.push(("machine, after the steps were played".into(), watch(&mut desk)));
    desk.open("card");
    desk.browser.press("Take it with the camera");
    desk.browser.wait("document.querySelector('.viewfinder video').videoWidth > 0");
    desk.browser.press("Put the camera away");
    desk.browser.wait("document.querySelector('.viewfinder').hidden");
    settle(&mut desk);
    told.push(("card, the camera put away".into(), watch(&mut desk)));
    // Shown with `--nocapture`.
    told.iter().for_each(|(what, spent)| println!("{what}: {spent}"));
    let busy: Vec<String> =
        told.iter().filter(|(_, spent)| !spent.is_nothing()).map(|(what, spent)| format!("{what}: {spent}")).collect();
    assert!(busy.is_empty(), "these are not idle: {busy:#?}");
    // What would be seen of a page that does work again and again.
    desk.browser.eval("(async () => { for (;;) { await (await fetch('/magnets?dial=harbour/dial.toml')).text(); const until = performance.now() + 100; while (performance.now() < until); } })(), 0");
    let spent = watch(&mut desk);
    assert!(spent.page > PAGE && spent.asked > 0 && spent.desk.is_none_or(|share| share > DESK), "unseen: {spent}");
    desk.well();
}

fn watch(desk: &mut Desk) -> Spent {
    let (page, server) = (tasks(desk), desk.worked());
    let (had, began) = (asked(desk), Instant::now());
    std::thread::sleep(WATCHED);
    let took = began.elapsed().as_secs_f64();
    Spent {
        page: (tasks(desk) - page) / took,
        desk: server.zip(desk.worked()).map(|(before, now)| (now - before) / took),
        moving: desk.browser.eval("document.getAnimations().length").as_i64().expect("a count"),
        asked: asked(desk) - had,
    }
}

/// Waits until a view has asked for nothing new for a while.
fn settle(desk: &mut Desk) {
    let began = Instant::now();
    let mut had = -1;
    loop {
        let now = asked(desk);
        if now == had {
            return;
        }
        had = now;
        assert!(began.elapsed() < Duration::from_secs(30), "a view keeps asking");
        std::thread::sleep(Duration::from_millis(400));
    }
}

/// What the page has asked for so far.
fn asked(desk: &mut Desk) -> i64 {
    desk.browser
        .eval("performance.setResourceTimingBufferSize(10000), performance.getEntriesByType('resource').length")
        .as_i64()
        .expect("a count")
}

/// Seconds that the page has spent on tasks of any kind.
fn tasks(desk: &mut Desk) -> f64 {
    let all = desk.browser.call("Performance.getMetrics", json!({}));
    let all = all["metrics"].as_array().expect("a list");
    let of = |name: &str| all.iter().find(|one| one["name"] == name).and_then(|one| one["value"].as_f64());
    of("TaskDuration").expect("told by the browser")
}
