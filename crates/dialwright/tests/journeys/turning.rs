//! Wheels turned by hand, and held against the turn test.

use crate::desk::Desk;

/// Every stop of every wheel: what the page says, what it draws in the window, and the turn test's figures.
#[test]
fn every_wheel_goes_through_all_its_stops() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    let turns = desk.command("turn", "harbour/dial.toml");
    let wheels = turns["wheels"].as_array().expect("wheels");
    assert_eq!(wheels.len(), 2);
    for (i, wheel) in wheels.iter().enumerate() {
        let stops = wheel["stops"].as_array().expect("stops");
        for (k, stop) in stops.iter().enumerate() {
            let said = desk.browser.eval(&format!(
                "(() => {{ const s = document.querySelectorAll('[role=slider]')[{i}]; return [s.getAttribute('aria-valuetext'), s.getAttribute('aria-valuenow')] }})()"
            ));
            let words = stop["mark"].as_str().expect("words");
            assert_eq!(said[0], format!("{words}, stop {} of {}", k + 1, stops.len()));
            // On the screen the mark stands in its window, and no other does.
            let inside = desk.browser.eval(&format!(
                "[...document.querySelectorAll('.wheel[data-wheel=\"{i}\"] .marks path')].map((mark, k) => {{ const b = mark.getBoundingClientRect(); return [k, document.elementFromPoint(b.x + b.width / 2, b.y + b.height / 2)?.closest('.wheel')] }}).filter(([, wheel]) => wheel).map(([k]) => k)"
            ));
            assert_eq!(inside, serde_json::json!([k]), "wheel {i}, stop {k}");
            let up = format!("wheel-knobs .knob-row:nth-child({}) button:last-child", i + 1);
            desk.browser.eval(&format!("document.querySelector({:?}).click()", up));
        }
    }
    // Every stop's figures are the turn test's.
    let told = desk.browser.eval("fetch('/look?dial=harbour/dial.toml').then((r) => r.json()).then((l) => [l.changed['stops/0'], l.changed['stops/1']])");
    for (i, wheel) in wheels.iter().enumerate() {
        for (k, stop) in wheel["stops"].as_array().expect("stops").iter().enumerate() {
            for (shown, figure) in
                [("margin_mm", "margin_mm"), ("slack_deg", "slack_angle_deg"), ("drift_mm", "slack_drift_mm")]
            {
                let (shown, figure) =
                    (told[i][k][shown].as_f64().expect("shown"), stop[figure].as_f64().expect(figure));
                assert!((shown - figure).abs() < 1e-3, "wheel {i}, stop {k}: {shown} and {figure}");
            }
        }
    }
    // The strip's words are the turn test's.
    let slack = desk.browser.eval("document.querySelector('window-strip .verdict').textContent");
    let least = |key: &str| {
        let all = wheels[0]["stops"].as_array().expect("stops").iter().filter_map(|stop| stop[key].as_f64());
        all.fold(f64::INFINITY, f64::min)
    };
    let angle = format!("{:.1}\u{b0}", least("slack_angle_deg"));
    assert!(slack.as_str().expect("text").contains(&angle), "{slack} and {angle}");
    desk.well();
}

/// The bared rim is dragged as with a finger and comes to rest on a stop; keys and the mouse's wheel turn too.
#[test]
fn a_rim_is_dragged_and_comes_to_rest() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    let browser = &mut desk.browser;
    let text = "document.querySelectorAll('[role=slider]')[0].getAttribute('aria-valuetext')";
    browser.prefer(&[("prefers-reduced-motion", "reduce")]);
    let from = browser.eval("(() => { const b = document.querySelector('.grip[data-wheel=\"0\"]').getBoundingClientRect(); const c = document.querySelector('dial-mat .face').getBoundingClientRect(); return [c.x + 8, b.y + b.height / 2] })()");
    let (x, y) = (from[0].as_f64().expect("x"), from[1].as_f64().expect("y"));
    // Pushing the left rim up counts up, as the finding says.
    browser.drag((x, y), (x + 4.0, y - 75.0), 12);
    let now = browser.wait(&format!("{text} !== '0, stop 1 of 25' && {text}"));
    let stop: u32 =
        now.as_str().and_then(|text| text.split(',').next()).and_then(|mark| mark.parse().ok()).expect("a mark");
    assert!((1..=4).contains(&stop), "{now}");
    let turned = browser.eval("document.querySelector('.wheel[data-wheel=\"0\"] .turning').getAttribute('transform')");
    let degrees: f64 = turned
        .as_str()
        .and_then(|text| text.strip_prefix("rotate(")?.strip_suffix(')')?.parse().ok())
        .expect("degrees");
    assert!((degrees.abs() - f64::from(stop) * 14.4).abs() < 1e-3, "at rest: {degrees}");
    browser.eval("document.querySelectorAll('[role=slider]')[0].focus()");
    browser.key("Home");
    browser.key("ArrowDown");
    assert_eq!(browser.eval(text), "24, stop 25 of 25");
    browser.call(
        "Input.dispatchMouseEvent",
        serde_json::json!({ "type": "mouseWheel", "x": x, "y": y, "deltaX": 0, "deltaY": -100 }),
    );
    browser.wait(&format!("{text} === '0, stop 1 of 25'"));
    desk.well();
}

/// A finger on a touch screen turns the wheel, and the page stays where it is.
#[test]
fn a_finger_turns_a_wheel() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    let browser = &mut desk.browser;
    browser.viewport(360, 740);
    browser.prefer(&[("prefers-reduced-motion", "reduce")]);
    browser.call("Emulation.setTouchEmulationEnabled", serde_json::json!({ "enabled": true }));
    browser.eval("document.querySelector('dial-mat').scrollIntoView()");
    let from = browser.eval("(() => { const c = document.querySelector('dial-mat .face').getBoundingClientRect(); return [c.right - 5, c.y + c.height / 2] })()");
    let (x, y) = (from[0].as_f64().expect("x"), from[1].as_f64().expect("y"));
    let scrolled = browser.eval("scrollY");
    let touch = |kind: &str, points: serde_json::Value| serde_json::json!({ "type": kind, "touchPoints": points });
    browser.call("Input.dispatchTouchEvent", touch("touchStart", serde_json::json!([{ "x": x, "y": y }])));
    for k in 1..=10 {
        let finger = serde_json::json!([{ "x": x, "y": y - 5.0 * f64::from(k) }]);
        browser.call("Input.dispatchTouchEvent", touch("touchMove", finger));
    }
    browser.call("Input.dispatchTouchEvent", touch("touchEnd", serde_json::json!([])));
    browser.wait("document.querySelectorAll('[role=slider]')[1].getAttribute('aria-valuenow') !== '1'");
    assert_eq!(browser.eval("scrollY"), scrolled);
    desk.well();
}

#[test]
fn distances_are_measured_on_the_real_outlines() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    let report = desk.command("check", "harbour/dial.toml");
    let browser = &mut desk.browser;
    browser.press("Measure");
    for feature in ["middle/0", "middle/1"] {
        browser.wait(&format!("document.querySelector('[data-feature=\"{feature}\"]')"));
        browser.eval(&format!("document.querySelector('[data-feature=\"{feature}\"]').focus()"));
        browser.key("Enter");
    }
    let says = browser.wait("document.querySelector('.tape') && document.querySelector('dial-mat .says').textContent");
    let x = |i: usize| report["wheels"][i]["centre"]["x_mm"].as_f64().expect("x");
    let shown = format!("{:.2} mm between", x(1) - x(0));
    assert!(says.as_str().expect("text").starts_with(&shown), "{says}, {shown}");
    desk.well();
}
