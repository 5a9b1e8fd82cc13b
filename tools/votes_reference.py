"""Reference strengths of votes for crates/sight.

    python tools/votes_reference.py        writes crates/sight/tests/data/{votes,strengths}.csv

Needs statsmodels, choix, scipy and mpmath. The tests read the tables and need no Python. Every fit is made on a way that the
crate does not go, and choix (MM or Newton, no errors) must agree with its strengths:

pairs      logistic regression (statsmodels GLM, binomial), the errors its own
rankings   conditional logit over the steps of each ranking (statsmodels ConditionalLogit), the errors its own
separated  where something never won: the summit of the likelihood with a normal prior of standard deviation 2 on each
           log-strength, found by mpmath in 30 digits, the errors from numerical second derivatives

baseball   American League 1987, Eastern Division: A. Agresti, Categorical Data Analysis, 2nd edition (2002), table 10.10, as in the
           data set "baseball" of the R package BradleyTerry2, home and away added up
citations  four journals of statistics: S. Stigler, Statistical Science 9 (1994) 94-108, as in Agresti (2002) page 448 and the data
           set "citations" of BradleyTerry2; cited is picked over citing
"""
import itertools
import random
import sys
from pathlib import Path

import choix
import mpmath
import numpy as np
import statsmodels
import statsmodels.api as sm
from mpmath import mp, mpf
from statsmodels.discrete.conditional_models import ConditionalLogit

DATA = Path(__file__).resolve().parent.parent / "crates" / "sight" / "tests" / "data"
SEED = 1952
PRIOR = mpf(2)

# Milwaukee, Detroit, Toronto, New York, Boston, Cleveland, Baltimore: (one, other, won by one, won by other)
HOME = """
0 1 4 3  0 2 4 2  0 3 4 3  0 4 6 1  0 5 4 2  0 6 6 0
1 0 3 3  1 2 4 2  1 3 4 3  1 4 6 0  1 5 6 1  1 6 4 3
2 0 2 5  2 1 4 3  2 3 2 4  2 4 4 3  2 5 4 2  2 6 6 0
3 0 3 3  3 1 5 1  3 2 2 5  3 4 4 3  3 5 4 2  3 6 6 1
4 0 5 1  4 1 2 5  4 2 3 3  4 3 4 2  4 5 5 2  4 6 6 0
5 0 2 5  5 1 3 3  5 2 3 4  5 3 4 3  5 4 4 2  5 6 2 4
6 0 2 5  6 1 1 5  6 2 1 6  6 3 2 4  6 4 1 6  6 5 3 4
"""
# Biometrika, Communications in Statistics, JASA, JRSS-B: row picked over column
CITED = [[0, 730, 498, 221], [33, 0, 68, 17], [320, 813, 0, 142], [284, 276, 325, 0]]


def baseball():
    wins = np.zeros((7, 7), int)
    for one, other, won, lost in np.array(HOME.split(), int).reshape(-1, 4):
        wins[one, other] += won
        wins[other, one] += lost
    assert all(wins[i, j] + wins[j, i] == 13 for i, j in itertools.combinations(range(7), 2))
    return wins


def counts(wins):
    return [(int(wins[i][j]), (i, j)) for i in range(len(wins)) for j in range(len(wins)) if wins[i][j]]


def centred(logs, covariance):
    """From log-strengths with the first at 0 to such that sum to 0: (strengths, errors)."""
    n = len(logs) + 1
    centre = (np.eye(n) - 1 / n)[:, 1:]
    return centre @ logs, np.sqrt(np.diag(centre @ covariance @ centre.T))


def fit_pairs(n, votes):
    met = {}
    for times, (winner, loser) in votes:
        key = (min(winner, loser), max(winner, loser))
        met.setdefault(key, [0, 0])[0 if winner == key[0] else 1] += times
    x = np.zeros((len(met), n))
    for row, (i, j) in enumerate(met):
        x[row, i], x[row, j] = 1, -1
    fit = sm.GLM(np.array(list(met.values())), x[:, 1:], family=sm.families.Binomial()).fit(tol=1e-15, tol_criterion="params", maxiter=100)
    logs, errors = centred(fit.params, fit.cov_params())
    data = [pair for times, pair in votes for _ in range(times)]
    assert np.abs(choix.opt_pairwise(n, data, alpha=0, method="Newton-CG", tol=1e-12) - logs).max() < 1e-5
    return logs, errors


