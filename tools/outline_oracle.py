"""Makes crates/outline/tests/data/geos.csv: random outlines measured by GEOS, through shapely.

Circles and arcs are 1024-gons whose corners lie on them, so areas are right to 1e-5 of the circles' own areas,
distances to 1e-5 of the radii. Run by hand: python tools/outline_oracle.py
"""
import math
import random

import shapely
from shapely import geometry

QUAD = 256  # chords in a quarter circle


def circle(x, y, r):
    return geometry.Point(x, y).buffer(r, quad_segs=QUAD)


def rounded(x, y, w, h, r):
    box = geometry.box(x - w / 2 + r, y - h / 2 + r, x + w / 2 - r, y + h / 2 - r)
    return box.buffer(r, quad_segs=QUAD) if r > 0 else box


def sector(x, y, inner, outer, middle, half):
    n = max(8, int(half * 2 / (math.pi / 2 / QUAD)))
    arc = lambda r, a, b: [(x + r * math.cos(a + (b - a) * k / n), y + r * math.sin(a + (b - a) * k / n)) for k in range(n + 1)]
    return geometry.Polygon(arc(outer, middle - half, middle + half) + arc(inner, middle + half, middle - half))


def six(v):
    return float(f"{v:.6g}")


def shape(rng):
    x, y = six(rng.uniform(-20, 20)), six(rng.uniform(-20, 20))
    # Whole millimetres in a third of all cases: edges coincide and circles touch.
    whole = rng.random() < 0.33
    u = lambda a, b: float(rng.randint(math.ceil(a), math.floor(b))) if whole else six(rng.uniform(a, b))
    if whole:
        x, y = round(x), round(y)
    kind = rng.choice(["circle", "rounded", "sector"])
    if kind == "circle":
        p = (x, y, u(2, 20), 0, 0, 0)
        return kind, p, circle(*p[:3])
    if kind == "rounded":
        w, h = u(4, 40), u(4, 40)
        r = rng.choice([0.0, six(min(w, h) / 4)])
        p = (x, y, w, h, r, 0)
        return kind, p, rounded(*p[:5])
    inner = u(3, 15)
    p = (x, y, inner, six(inner + u(2, 15)), six(rng.uniform(-3, 3)), six(rng.uniform(0.2, 1.4)))
    return kind, p, sector(*p)


def main():
    rng = random.Random(1959)
    rows = []
    while len(rows) < 2000:
        (ka, pa, a), (kb, pb, b) = shape(rng), shape(rng)
        d = six(rng.uniform(0.05, 1.5))
        whole = a.difference(b)
        values = [a.union(b).area, whole.area, a.intersection(b).area, whole.length, whole.buffer(d, quad_segs=QUAD).area, whole.buffer(-d, quad_segs=QUAD).area, a.boundary.distance(b.boundary)]
        if whole.area < 0.5:
            continue
        rows.append([ka, *pa, kb, *pb, d, *values])
    with open("crates/outline/tests/data/geos.csv", "w") as out:
        out.write(f"# shapely {shapely.__version__}, GEOS {shapely.geos_version_string}, {QUAD} chords a quarter circle, seed 1959\n")
        out.write("# a: kind and six parameters; b: the same; d; areas of a|b, a-b, a&b; length of a-b; areas of a-b grown and shrunk by d; distance of the edges\n")
        for row in rows:
            out.write(",".join(v if isinstance(v, str) else f"{v:.6g}" if i < 15 else f"{v:.8g}" for i, v in enumerate(row)) + "\n")


main()
