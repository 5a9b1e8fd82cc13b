//! A small client of the browser's own protocol (Chrome DevTools Protocol), over its socket.

use base64::Engine;
use serde_json::{Value, json};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};
use tungstenite::{Message, WebSocket};

/// How long a page may take to come to what is waited for.
const PATIENCE: Duration = Duration::from_secs(20);
/// Names under which the browser is looked for.
const NAMES: [&str; 4] = ["chromium", "chromium-browser", "google-chrome", "chrome"];

/// The browser on the path, if there is one. Its absence is said; with `DIALWRIGHT_BROWSER=required` it is a failure.
pub fn found() -> Option<PathBuf> {
    let path = std::env::var_os("PATH").unwrap_or_default();
    let found = std::env::split_paths(&path)
        .flat_map(|folder| NAMES.map(|name| folder.join(name)))
        .find(|program| program.is_file());
    if found.is_none() {
        let required = std::env::var("DIALWRIGHT_BROWSER").is_ok_and(|value| value == "required");
        assert!(!required, "no Chromium on the path, and it is required here");
        eprintln!("NOT TESTED: no Chromium on the path; install it to run the browser journeys");
    }
    found
}

/// A browser of its own, with nobody's settings, gone with this value.
pub struct Browser {
    child: Child,
    _profile: tempfile::TempDir,
    socket: WebSocket<std::net::TcpStream>,
    next: u64,
    session: String,
    errors: Vec<String>,
}

impl Drop for Browser {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

impl Browser {
    /// Starts it with one empty page of 1280 x 800.
    pub fn start(program: &Path) -> Browser {
        Browser::start_with(program, &[])
    }

    /// The same with more switches.
    pub fn start_with(program: &Path, switches: &[String]) -> Browser {
        let profile = tempfile::tempdir().expect("a folder");
        let data = format!("--user-data-dir={}", profile.path().display());
        let child = Command::new(program)
            .args(["--headless=new", "--no-sandbox", "--remote-debugging-port=0", "--disable-gpu", "--hide-scrollbars"])
            .args(["--no-first-run", "--disable-extensions", "--disable-background-networking", "--lang=en-GB", &data])
            .args(switches)
            .args(["--disable-dev-shm-usage", "about:blank"])
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .expect("the browser starts");
        let said = profile.path().join("DevToolsActivePort");
        let began = Instant::now();
        let (port, path) = loop {
            let text = std::fs::read_to_string(&said).unwrap_or_default();
            if let Some((port, path)) = text.split_once('\n').filter(|(_, path)| !path.is_empty()) {
                break (port.to_owned(), path.trim().to_owned());
            }
            assert!(began.elapsed() < PATIENCE, "the browser did not say its port");
            std::thread::sleep(Duration::from_millis(20));
        };
        let stream = std::net::TcpStream::connect(format!("127.0.0.1:{port}")).expect("connects");
        stream.set_nodelay(true).expect("set");
        let (socket, _) = tungstenite::client(format!("ws://127.0.0.1:{port}{path}"), stream).expect("speaks");
        let mut browser =
            Browser { child, _profile: profile, socket, next: 0, session: String::new(), errors: Vec::new() };
        browser.page();
        browser
    }

    /// Opens another page and speaks to that from now on.
    pub fn page(&mut self) -> String {
        self.session = String::new();
        let target = self.call("Target.createTarget", json!({ "url": "about:blank" }))["targetId"].clone();
        let attached = self.call("Target.attachToTarget", json!({ "targetId": target, "flatten": true }));
        self.session = attached["sessionId"].as_str().expect("a session").to_owned();
        for domain in ["Page", "Runtime", "Log"] {
            self.call(&format!("{domain}.enable"), json!({}));
        }
        self.viewport(1280, 800);
        self.session.clone()
    }

    /// The page that is spoken to.
    pub fn page_now(&self) -> String {
        self.session.clone()
    }

    /// Speaks to a page that was opened before.
    pub fn turn_to(&mut self, page: &str) {
        self.session = page.to_owned();
        // A page that nobody sees asks for nothing.
        self.call("Page.bringToFront", json!({}));
    }

    /// One command, and its result.
    pub fn call(&mut self, method: &str, params: Value) -> Value {
        self.next += 1;
        let id = self.next;
        let mut command = json!({ "id": id, "method": method, "params": params });
        if !self.session.is_empty() {
            command["sessionId"] = json!(self.session);
        }
        self.socket.send(Message::text(command.to_string())).expect("sent");
        loop {
            let message = self.socket.read().expect("an answer");
            let Ok(text) = message.to_text() else { continue };
            let Ok(value) = serde_json::from_str::<Value>(text) else { continue };
            if value["id"] == json!(id) {
                assert!(value["error"].is_null(), "{method}: {}", value["error"]);
                return value["result"].clone();
            }
            self.hear(&value);
        }
    }

    /// Keeps what the page complains of.
    fn hear(&mut self, event: &Value) {
        let params = &event["params"];
        match event["method"].as_str() {
            Some("Runtime.exceptionThrown") => self.errors.push(params["exceptionDetails"].to_string()),
            Some("Runtime.consoleAPICalled") if params["type"] == "error" => {
                self.errors.push(params["args"].to_string())
            }
            Some("Log.entryAdded") if params["entry"]["level"] == "error" => {
                // The browser notes every refusal (422) and conflict (409) by itself; the page tells the maker of them.
                let text = params["entry"]["text"].as_str().unwrap_or_default();
                if !text.contains("status of 422") && !text.contains("status of 409") {
                    self.errors.push(params["entry"].to_string());
                }
            }
            _ => {}
        }
    }

