//! What the stock and the magnets of one dial cost.

use crate::assembled::{Dial, Disc};
use crate::job::between_parts;
use process::{ShelfMagnet, Stock, Workshop};

/// Price of one dial's stock and magnets, in the maker's own money: sheets by the boxes round the parts with the gap between them
/// (the offcuts are paid for; common practice), magnets from the shelf. `None` where one of them has no price.
pub(super) fn of(dial: &Dial, cover: &Stock, wheel: &Stock, workshop: &Workshop) -> Option<f64> {
    let boxed = |stock: &Stock, width: f64, height: f64| {
        let gap = between_parts(stock);
        stock.price_of((width + gap) * (height + gap))
    };
    let plate = dial.cover.plate.bounds();
    let wheels = dial.wheels.iter().map(|one| boxed(wheel, 2.0 * one.radius, 2.0 * one.radius)).sum::<Option<f64>>()?;
    let stocks = boxed(cover, plate.width(), plate.height())? + wheels;
    let magnets = crate::magnets::count(dial).into_iter();
    let magnets = magnets.map(|(disc, count)| Some(count.glued as f64 * on_shelf(&disc, workshop)?.price?));
    magnets.sum::<Option<f64>>().map(|magnets| stocks + magnets)
}

/// The magnet on the shelf of this size and strength.
fn on_shelf<'a>(disc: &Disc, workshop: &'a Workshop) -> Option<&'a ShelfMagnet> {
    let same = |a: f64, b: f64| (a - b).abs() < 1e-6;
    workshop.magnets.iter().find(|one| {
        same(one.diameter, disc.diameter) && same(one.thickness, disc.thickness) && one.remanence == disc.remanence
    })
}
