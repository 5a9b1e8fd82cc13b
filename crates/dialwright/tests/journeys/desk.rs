//! A desk of the real program on a folder of its own, with a browser before it.

use crate::browser::{self, Browser};
use serde_json::Value;
use std::fs;
use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};

/// The dial that most journeys are about.
pub const HARBOUR: &str = "harbour/dial.toml";

/// Every view, and what is there when it is drawn.
pub const VIEWS: [(&str, &str); 9] = [
    ("mat", "mat-view order-story .value"),
    ("magnets", "magnets-view .plate-picture svg"),
    ("looks", "looks-view .pairing-card img"),
    ("picks", "picks-view .two img"),
    ("seat", "seat-view .panels svg"),
    ("card", "card-view .to-save img"),
    ("machine", "machine-view .setup svg"),
    ("writing", "writing-view textarea"),
    ("shelf", "shelf-view table.fits td"),
];

/// The program under test; `DIALWRIGHT_PROGRAM` names another build of it, to measure a release build.
fn program() -> PathBuf {
    std::env::var_os("DIALWRIGHT_PROGRAM").map_or_else(|| env!("CARGO_BIN_EXE_dialwright").into(), PathBuf::from)
}

/// The program, serving a folder until this value is gone.
pub struct Served {
    child: Child,
    /// Its opening link.
    pub link: String,
}

impl Drop for Served {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

impl Served {
    /// Serves a file or folder. `home` keeps the list of recent dials out of the tester's own.
    pub fn on(place: &Path, home: &Path) -> Served {
        let mut child = Command::new(program())
            .args(["desk", "--no-open"])
            .arg(place)
            .env("XDG_STATE_HOME", home)
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("the desk starts");
        let out = child.stdout.take().expect("its output");
        let mut line = String::new();
        BufReader::new(out).read_line(&mut line).expect("a line");
        let link = line.trim().strip_prefix("the desk is open at ").expect("the opening link").to_owned();
        Served { child, link }
    }

    /// The process, for its memory and time.
    pub fn id(&self) -> u32 {
        self.child.id()
    }
}

/// A folder with some of the examples, served, and a browser at the opening link.
pub struct Desk {
    /// The folder.
    pub folder: tempfile::TempDir,
    /// The program.
    pub served: Served,
    /// The browser.
    pub browser: Browser,
}

impl Desk {
    /// With these examples in the folder; `None` when there is no browser.
    pub fn with(examples: &[&str]) -> Option<Desk> {
        Desk::before_camera(examples, None)
    }

    /// The same, where the machine's camera shows nothing but this photo.
    pub fn before_camera(examples: &[&str], photo: Option<&[u8]>) -> Option<Desk> {
        let program = browser::found()?;
        let folder = tempfile::tempdir().expect("a folder");
        let film = folder.path().join("camera.mjpeg");
        let switches: Vec<String> = match photo {
            None => Vec::new(),
            Some(frame) => {
                fs::write(&film, frame.repeat(3)).expect("written");
                vec![
                    "--use-fake-device-for-media-stream".into(),
                    "--use-fake-ui-for-media-stream".into(),
                    format!("--use-file-for-fake-video-capture={}", film.display()),
                ]
            }
        };
        for name in examples {
            let from = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples").join(name).join("dial.toml");
            fs::create_dir(folder.path().join(name)).expect("made");
            fs::copy(from, folder.path().join(name).join("dial.toml")).expect("copied");
        }
        let served = Served::on(folder.path(), &folder.path().join(".state"));
        let mut browser = Browser::start_with(&program, &switches);
        browser.go(&served.link);
        if !examples.is_empty() {
            browser.wait("document.querySelector('dial-mat svg.dial .wheel')");
            browser.wait("document.querySelector('order-story .value')");
        }
        Some(Desk { folder, served, browser })
    }

    /// Path of a file in the folder.
    pub fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// A file's text.
    pub fn text(&self, name: &str) -> String {
        fs::read_to_string(self.path(name)).unwrap_or_else(|error| panic!("{name}: {error}"))
    }

