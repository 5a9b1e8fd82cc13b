"""A second opinion on crates/magnet: magpylib, a general-purpose open field library.

    python tools/magnet_peer.py table    writes crates/magnet/tests/data/{peer_forces,peer_fields}.csv
    python tools/magnet_peer.py time     times both on the same work, one core each, and prints magpylib's error

Needs magpylib and numpy. Its fields are closed forms. Its forces sum the field over a mesh of the
second disc; the table gives them on two meshes, and how far they differ is how far they can be trusted.
Timing needs tests/data/pairs.csv (tools/magnet_reference.py) and cargo.
"""
import csv
import json
import os
import random
import subprocess
import sys
import time
from pathlib import Path

for threads in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[threads] = "1"

import magpylib
import numpy as np

ROOT = Path(__file__).resolve().parent.parent
DATA = ROOT / "crates" / "magnet" / "tests" / "data"
SEED = 61
COARSE, FINE = 4000, 16000
# Finite-difference step of the gradient, relative to the smaller disc; the library advises 1e-5.
STEP = 1e-5


def disc(diameter, thickness, remanence, rho=0.0, z=0.0):
    return magpylib.magnet.Cylinder(polarization=(0, 0, remanence), dimension=(diameter * 1e-3, thickness * 1e-3),
                                    position=(rho * 1e-3, 0, z * 1e-3))


def force(row, cells):
    """(axial, lateral) in N, positive attracts, positive pushes away."""
    d1, t1, j1, d2, t2, j2, gap, offset = row[:8]
    one = disc(d1, t1, j1)
    two = disc(d2, t2, j2, offset, gap + (t1 + t2) / 2)
    f = magpylib.getFT(one, two, meshing=cells, eps=STEP * min(d1, d2) * 1e-3)[0]
    return -f[2], f[0]


def table():
    rng = random.Random(SEED)
    rows = []
    for _ in range(32):
        row = [round(x, 3) for x in (rng.uniform(3, 12), rng.uniform(0.5, 5), rng.uniform(1, 1.5), rng.uniform(3, 12),
                                     rng.uniform(0.5, 5), rng.uniform(1, 1.5), 10 ** rng.uniform(-1, 1))]
        if rng.random() < 0.3:
            row[3] = row[0]
        row.append(round(rng.uniform(0, 1.5) * max(row[0], row[3]), 3))
        coarse, fine = force(row, COARSE), force(row, FINE)
        rows.append(row + [f"{x:.12g}" for x in (*fine, np.hypot(*np.subtract(fine, coarse)))])
    note = f"meshing={FINE}, change against meshing={COARSE}, eps={STEP:g} of the smaller diameter"
    write("peer_forces.csv", note, "d1,t1,br1,d2,t2,br2,gap,offset,axial_n,lateral_n,change_n", rows)

    rows = []
    for i in range(60):
        d, t, j = round(rng.uniform(2, 12), 3), round(rng.uniform(0.3, 6), 3), round(rng.uniform(1, 1.5), 3)
        reach = [1.0, 1.5, 10.0][i % 3]
        rho, z = round(rng.uniform(0, reach) * d, 3), round(rng.uniform(-reach, reach) * t, 3)
        b = disc(d, t, j).getB((rho * 1e-3, 0, z * 1e-3))
        rows.append([d, t, j, rho, z, f"{b[0]:.17g}", f"{b[2]:.17g}"])
    write("peer_fields.csv", "getB, closed form", "d,t,br,rho,z,away_t,along_t", rows)


def write(name, note, header, rows):
    with open(DATA / name, "w") as out:
        out.write(f"# tools/magnet_peer.py, magpylib {magpylib.__version__}, numpy {np.__version__}, "
                  f"Python {sys.version.split()[0]}, seed {SEED}; {note}\n{header}\n")
        for row in rows:
            out.write(",".join(map(str, row)) + "\n")


def near_pairs():
    """The work of benches/speed.rs: all pairs of the reference table with gaps from 0.02 to 8 mm."""
    with open(DATA / "pairs.csv") as lines:
        rows = [[float(x) for x in row] for row in csv.reader(lines) if row[0][0].isdigit()]
    return [row for row in rows if 0.02 <= row[6] <= 8]


def rate(work, rows, rounds=5):
    """Calls a second in the fastest of some rounds, the one that other work disturbed least."""
    best = float("inf")
    for _ in range(rounds):
        start = time.perf_counter()
        for row in rows:
            work(row)
        best = min(best, time.perf_counter() - start)
    return len(rows) / best


def error(rows, cells):
    """Median and largest error relative to the force, against the reference table."""
    errors = []
    for row in rows:
        axial, lateral = force(row, cells)
        errors.append(np.hypot(axial - row[8], lateral - row[9]) / np.hypot(row[8], row[9]))
    return np.median(errors), max(errors)


def on_path(row, cells, count):
    """Many gaps of one pair in one call, the library's fastest way; evaluations a second."""
    d1, t1, j1, d2, t2, j2, gap, offset = row[:8]
    one, two = disc(d1, t1, j1), disc(d2, t2, j2)
    z = gap + (t1 + t2) / 2 + np.linspace(0, 1, count)
    two.position = np.column_stack([np.full(count, offset), np.zeros(count), z]) * 1e-3
    return count * rate(lambda _: magpylib.getFT(one, two, meshing=cells, eps=STEP * min(d1, d2) * 1e-3), [row])


def ours():
    """Evaluations a second from cargo's benchmark of this crate, fastest sample of each."""
    subprocess.run(["cargo", "bench", "-q", "-p", "magnet", "--bench", "speed", "--", "near",
                    "--warm-up-time", "1", "--measurement-time", "4"],
                   cwd=ROOT, check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    target = Path(os.environ.get("CARGO_TARGET_DIR", ROOT / "target")) / "criterion" / "near"
    out = {}
    for found in sorted(target.glob("*/new/sample.json")):
        about = json.loads((found.parent / "benchmark.json").read_text())
        sample = json.loads(found.read_text())
        nanoseconds = min(t / n for t, n in zip(sample["times"], sample["iters"]))
        out[about["full_id"]] = about["throughput"]["Elements"] * 1e9 / nanoseconds
    return out


def clock():
    rows = near_pairs()
    print(f"{len(rows)} pairs, gaps 0.02 to 8 mm; evaluations a second on one core")
    for name, value in ours().items():
        print(f"  crates/magnet  {name:32} {value:14,.0f}   error < 1e-9 (tests)")
    print(f"  magpylib {magpylib.__version__}, axial and lateral force:")
    for cells in (1, 100, 2000):
        median, worst = error(rows, cells)
        one = rate(lambda row: force(row, cells), rows)
        many = np.median([on_path(row, cells, max(10, 2000 // cells)) for row in rows[:8]])
        print(f"    {cells:5} cells: {one:10,.0f} one by one, {many:10,.0f} along a path;"
              f" error median {median:.1e}, worst {worst:.1e} of the force")


if __name__ == "__main__":
    {"table": table, "time": clock}[sys.argv[1]]()
