"""Arbitrary-precision reference values for crates/magnet.

    python tools/magnet_reference.py        writes crates/magnet/tests/data/{pairs,coaxial,fields,elliptic}.csv

Needs mpmath only. The tests read the tables and need no Python. Every value is worked out on a way
that the crate does not go, with 30 digits or more, and where a second way exists both must agree:

axial on the axis    the published closed form: Robertson, Cazzolato, Zander, IEEE Trans. Magn. 47 (2011) 2045, with
                     K, E and Pi of mpmath; for wide gaps checked by the Bessel integral
both off the axis    the Bessel integrals of Vokoun et al., J. Magn. Magn. Mater. 321 (2009) 3758, where the gap is wide
                     enough for them to converge (they fall off as exp(-k gap)); narrower gaps and contact by the
                     angle integral over the rims, on panels graded to its singular places and by tanh-sinh at a
                     logarithm; in half of the wide rows by both, which must agree
stiffness            Earnshaw: -1/2 dF/dgap, differentiated numerically at 90 digits from the published form
field                Biot-Savart: the elementary integral around the current sheet of the side wall
elliptic             mpmath's own K, E and Pi
"""
import multiprocessing
import random
import sys
from pathlib import Path

import mpmath
from mpmath import mp, mpf

MU0 = mpf("1.25663706127e-6")  # CODATA 2022
DATA = Path(__file__).resolve().parent.parent / "crates" / "magnet" / "tests" / "data"
SEED = 20111
PAIRS = 96
DIGITS = 34


def faces(gap, t1, t2):
    return [(-1, gap), (1, gap + t1), (1, gap + t2), (-1, gap + t1 + t2)]


def axial_published(p, gap):
    """Robertson et al. 2011; force in N."""
    r1, t1, j1, r2, t2, j2 = p
    total = mpf(0)
    for sign, z in faces(gap, t1, t2):
        if z == 0:
            continue
        a2 = 1 + (r1 - r2) ** 2 / z**2
        a3 = mpmath.sqrt((r1 + r2) ** 2 + z**2)
        m = 4 * r1 * r2 / a3**2
        value = mpmath.ellipk(m) - mpmath.ellipe(m) / a2
        if r1 != r2:
            value -= (1 - z**2 / a3**2) * mpmath.ellippi(m / (1 - a2), m)
        total += sign * z * a2 * a3 * value
    return j1 * j2 * mpf("1e-6") / (2 * MU0) * total


def stiffness(p, gap):
    """-1/2 dF/dgap; one-sided in contact, where only unequal radii have a value."""
    r1, _, _, r2, _, _ = p
    if gap == 0 and r1 == r2:
        return mpf("inf")
    with mp.workdps(90):
        step = mpf(10) ** -25
        if gap == 0:
            # Nearly equal radii bend within their difference: stay well inside it.
            step = min(step, abs(r1 - r2) * mpf(10) ** -20)
            f = [axial_published(p, k * step) for k in range(3)]
            slope = (-3 * f[0] + 4 * f[1] - f[2]) / (2 * step)
        else:
            slope = (axial_published(p, gap + step) - axial_published(p, gap - step)) / (2 * step)
        return -slope / 2


def bessel(p, gap, d):
    """Vokoun et al. 2009: (axial, lateral) in N."""
    r1, t1, j1, r2, t2, j2 = p

    def common(k):
        return (mpmath.besselj(1, k * r1) * mpmath.besselj(1, k * r2) * mpmath.exp(-k * gap)
                * (1 - mpmath.exp(-k * t1)) * (1 - mpmath.exp(-k * t2)) / k)

    end = 62 / gap
    panels = int(mpmath.ceil(end * (r1 + r2 + d + gap) / 6)) + 1
    xs = [end * i / panels for i in range(panels + 1)]
    nodes = gauss(24)
    axial = lateral = mpf(0)
    for a, b in zip(xs, xs[1:]):
        half, mid = (b - a) / 2, (a + b) / 2
        for x, w in nodes:
            k = mid + half * x
            c = half * w * common(k)
            axial += c * mpmath.besselj(0, k * d)
            lateral -= c * mpmath.besselj(1, k * d)
    scale = mp.pi * j1 * j2 * r1 * r2 * mpf("1e-6") / MU0
    return scale * axial, scale * lateral


