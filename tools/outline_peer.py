"""Times the outlines of crates/outline/benches in GEOS, through shapely, beside our own figures.

Run in one sitting: cargo bench -p outline && python tools/outline_peer.py
"""
import math
import time

import shapely
from shapely import geometry


def star(corners, state):
    points = []
    for k in range(corners):
        state = (state * 6364136223846793005 + 1442695040888963407) % 2**64
        r = 30 + 10 * ((state >> 33) / 2**31)
        points.append((r * math.cos(math.tau * k / corners), r * math.sin(math.tau * k / corners)))
    return geometry.Polygon(points)


def cover(quad=16):
    shape = geometry.box(-32, -22, 32, 22).buffer(8, quad_segs=quad)
    for y in (30, -30):
        shape = shape.difference(geometry.Point(0, y).buffer(10, quad_segs=quad))
    for x in (-20, 20):
        shape = shape.difference(geometry.box(x - 5, -3.5, x + 5, 3.5))
    return shape


def best(work):
    times = []
    for _ in range(7):
        start, runs = time.perf_counter(), 0
        while time.perf_counter() - start < 0.1:
            work()
            runs += 1
        times.append((time.perf_counter() - start) / runs)
    return min(times) * 1e6


plate = cover()
print(f"shapely {shapely.__version__}, GEOS {shapely.geos_version_string}; microseconds, best of 7")
print(f"cover: booleans (16 chords a quarter) {best(cover):.1f}")
print(f"cover: grown by 0.08 {best(lambda: plate.buffer(0.08, quad_segs=16)):.1f}")
for n in (200, 2000):
    a, b = star(n, 1), star(n, 2)
    print(f"star of {n}: difference {best(lambda: a.difference(b)):.1f}")
    print(f"star of {n}: grown by 0.08 {best(lambda: a.buffer(0.08, quad_segs=16)):.1f}")