    /// What the command line says of a dial, as JSON.
    pub fn command(&self, command: &str, name: &str) -> Value {
        self.command_with(command, name, &[])
    }

    /// The same with more arguments, in the folder.
    pub fn command_with(&self, command: &str, name: &str, more: &[&str]) -> Value {
        let mut run = Command::new(program());
        let run =
            run.current_dir(self.folder.path()).args([command, "--json"]).arg(self.path(name)).args(more).output();
        serde_json::from_slice(&run.expect("runs").stdout).expect("JSON")
    }

    /// Goes to a view of the harbour dial, and waits until it is drawn.
    pub fn open(&mut self, view: &str) {
        let ready = VIEWS.iter().find(|(name, _)| *name == view).expect("a view").1;
        self.browser.eval(&format!("location.hash = 'view={view}&dial={HARBOUR}'"));
        let there = "['Harbour', 'harbour/dial.toml'].includes(document.querySelector('desk-head h1').textContent)";
        self.browser.wait(&format!("{there} && document.querySelector('{ready}')"));
    }

    /// Adds something: opens the line behind an adding button, unless it is open, writes into it and sends it off.
    pub fn add(&mut self, adder: &str, text: &str) {
        self.browser.wait(&format!("document.querySelector('{adder}')"));
        self.browser.eval(&format!("for (let d = document.querySelector('{adder}').closest('details'); d; d = d.parentElement.closest('details')) d.open = true"));
        if self.browser.eval(&format!("document.querySelector('{adder} > form').hidden")).as_bool() == Some(true) {
            self.browser.click(&format!("{adder} > button"));
        }
        self.browser.click(&format!("{adder} > form input"));
        self.browser.write(text);
        self.browser.click(&format!("{adder} > form button"));
    }

    /// Seconds of processor time that the desk has used, where the system tells it: fields 14 and 15 of proc_pid_stat(5), in
    /// hundredths.
    pub fn worked(&self) -> Option<f64> {
        let text = fs::read_to_string(format!("/proc/{}/stat", self.served.id())).ok()?;
        let mut after_name = text.rsplit_once(')')?.1.split_whitespace().skip(11);
        let mut ticks = || after_name.next()?.parse::<f64>().ok();
        Some((ticks()? + ticks()?) / 100.0)
    }

    /// Waits until a file says something.
    pub fn until(&self, file: &str, words: &str) {
        self.until_is(file, words, true);
    }

    /// Waits until a file says something no longer.
    pub fn until_gone(&self, file: &str, words: &str) {
        self.until_is(file, words, false);
    }

    fn until_is(&self, file: &str, words: &str, there: bool) {
        let text = || fs::read_to_string(self.path(file)).unwrap_or_default();
        for _ in 0..400 {
            if text().contains(words) == there {
                return;
            }
            std::thread::sleep(std::time::Duration::from_millis(25));
        }
        panic!("{words} in {file}, {there}: {}", text());
    }

    /// Keeps pictures of what is shown now, narrow and wide, light and dark, to be looked at; only where `DIALWRIGHT_PICTURES`
    /// names a folder. The first element of the selector is scrolled to.
    pub fn pictures(&mut self, name: &str, selector: &str) {
        let Ok(folder) = std::env::var("DIALWRIGHT_PICTURES") else { return };
        for (scheme, width, height) in
            [("light", 1400, 900), ("light", 360, 740), ("dark", 1400, 900), ("dark", 360, 740)]
        {
            self.browser.prefer(&[("prefers-color-scheme", scheme)]);
            self.browser.viewport(width, height);
            self.browser
                .wait(&format!("(document.querySelector({selector:?}).scrollIntoView({{ block: 'start' }}), true)"));
            std::thread::sleep(std::time::Duration::from_millis(300));
            self.browser.picture(&Path::new(&folder).join(format!("{name}-{scheme}-{width}.png")));
        }
        self.browser.prefer(&[]);
        self.browser.viewport(1280, 800);
    }

    /// Ends a journey: nothing was complained of.
    pub fn well(mut self) {
        let errors = self.browser.errors();
        assert!(errors.is_empty(), "the page complained: {errors:#?}");
    }
}