def gauss(n, cache={}):
    """Gauss-Legendre nodes and weights."""
    if n not in cache:
        out = []
        for i in range(1, n + 1):
            x = mpmath.cos(mp.pi * (i - mpf("0.25")) / (n + mpf("0.5")))
            for _ in range(8):
                p0, p1 = mpf(1), x
                for k in range(2, n + 1):
                    p0, p1 = p1, ((2 * k - 1) * x * p1 - (k - 1) * p0) / k
                slope = n * (x * p1 - p0) / (x * x - 1)
                x -= p1 / slope
            out.append((x, 2 / ((1 - x * x) * slope**2)))
        cache[n] = out
    return cache[n]


def rims(p, gap, d):
    """The angle integral over the two rims (Graf's addition theorem, DLMF 10.23.7): (axial, lateral)
    in N. K, E and Pi are mpmath's."""
    r1, t1, j1, r2, t2, j2 = p
    difference = r1 - r2
    if abs(difference) < d < r1 + r2:
        c = 2 * mpmath.asin(mpmath.sqrt((d**2 - difference**2) / (4 * r1 * r2)))
        left_over = mpf(0)
    else:
        c = mpf(0) if d <= abs(difference) else mp.pi
        left_over = (difference**2 if c == 0 else (r1 + r2) ** 2) - d**2

    def kernels(s, z):
        """At psi = c + s, with w - d from a product, so that no digit is lost at w = d."""
        psi = c + s
        w = mpmath.sqrt(difference**2 + 4 * r1 * r2 * mpmath.sin(psi / 2) ** 2)
        weight = mpmath.sin(psi) ** 2 / w
        den = mpmath.sqrt((w + d) ** 2 + z**2)
        gamma = (4 * r1 * r2 * mpmath.sin(c + s / 2) * mpmath.sin(s / 2) + left_over) / (w + d) ** 2
        m1 = ((gamma * (w + d)) ** 2 + z**2) / den**2
        m = 4 * w * d / den**2
        # K from the complement itself: 1 - m has lost its digits where m is nearly 1.
        k = mp.pi / 2 / mpmath.agm(1, mpmath.sqrt(m1))
        e = mpmath.ellipe(m)
        lateral = 2 / (mp.pi * den * m) * ((2 - m) * k - 2 * e)
        axial = mpf(0)
        if z != 0:
            # cel(kc, g^2, 1, g) by partial fractions, see check().
            with mp.workdps(4 * mp.dps if abs(gamma) < mpf("1e-8") else mp.dps):
                pi = mpmath.ellippi(1 - gamma**2, m) if gamma != 0 else mpf(0)
            axial = 2 / mp.pi * z / ((w + d) * den) * (k + gamma * pi) / (1 + gamma)
        return weight * axial, weight * lateral

    axial = lateral = mpf(0)
    for sign, z in faces(gap, t1, t2):
        cuts = [-c, mpf(0), mp.pi - c]
        # Around c the integrand bends on the scale z, and with the rims nearly over each other also on
        # that of their difference: approach it by factors of 8.
        scale = z if z > 0 else mpf(10) ** -6
        if d <= abs(difference):
            scale = min(scale, abs(difference))
        scale /= max(r1, r2)
        while scale < mpf("0.5"):
            cuts += [x for x in (-scale, scale) if -c < x < mp.pi - c]
            scale *= 8
        cuts = sorted(set(cuts))
        nodes = gauss(24)
        for a, b in zip(cuts, cuts[1:]):
            # In contact the integrand has a logarithm at c: tanh-sinh takes it.
            if z == 0 and (a == 0 or b == 0):
                lateral += sign * mpmath.quad(lambda x: kernels(x, z)[1], [a, b])
                continue
            pieces = max(1, int(mpmath.ceil((b - a) / mpf("0.4"))))
            for i in range(pieces):
                lo, hi = a + (b - a) * i / pieces, a + (b - a) * (i + 1) / pieces
                half, mid = (hi - lo) / 2, (lo + hi) / 2
                for x, w in nodes:
                    f = kernels(mid + half * x, z)
                    axial += sign * w * half * f[0]
                    lateral += sign * w * half * f[1]
    scale = j1 * j2 * r1**2 * r2**2 * mpf("1e-6") / MU0
    # The signs of faces() are those of the attraction.
    return scale * axial, scale * lateral


