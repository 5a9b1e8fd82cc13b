//! Looks.
#[path = "../tests/scene/mod.rs"]
#[allow(dead_code, reason = "each user of the scenes needs some of them")]
mod scene;
use card::{CardPlan, Paper, Print};
use scene::{Chance, Scene};
fn main() {
    let plan = CardPlan::new(Paper::A4, 6).expect("plan");
    let n: u64 = std::env::args().nth(1).map_or(6, |a| a.parse().expect("n"));
    for seed in 0..n {
        let mut chance = Chance::new(seed);
        let scene = Scene::clean(&mut chance, &plan, 1600);
        let t = std::time::Instant::now();
        let jpeg = scene.jpeg(&plan);
        let made = t.elapsed();
        if seed < 4 {
            std::fs::write(format!("/tmp/scene{seed}.jpg"), &jpeg).expect("w");
        }
        let t = std::time::Instant::now();
        let print = Print::measured(scene.print.paper, scene.print.ink);
        match card::read(&jpeg, &plan, &print) {
            Ok(r) => {
                let dl: Vec<String> = r
                    .steps
                    .iter()
                    .enumerate()
                    .map(|(i, s)| {
                        format!(
                            "{:.1}/{:.1}/{:.1}%",
                            s.face.lightness.value - scene::l_star(scene::luma(scene.sample.face)),
                            s.engraved.lightness.value - scene::l_star(scene::luma(scene.sample.engraved[i])),
                            100.0 * (s.contrast.value / scene.contrast(i) - 1.0)
                        )
                    })
                    .collect();
                println!(
                    "{seed} ok made {made:?} read {:?} px {:.1} tilt {:.0} edge {:.2} rough {:.4} shift {} {:?}",
                    t.elapsed(),
                    r.px_per_mm,
                    r.tilt,
                    r.edge,
                    r.roughness,
                    r.shift,
                    dl
                );
            }
            Err(e) => println!("{seed} REFUSED {e} {:?}", t.elapsed()),
        }
    }
}