    /// What the pages complained of since the last time.
    pub fn errors(&mut self) -> Vec<String> {
        self.eval("0");
        std::mem::take(&mut self.errors)
    }

    /// The value of an expression in the page.
    pub fn eval(&mut self, script: &str) -> Value {
        let params = json!({ "expression": script, "awaitPromise": true, "returnByValue": true, "userGesture": true });
        let result = self.call("Runtime.evaluate", params);
        assert!(result["exceptionDetails"].is_null(), "{script}: {}", result["exceptionDetails"]);
        result["result"]["value"].clone()
    }

    /// Waits until an expression holds, and returns its value.
    pub fn wait(&mut self, script: &str) -> Value {
        let began = Instant::now();
        loop {
            let value = self.eval(&format!("(() => {{ try {{ return {script} }} catch {{ return null }} }})()"));
            if !matches!(value, Value::Null | Value::Bool(false)) && value != json!("") && value != json!(0) {
                return value;
            }
            if began.elapsed() > PATIENCE {
                let page = self.eval("document.body.innerText.slice(0, 1500)");
                panic!("waited for {script} in vain; errors: {:?}; page: {page}", self.errors);
            }
            std::thread::sleep(Duration::from_millis(15));
        }
    }

    /// Goes to an address.
    pub fn go(&mut self, url: &str) {
        self.call("Page.navigate", json!({ "url": url }));
        self.wait("document.readyState === 'complete'");
    }

    /// The page's size in CSS pixels.
    pub fn viewport(&mut self, width: u32, height: u32) {
        let size = json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": false });
        self.call("Emulation.setDeviceMetricsOverride", size);
    }

    /// Pretends preferences such as `prefers-color-scheme: dark`.
    pub fn prefer(&mut self, features: &[(&str, &str)]) {
        let features: Vec<Value> =
            features.iter().map(|(name, value)| json!({ "name": name, "value": value })).collect();
        self.call("Emulation.setEmulatedMedia", json!({ "features": features }));
    }

    /// Middle of an element in the window, scrolled into view.
    pub fn middle(&mut self, selector: &str) -> (f64, f64) {
        let quoted = json!(selector).to_string();
        self.wait(&format!("document.querySelector({quoted})"));
        let script = format!(
            "(() => {{ const e = document.querySelector({quoted}); e.scrollIntoView({{ block: 'center' }}); const b = e.getClientRects()[0]; return [b.x + b.width / 2, b.y + b.height / 2] }})()"
        );
        let middle = self.eval(&script);
        (middle[0].as_f64().expect("x"), middle[1].as_f64().expect("y"))
    }

    /// Moves, presses or lets go of the mouse.
    pub fn mouse(&mut self, kind: &str, (x, y): (f64, f64)) {
        let buttons = if kind == "mouseReleased" { 0 } else { 1 };
        let event = json!({ "type": kind, "x": x, "y": y, "button": "left", "buttons": buttons, "clickCount": 1 });
        self.call("Input.dispatchMouseEvent", event);
    }

    /// Clicks on an element.
    pub fn click(&mut self, selector: &str) {
        let at = self.middle(selector);
        self.mouse("mousePressed", at);
        self.mouse("mouseReleased", at);
    }

    /// Clicks on the button with these words.
    pub fn press(&mut self, words: &str) {
        let quoted = json!(words).to_string();
        let script = format!(
            "(() => {{ const all = [...document.querySelectorAll('button, a')]; const e = all.find((b) => b.textContent.trim() === {quoted} && b.getClientRects().length) ?? all.find((b) => b.textContent.trim().startsWith({quoted}) && b.getClientRects().length); document.querySelector('[data-pressed]')?.removeAttribute('data-pressed'); e?.setAttribute('data-pressed', ''); return Boolean(e) }})()"
        );
        self.wait(&script);
        self.click("[data-pressed]");
    }

    /// Presses the left button at one place and lets go at another, in steps.
    pub fn drag(&mut self, from: (f64, f64), to: (f64, f64), steps: u32) {
        self.mouse("mousePressed", from);
        for k in 1..=steps {
            let part = f64::from(k) / f64::from(steps);
            self.mouse("mouseMoved", (from.0 + part * (to.0 - from.0), from.1 + part * (to.1 - from.1)));
        }
        self.mouse("mouseReleased", to);
    }

    /// Presses a key by its name.
    pub fn key(&mut self, key: &str) {
        let code = match key {
            "Enter" => 13,
            "Tab" => 9,
            "Escape" => 27,
            "ArrowUp" => 38,
            "ArrowDown" => 40,
            "ArrowLeft" => 37,
            "ArrowRight" => 39,
            "Home" => 36,
            _ => 0,
        };
        let text = if key == "Enter" { "\r" } else { "" };
        for kind in ["keyDown", "keyUp"] {
            let event = json!({ "type": kind, "key": key, "code": key, "windowsVirtualKeyCode": code, "text": text });
            self.call("Input.dispatchKeyEvent", event);
        }
    }

    /// Writes into the field that has the focus, in place of what is in it.
    pub fn write(&mut self, text: &str) {
        self.eval("document.activeElement.select?.()");
        self.call("Input.insertText", json!({ "text": text }));
    }

    /// A picture of the window.
    pub fn picture(&mut self, file: &Path) {
        let shot = self.call("Page.captureScreenshot", json!({ "format": "png" }));
        let data = shot["data"].as_str().expect("data");
        let bytes = base64::engine::general_purpose::STANDARD.decode(data).expect("base64");
        std::fs::write(file, bytes).expect("written");
    }
}