def random_pair(rng):
    """Diameters 2 to 12 mm, thickness 0.5 to 6; a third of the pairs equal, a third nearly."""
    d1 = round(rng.uniform(2, 12), 2)
    kind = rng.randrange(3)
    d2 = [d1, d1 + d1 * 10 ** rng.uniform(-15, -2), round(rng.uniform(2, 12), 2)][kind]
    return [d1, round(rng.uniform(0.5, 6), 2), round(rng.uniform(1, 1.5), 3),
            d2, round(rng.uniform(0.5, 6), 2), round(rng.uniform(1, 1.5), 3)]


def exact(numbers):
    """Diameters to radii, doubles taken as they are."""
    d1, t1, j1, d2, t2, j2 = map(mpf, numbers)
    return d1 / 2, t1, j1, d2 / 2, t2, j2


def text(x):
    return mpmath.nstr(x, 20, min_fixed=-3, max_fixed=4)


def cases():
    """From contact to far away, from the axis to far aside; also rim exactly over rim."""
    rng = random.Random(SEED)
    for i in range(PAIRS):
        numbers = random_pair(rng)
        size = max(numbers[0], numbers[3])
        gap = [0.0, 10 ** rng.uniform(-9, -2), rng.uniform(0.02, 0.3), rng.uniform(0.2, 1), rng.uniform(0.2, 1),
               rng.uniform(1, 8), rng.uniform(8, 60), rng.uniform(60, 250)][i % 8]
        offset = [0.0, rng.uniform(0, 0.1), rng.uniform(0.1, 1) * size, rng.uniform(1, 2) * size,
                  10 ** rng.uniform(0, 2.3)][rng.randrange(5)]
        if i % 16 == 0:
            offset = [numbers[0] / 2 + numbers[3] / 2, abs(numbers[0] - numbers[3]) / 2][i // 16 % 2]
        yield i, numbers, gap, offset


def solve(case):
    """One row of the table, and by how much two ways differ where both were taken."""
    i, numbers, gap, offset = case
    mp.dps = DIGITS
    p, g, d = exact(numbers), mpf(gap), mpf(offset)
    wide = gap > 0 and (numbers[0] + numbers[3] + offset) / gap < 70
    differ = mpf(0)
    if offset == 0:
        axial, lateral = axial_published(p, g), mpf(0)
        if wide:
            differ = abs(bessel(p, g, d)[0] / axial - 1)
    elif wide:
        axial, lateral = bessel(p, g, d)
        if i % 2:
            a, l = rims(p, g, d)
            differ = mpmath.hypot(a - axial, l - lateral) / mpmath.hypot(axial, lateral)
    else:
        axial, lateral = rims(p, g, d)
    row = numbers + [gap, offset, text(mpmath.re(axial)), text(mpmath.re(lateral)), text(stiffness(p, g))]
    print(i, *row[6:], mpmath.nstr(differ, 3), file=sys.stderr, flush=True)
    return row, differ


def pairs():
    with multiprocessing.Pool() as pool:
        rows, differences = zip(*pool.map(solve, list(cases()), chunksize=1))
    print("two ways agree to", mpmath.nstr(max(differences), 3), file=sys.stderr)
    write("pairs.csv", "d1,t1,br1,d2,t2,br2,gap,offset,axial_n,lateral_n,stiffness_n_per_mm", rows)
    assert max(differences) < mpf("1e-14")


def coaxial():
    """On the axis only, and wider: diameters 1 to 20 mm, thickness 1/100 to 3 diameters, gaps to 300 mm."""
    rng = random.Random(SEED + 3)
    rows = []
    for i in range(240):
        d1 = 10 ** rng.uniform(0, 1.3)
        d2 = [d1, d1 * (1 + 10 ** rng.uniform(-15, -2)), 10 ** rng.uniform(0, 1.3)][i % 3]
        numbers = [d1, d1 * 10 ** rng.uniform(-2, 0.5), 1.3, d2, d2 * 10 ** rng.uniform(-2, 0.5), 1.2]
        gap = 10 ** rng.uniform(-9, 2.5) if i % 5 else 0.0
        with mp.workdps(60):
            axial = axial_published(exact(numbers), mpf(gap))
        rows.append(numbers + [gap, text(axial), text(stiffness(exact(numbers), mpf(gap)))])
    write("coaxial.csv", "d1,t1,br1,d2,t2,br2,gap,axial_n,stiffness_n_per_mm", rows)


def biot_savart(r, t, j, rho, z):
    """B_rho and B_z in T of the current sheet around the side wall."""
    up, low = z + t / 2, z - t / 2
    near = abs(r - rho) + min(abs(up), abs(low))
    # The integrand is a smooth periodic function of the angle but for a bend at 0 of width `near` / r.
    cuts, x = [mpf(0)], near / max(r, rho)
    while x < 3:
        cuts.append(x)
        x *= 2
    cuts.append(mp.pi)

    def c2(phi):
        return rho**2 + r**2 - 2 * rho * r * mpmath.cos(phi)

    def across(phi):
        return mpmath.cos(phi) * (1 / mpmath.sqrt(c2(phi) + low**2) - 1 / mpmath.sqrt(c2(phi) + up**2))

    def along(phi):
        return (r - rho * mpmath.cos(phi)) / c2(phi) * (
            up / mpmath.sqrt(c2(phi) + up**2) - low / mpmath.sqrt(c2(phi) + low**2))

    nodes = gauss(40)
    out = []
    for f in (across, along):
        total = mpf(0)
        for a, b in zip(cuts, cuts[1:]):
            half, mid = (b - a) / 2, (a + b) / 2
            total += half * mpmath.fsum(w * f(mid + half * x) for x, w in nodes)
        out.append(j * r / (2 * mp.pi) * total)
    return out


def fields():
    rng = random.Random(SEED + 1)
    rows = []
    for i in range(120):
        d, t, j = round(rng.uniform(2, 12), 2), round(rng.uniform(0.3, 6), 2), round(rng.uniform(1, 1.5), 3)
        r = d / 2
        rho, z = [
            (0.0, rng.uniform(0, 2) * d),
            (rng.uniform(0, 1) * r, rng.uniform(0, 0.5) * t),  # inside
            (rng.uniform(0, 1) * r, t / 2 + 10 ** rng.uniform(-3, 0)),  # over the face
            (rng.uniform(1, 2) * r, rng.uniform(0, 1) * t),  # beside
            (r * (1 + 10 ** rng.uniform(-8, -3)), t / 2 + rng.uniform(0.01, 1)),  # over the rim
            (rng.uniform(0, 100), rng.uniform(-100, 100)),  # far
        ][i % 6]
        b = biot_savart(mpf(d) / 2, mpf(t), mpf(j), mpf(rho), mpf(z))
        rows.append([d, t, j, rho, z] + [text(x) for x in b])
    write("fields.csv", "d,t,br,rho,z,away_t,along_t", rows)


def elliptic():
    rng = random.Random(SEED + 2)
    rows = []
    for _ in range(60):
        kc = 10 ** rng.uniform(-8, 0.3)
        n = [rng.uniform(-3, 0.99), -(10 ** rng.uniform(0, 8)), rng.uniform(1.1, 5)][rng.randrange(3)]
        with mp.workdps(60):
            m, nn = 1 - mpf(kc) ** 2, mpf(n)
            k = mpmath.ellipk(m)
            # Above n = 1 the principal value, K - Pi(m/n) (DLMF 19.7.8).
            third = mpmath.ellippi(nn, m) if nn < 1 else k - mpmath.ellippi(m / nn, m)
            values = [k, mpmath.ellipe(m), third]
        rows.append([kc, n] + [text(v) for v in values])
    write("elliptic.csv", "kc,n,first,second,third", rows)


def write(name, header, rows):
    DATA.mkdir(parents=True, exist_ok=True)
    with open(DATA / name, "w") as out:
        out.write(f"# tools/magnet_reference.py, mpmath {mpmath.__version__}, Python {sys.version.split()[0]}, "
                  f"{mp.dps} digits (published form 60 to 90), seed {SEED}\n{header}\n")
        for row in rows:
            out.write(",".join(repr(x) if isinstance(x, float) else str(x) for x in row) + "\n")


def check():
    """The partial fractions used in rims(), against the definition of cel."""
    kc, g = mpf("0.3"), mpf("-0.4")
    direct = mpmath.quad(lambda x: (mpmath.cos(x) ** 2 + g * mpmath.sin(x) ** 2)
                         / (mpmath.cos(x) ** 2 + g**2 * mpmath.sin(x) ** 2)
                         / mpmath.sqrt(mpmath.cos(x) ** 2 + kc**2 * mpmath.sin(x) ** 2), [0, mp.pi / 4, mp.pi / 2])
    m = 1 - kc**2
    split = mpmath.ellipk(m) / (1 + g) + g / (1 + g) * mpmath.ellippi(1 - g**2, m)
    assert abs(direct - split) < mpf(10) ** -20, (direct, split)


if __name__ == "__main__":
    mp.dps = DIGITS
    check()
    elliptic()
    fields()
    coaxial()
    pairs()