def fit_rankings(n, rankings):
    picked, things, groups, group = [], [], [], 0
    for ranking in rankings:
        for step in range(len(ranking) - 1):
            for place, thing in enumerate(ranking[step:]):
                picked.append(int(place == 0))
                things.append(np.eye(n)[thing][1:])
                groups.append(group)
            group += 1
    fit = ConditionalLogit(np.array(picked), np.array(things), groups=np.array(groups)).fit(disp=False, method="newton", maxiter=200, tol=1e-14)
    logs, errors = centred(fit.params, fit.cov_params())
    assert np.abs(choix.opt_rankings(n, rankings, alpha=0, method="Newton-CG", tol=1e-12) - logs).max() < 1e-5
    return logs, errors


def fit_separated(n, votes):
    def likelihood(*logs):
        total = -sum(x**2 for x in logs) / (2 * PRIOR**2)
        for times, chosen in votes:
            total += times * (logs[chosen[0]] - mpmath.log(sum(mpmath.exp(logs[k]) for k in chosen)))
        return total

    def slope(*logs):
        return [mpmath.diff(likelihood, logs, tuple(int(k == i) for k in range(n))) for i in range(n)]

    logs = [mpf(x) for x in mpmath.findroot(slope, [mpf(0)] * n, tol=1e-22)]
    curvature = mpmath.matrix(n, n)
    for i, j in itertools.product(range(n), repeat=2):
        orders = [0] * n
        orders[i] += 1
        orders[j] += 1
        curvature[i, j] = -mpmath.diff(likelihood, tuple(logs), tuple(orders))
    inverse = np.array((curvature**-1).tolist(), float)
    centre = np.eye(n) - 1 / n
    return np.array(logs, float), np.sqrt(np.diag(centre @ inverse @ centre))


def random_pairs(rng, n):
    """Random votes on a ring and across it, with everything beating the next at least once and losing once."""
    strengths = [rng.gauss(0, 1) for _ in range(n)]
    wins = np.zeros((n, n), int)
    for i in range(n):
        wins[i, (i + 1) % n] += 1
        wins[(i + 1) % n, i] += 1
    for _ in range(rng.randrange(5, 40) * n):
        i, j = rng.sample(range(n), 2)
        better = rng.random() < 1 / (1 + np.exp(strengths[j] - strengths[i]))
        wins[(i, j) if better else (j, i)] += 1
    return counts(wins)


def random_rankings(rng, n):
    strengths = [rng.gauss(0, 1) for _ in range(n)]
    out = [list(range(n)), list(range(n))[::-1]]
    for _ in range(rng.randrange(4, 30)):
        some = rng.sample(range(n), rng.randint(2, n))
        out.append(sorted(some, key=lambda k: rng.expovariate(np.exp(strengths[k]))))
    return out


def main():
    rng = random.Random(SEED)
    votes, strengths = [], []

    def add(case, cast, fit):
        votes.extend([case, times, " ".join(map(str, chosen))] for times, chosen in cast)
        strengths.extend([case, thing, repr(float(log)), repr(float(error))] for thing, (log, error) in enumerate(zip(*fit)))
        print(case, np.round(fit[0], 4), np.round(fit[1], 4), file=sys.stderr)

    for case, wins in (("baseball", baseball()), ("citations", CITED)):
        add(case, counts(wins), fit_pairs(len(wins), counts(wins)))
    for k in range(12):
        n = rng.randint(2, 16)
        cast = random_pairs(rng, n)
        add(f"pairs{k}", cast, fit_pairs(n, cast))
    for k in range(12):
        n = rng.randint(3, 9)
        rankings = random_rankings(rng, n)
        add(f"rankings{k}", [(1, ranking) for ranking in rankings], fit_rankings(n, rankings))
    separated = {
        "unanimous": (2, [(7, (0, 1))]),
        "chain": (4, [(3, (0, 1)), (2, (1, 2)), (5, (2, 3)), (1, (3, 2))]),
        "unbeaten": (3, [(4, (0, 1, 2)), (4, (1, 2)), (3, (2, 1)), (2, (0, 2))]),
    }
    for case, (n, cast) in separated.items():
        add(case, cast, fit_separated(n, cast))
    write("votes.csv", "case,times,picked_first", votes)
    write("strengths.csv", "case,thing,log,error", strengths)


def write(name, header, rows):
    DATA.mkdir(parents=True, exist_ok=True)
    with open(DATA / name, "w") as out:
        out.write(f"# tools/votes_reference.py, statsmodels {statsmodels.__version__}, choix 0.4.1, mpmath {mpmath.__version__}, "
                  f"Python {sys.version.split()[0]}, seed {SEED}\n{header}\n")
        for row in rows:
            out.write(",".join(str(x) for x in row) + "\n")


if __name__ == "__main__":
    mp.dps = 30
    main()
