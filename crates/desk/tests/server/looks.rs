//! Stocks, seats and votes: what is asked and cannot be is told.

use crate::open::{HARBOUR, Open};
use axum::http::StatusCode;
use serde_json::json;
use std::fs;

/// What is asked of looks and seats and cannot be is told in words.
#[tokio::test]
async fn looks_that_cannot_be_are_told() {
    let desk = Open::new().await;
    for (path, words) in [
        ("/seat?dial=harbour/dial.toml&wheel=9", "no such wheel"),
        ("/seat?dial=harbour/dial.toml&wheel=0&away=far", "how far away"),
        ("/seat?dial=harbour/dial.toml&wheel=0&eye=0.1+mm", "the eye's height"),
        ("/seat?dial=harbour/dial.toml&wheel=0&side=left", "where round the table"),
        ("/swatch?dial=harbour/dial.toml&stock=moon+rock", "no such stock"),
        ("/pairing?dial=harbour/dial.toml&cover=moon+rock&wheel=maple+3+mm", "no such pairing"),
    ] {
        let answer = desk.get(path).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{path}: {}", answer.text);
        assert!(answer.text.contains(words), "{path}: {}", answer.text);
    }
}

/// A stock that the dial file describes itself is drawn and may be chosen like those on the shelf.
#[tokio::test]
async fn stocks_of_the_file_itself_are_shown() {
    let desk = Open::new().await;
    let own = "\n[stocks.\"my board\"]\nlayers = [{ material = \"maple\", thickness = \"2.8 mm\" }]\nkerf_x = \"0.1 mm\"\nkerf_y = \"0.1 mm\"\n";
    fs::write(desk.folder.path().join("harbour/dial.toml"), HARBOUR.to_owned() + own).expect("written");
    let all = desk.get("/stocks?dial=harbour/dial.toml&path=stock").await.json();
    let row =
        |name: &str| all.as_array().expect("a list").iter().find(|one| one["name"] == name).expect("there").clone();
    assert_eq!((&row("my board")["own"], &row("my board")["thickness"]), (&json!(true), &json!("2.8 mm")));
    assert_eq!((&row("maple 3 mm")["own"], &row("maple 3 mm")["does"]), (&json!(false), &json!(true)));
    let drawn = desk.get("/swatch?dial=harbour/dial.toml&stock=my+board").await;
    assert!(drawn.status == StatusCode::OK && drawn.text.starts_with("<svg"), "{}", drawn.text);
    let shape = "/stocks?dial=harbour/dial.toml&path=magnet.ring_stock";
    assert!(desk.get(shape).await.json()[0]["does"].is_null(), "rings are not looked at");
}

/// Votes go into the opened folder and nowhere else.
#[cfg(unix)]
#[tokio::test]
async fn votes_do_not_follow_links() {
    let desk = Open::new().await;
    let outside = tempfile::tempdir().expect("a folder");
    let target = outside.path().join("votes.toml");
    fs::write(&target, "# not yours\n").expect("written");
    std::os::unix::fs::symlink(&target, desk.folder.path().join("harbour/votes.toml")).expect("linked");
    let vote = json!({ "dial": "harbour/dial.toml", "best_first": ["a / b", "c / d"] });
    let answer = desk.post("/votes", &vote).await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN, "{}", answer.text);
    assert_eq!(fs::read_to_string(&target).expect("there"), "# not yours\n");
}

/// Stocks are tried on a dial that is not begun yet; a brief that nothing can be made of is tried as some dial all the same.
#[tokio::test]
async fn stocks_are_tried_on_a_brief() {
    let desk = Open::new().await;
    let before = fs::read_dir(desk.folder.path()).expect("a folder").count();
    let price = async |brief: &str| {
        let all = desk.get(&format!("/stocks?path=stock&brief={brief}")).await.json();
        let birch = all.as_array().expect("a list").iter().find(|one| one["name"] == "birch plywood 3 mm").cloned();
        let birch = birch.expect("on the shelf");
        assert_eq!((&birch["does"], &birch["own"]), (&json!(true), &json!(false)), "{brief}");
        birch["price"].as_f64().expect("a price")
    };
    let (one, two) = (price("crew+0..12").await, price("crew+0..12%0Aoil+0..12").await);
    assert!(two > one, "a wheel more costs more: {one} and {two}");
    assert_eq!(price("%3F%3F").await, price("").await);
    let drawn = desk.get("/swatch?stock=maple+3+mm&path=stock&brief=crew+0..12").await;
    assert!(drawn.status == StatusCode::OK && drawn.text.starts_with("<svg"), "{}", drawn.text);
    assert_eq!(fs::read_dir(desk.folder.path()).expect("a folder").count(), before, "nothing is written");
}
