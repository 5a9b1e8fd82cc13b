"""Reference maps for crates/sight.

    python tools/homography_reference.py        writes crates/sight/tests/data/homographies.csv

Needs numpy, scikit-image and opencv-python-headless. The tests read the table and need no Python. Each row: a case, a point of
the source, the point of the target it was read as (noise of 0.2 units from five points on; nan for six points more that were
not read), where scikit-image's normalised direct linear transform sends it, and where OpenCV's does (from five points on it
goes on to the least sum of squares in the target, so both differ by a small share of the noise).
"""
import random
import sys
from pathlib import Path

import cv2
import numpy as np
import skimage
from skimage.transform import ProjectiveTransform

DATA = Path(__file__).resolve().parent.parent / "crates" / "sight" / "tests" / "data"
SEED = 42
NOISE = 0.2


def camera(rng):
    """A plane in mm seen by a camera 300 to 600 mm away, tilted up to 40 degrees; pixels of 0.1 mm or so."""
    tilt, spin, roll = np.radians([rng.uniform(0, 40), rng.uniform(0, 360), rng.uniform(0, 360)])
    about = lambda axis, angle: cv2.Rodrigues(np.eye(3)[axis] * angle)[0]
    turn = about(2, roll) @ about(0, tilt) @ about(2, spin)
    away = np.array([0, 0, rng.uniform(300, 600)])
    inside = np.array([[3000, 0, 2000], [0, 3000, 1500], [0, 0, 1]])
    return inside @ np.column_stack([turn[:, 0], turn[:, 1], away])


def moved(matrix, points):
    out = np.column_stack([points, np.ones(len(points))]) @ matrix.T
    return out[:, :2] / out[:, 2:]


def main():
    rng = random.Random(SEED)
    noise = np.random.default_rng(SEED)
    lines = []
    for case in range(40):
        count = 4 if case < 15 else rng.randint(5, 24)
        corners = [[-70, -50], [70, -50], [70, 50], [-70, 50]]
        points = np.array([[x + rng.uniform(-20, 20), y + rng.uniform(-20, 20)] for x, y in corners]
                          + [[rng.uniform(-90, 90), rng.uniform(-70, 70)] for _ in range(count - 4)])
        read = moved(camera(rng), points)
        if count > 4:
            read = read + noise.normal(0, NOISE, read.shape)
        plain = ProjectiveTransform.from_estimate(points, read)
        assert plain, plain
        refined, _ = cv2.findHomography(points, read, 0)
        more = np.array([[rng.uniform(-70, 70), rng.uniform(-50, 50)] for _ in range(6)])
        points, read = np.vstack([points, more]), np.vstack([read, np.full((6, 2), np.nan)])
        for row in zip(points, read, moved(plain.params, points), moved(refined, points)):
            lines.append(",".join([str(case)] + [repr(float(x)) for place in row for x in place]))
    with open(DATA / "homographies.csv", "w") as out:
        out.write(f"# tools/homography_reference.py, scikit-image {skimage.__version__}, OpenCV {cv2.__version__}, "
                  f"numpy {np.__version__}, Python {sys.version.split()[0]}, seed {SEED}\n"
                  "case,from_x,from_y,to_x,to_y,dlt_x,dlt_y,least_x,least_y\n")
        out.write("\n".join(lines) + "\n")


if __name__ == "__main__":
    main()
