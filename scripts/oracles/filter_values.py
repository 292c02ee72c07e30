#!/usr/bin/env python3
"""True values, to 20 digits from mpmath, for what the estimator and the batch are held against.

Run from the project's root: python3 scripts/oracles/filter_values.py
The level of a river by the recursions of a local level; two stores with a planted loss as one generalised least-squares
problem with the loss as an unknown; differences of a balance made independent by a Cholesky factor.
"""
import json

from mpmath import mp, mpf, matrix, sqrt, log, pi, nstr, cholesky, lu_solve

mp.dps = 40
DATA = "tests/published/data"
OUT = "tests/published"
LOCATOR = "scripts/oracles/filter_values.py"


def read(name):
    with open(f"{DATA}/{name}.json", encoding="utf8") as file:
        return json.load(file, parse_float=mpf, parse_int=mpf)


def write(file, source, subject, unit, rows):
    head = {"source": source, "locator": LOCATOR, "seen": "computed", "subject": subject, "unit": unit, "tolerance": {"rel": 1e-9}}
    body = ",\n    ".join(json.dumps([*row[:-1], nstr(row[-1], 20)]) for row in rows)
    with open(f"{OUT}/{file}", "w", encoding="utf8") as out:
        out.write(json.dumps(head, indent=2)[:-2] + f',\n  "rows": [\n    {body}\n  ]\n}}\n')
    print(file, len(rows))


def local_level(readings, noise, wander, mean, variance):
    """Mean and variance of the level before the first reading; the innovations, their variances, and the last state."""
    likelihood = mpf(0)
    for reading in readings:
        innovation, total = reading - mean, variance + noise
        likelihood -= (log(2 * pi) + log(total) + innovation**2 / total) / 2
        gain = variance / total
        mean += gain * innovation
        left = variance * noise / total
        variance = left + wander
    return likelihood, mean, left, total


def nile():
    readings = read("nile")["values"]
    noise, wander = mpf(15099), mpf("1469.1")
    given_first, level, left, total = local_level(readings[1:], noise, wander, readings[0], noise + wander)
    with_prior = local_level(readings, noise, wander, mpf(0), mpf(10) ** 7)[0]
    steady = (wander + sqrt(wander**2 + 4 * wander * noise)) / 2
    print("steady state in closed form:", nstr(steady, 12), nstr(steady / (steady + noise), 12))
    variances = ["15099", "1469.1"]
    return [
        ["logLikelihoodGivenFirst", *variances, given_first],
        ["logLikelihoodPrior1e7", *variances, with_prior],
        ["level", *variances, level],
        ["levelVariance", *variances, left],
        ["predictedVariance", *variances, steady],
        ["gain", *variances, steady / (steady + noise)],
    ]


def two_stores():
    """Readings = states at the start, amounts and calibration put together linearly, plus the loss; GLS on all of it."""
    given = read("two-stores")
    days = len(given["readA"])
    moved, used = given["movedKg"], given["usedKg"]
    u_move, u_use = given["uMoveKg"], given["uUseKg"]
    priors = given["priors"]
    # Unknown errors: A, B, b at the start, then a move and a use error a day; every one has a prior.
    errors = 3 + 2 * (days - 1)
    variance = [p["u"] ** 2 for p in priors] + [u_move**2, u_use**2] * (days - 1)
    design, expected, observed, noise, loss = [], [], [], [], []
    for day in range(days):
        a, b = [mpf(0)] * errors, [mpf(0)] * errors
        a[0], b[1] = mpf(1), mpf(1)
        a[2], b[2] = -moved * day, moved * day
        for before in range(day):
            a[3 + 2 * before], b[3 + 2 * before], b[4 + 2 * before] = mpf(-1), mpf(1), mpf(-1)
        design += [a, b]
        expected += [priors[0]["mean"] - moved * day, priors[1]["mean"] + (moved - used) * day]
        observed += [given["readA"][day], given["readB"][day]]
        noise += [given["uA"] ** 2, given["uB"] ** 2]
        loss += [mpf(0), -max(mpf(0), day - given["lossAfterReading"])]
    h = matrix(design)
    p = mp.diag(variance)
    v = h * p * h.T + mp.diag(noise)
    nu = matrix([o - e for o, e in zip(observed, expected)])
    weighted = lu_solve(v, nu)
    estimate = p * h.T * weighted
    f = matrix(loss)
    power = (f.T * lu_solve(v, f))[0]
    match = (f.T * weighted)[0]
    last_a = priors[0]["mean"] - moved * (days - 1) + (matrix([design[-2]]) * estimate)[0]
    last_b = priors[1]["mean"] + (moved - used) * (days - 1) + (matrix([design[-1]]) * estimate)[0]
    chi = (nu.T * weighted)[0]
    both = [["A", last_a], ["B", last_b], ["b", estimate[2]], ["chiSquare", chi]]
    return [[way, *row] for way in ("estimator", "batch") for row in both] + [
        ["batch", "lossPerDay", match / power],
        ["batch", "lossPerDayU", 1 / sqrt(power)],
        ["batch", "statistic", match**2 / power],
    ]


def whitened():
    series = ["0.3", "-0.4", "1.2", "0.8", "1.5", "0.9"]
    n = len(series)
    inventory, transfer = mpf(1), mpf("0.5")
    covariance = matrix(n, n)
    for i in range(n):
        covariance[i, i] = 2 * inventory**2 + transfer**2
        if i > 0:
            covariance[i, i - 1] = covariance[i - 1, i] = -(inventory**2)
    white = lu_solve(cholesky(covariance), matrix([mpf(x) for x in series]))
    return [[" ".join(series), way, str(i), white[i]] for way in ("factor", "estimator") for i in range(n)]


write("nile-filter.json", "the recursions of a local level and its steady state in closed form, by a program of its own", "nile", "10^8 m3", nile())
write("loss-hypothesis.json", "generalised least squares with the loss as an unknown, by a program of its own", "lossHypothesis", "kg", two_stores())
write("whitened-balance.json", "the Cholesky factor of a balance's covariance, by a program of its own; the estimator's standardised innovations are the same", "whitened", "1", whitened())
