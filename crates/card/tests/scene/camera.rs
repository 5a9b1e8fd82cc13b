//! A pinhole camera in space. The card lies in the plane z = 0, x to the right and y up on it, the camera above it.

use super::Chance;

#[derive(Clone, Debug)]
pub struct Camera {
    pub width: usize,
    pub height: usize,
    /// Focal length in pixels.
    focal: f64,
    /// The pinhole, in mm.
    eye: [f64; 3],
    /// Unit vectors: to the right in the picture, down in it, and into the scene.
    right: [f64; 3],
    down: [f64; 3],
    ahead: [f64; 3],
    /// Barrel of the lens: how much nearer to the middle a corner of the picture is shown, as a share.
    pub barrel: f64,
}

fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn unit(a: [f64; 3]) -> [f64; 3] {
    let length = dot(a, a).sqrt();
    a.map(|x| x / length)
}

impl Camera {
    /// Pictures of 4 : 3. `tilt` from straight above, from the side `from`; `roll` turns the picture; all in degrees.
    pub fn new(width: usize, focal: f64, aim: [f64; 2], distance: f64, tilt: f64, from: f64, roll: f64) -> Camera {
        let [tilt, from, roll] = [tilt, from, roll].map(f64::to_radians);
        let back = [tilt.sin() * from.cos(), tilt.sin() * from.sin(), tilt.cos()];
        let ahead = back.map(|x| -x);
        let eye = [aim[0] + distance * back[0], aim[1] + distance * back[1], distance * back[2]];
        // Any direction that is not along the line of sight, then turned about it.
        let side = unit(cross(ahead, [0.3, 1.0, 0.1]));
        let below = cross(ahead, side);
        let (sin, cos) = roll.sin_cos();
        let right = [0, 1, 2].map(|i| cos * side[i] + sin * below[i]);
        let down = [0, 1, 2].map(|i| cos * below[i] - sin * side[i]);
        Camera { width, height: width * 3 / 4, focal, eye, right, down, ahead, barrel: 0.0 }
    }

    /// A hand-held phone: the card fills much of the picture and is whole in it.
    pub fn towards_card(chance: &mut Chance, width: usize, most_tilt: f64) -> Camera {
        // 26 mm equivalent is 0.72 widths; some phones zoom by two for near things.
        let focal = width as f64 * chance.between(0.72, 1.4);
        let (tilt, from, roll) =
            (chance.between(0.0, most_tilt), chance.between(0.0, 360.0), chance.between(0.0, 360.0));
        let aim = [chance.between(55.0, 85.0), chance.between(38.0, 62.0)];
        let mut distance = 120.0;
        loop {
            let camera = Camera::new(width, focal, aim, distance, tilt, from, roll);
            if camera.holds_card(0.02) {
                let distance = distance * chance.between(1.0, 1.25);
                let camera = Camera::new(width, focal, aim, distance, tilt, from, roll);
                return Camera { barrel: chance.between(0.0, 0.02), ..camera };
            }
            distance *= 1.03;
        }
    }

    /// Whether the card is whole in the picture with a margin, a share of the picture's width.
    pub fn holds_card(&self, margin: f64) -> bool {
        let margin = margin * self.width as f64;
        [(0.0, 0.0), (140.0, 0.0), (140.0, 100.0), (0.0, 100.0)].into_iter().all(|(x, y)| {
            let [u, v] = self.project(x, y, 0.0);
            let within = |a: f64, size: usize| a >= margin && a <= size as f64 - margin;
            self.sees(x, y) && within(u, self.width) && within(v, self.height)
        })
    }

    /// Moved along the card, so that it leaves the picture.
    pub fn moved(mut self, dx: f64, dy: f64) -> Camera {
        self.eye = [self.eye[0] + dx, self.eye[1] + dy, self.eye[2]];
        self
    }

    fn sees(&self, x: f64, y: f64) -> bool {
        dot([x - self.eye[0], y - self.eye[1], -self.eye[2]], self.ahead) > 0.0
    }

    /// Where a place in space is in the picture, in pixels from its upper left corner.
    pub fn project(&self, x: f64, y: f64, z: f64) -> [f64; 2] {
        let to = [x - self.eye[0], y - self.eye[1], z - self.eye[2]];
        let far = dot(to, self.ahead);
        let (u, v) = (self.focal * dot(to, self.right) / far, self.focal * dot(to, self.down) / far);
        [u + self.width as f64 / 2.0, v + self.height as f64 / 2.0]
    }

    /// Where the ray of a place in the picture meets the plane at a height. Far away where it meets none.
    pub fn meets(&self, u: f64, v: f64, height: f64) -> [f64; 2] {
        let (u, v) = (u - self.width as f64 / 2.0, v - self.height as f64 / 2.0);
        let corner2 = (self.width as f64 / 2.0).powi(2) + (self.height as f64 / 2.0).powi(2);
        let straight = (1.0 + self.barrel * (u * u + v * v) / corner2) / self.focal;
        let (u, v) = (u * straight, v * straight);
        let ray = [0, 1, 2].map(|i| self.ahead[i] + u * self.right[i] + v * self.down[i]);
        if ray[2] >= -1e-6 {
            return [1e6, 1e6];
        }
        let t = (height - self.eye[2]) / ray[2];
        [self.eye[0] + t * ray[0], self.eye[1] + t * ray[1]]
    }

    /// Pixels to a mm in the middle of the card.
    pub fn pixels_to_mm(&self) -> f64 {
        let ([a, b], [c, d]) = (self.project(69.0, 50.0, 0.0), self.project(71.0, 50.0, 0.0));
        (c - a).hypot(d - b) / 2.0
    }

    /// Cosine of the angle between a pixel's ray and the line of sight.
    pub fn off_axis(&self, u: f64, v: f64) -> f64 {
        let (u, v) = ((u - self.width as f64 / 2.0) / self.focal, (v - self.height as f64 / 2.0) / self.focal);
        1.0 / (1.0 + u * u + v * v).sqrt()
    }
}
