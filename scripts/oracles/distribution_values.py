#!/usr/bin/env python3
"""Makes the tables of true values for the chi-square and Student's distribution, to 40 digits, from mpmath.

Run from the project's root: python3 scripts/oracles/distribution_values.py [--count N] [--out FOLDER]
Each row is the input doubles as they print, and the true value for exactly those doubles.
"""
import argparse
import json
import random

import mpmath
from mpmath import mp, mpf

DIGITS = 40
HEAD = {
    "source": f"mpmath {mpmath.__version__}, {DIGITS} digits",
    "locator": "scripts/oracles/distribution_values.py",
    "seen": "computed",
}


def degrees_of(chance):
    kind = chance.random()
    if kind < 0.6:
        return float(chance.randint(1, 60))
    if kind < 0.85:
        return round(chance.uniform(1, 400), 2)
    return float(chance.choice([1000, 1000, 5000, 5000, 5000, 100000]))


def probability(chance):
    kind = chance.random()
    if kind < 0.5:
        return round(chance.uniform(0.001, 0.999), 3)
    if kind < 0.75:
        return float(f"{10 ** chance.uniform(-12 if kind < 0.7 else -90, -2):.3g}")
    return 1 - float(f"{10 ** chance.uniform(-9, -2):.3g}")


def chi_tail(value, degrees, upper):
    """By the series of positive terms; the digits beyond forty pay for the difference."""
    a, x = mpf(degrees) / 2, mpf(value) / 2
    term = total = mpf(1)
    n = 0
    while term > total * mpf(10) ** -mp.dps:
        n += 1
        term *= x / (a + n)
        total += term
    lower = mpmath.exp(a * mpmath.log(x) - x - mpmath.loggamma(a + 1)) * total
    return 1 - lower if upper else lower


def chi_value(chance, degrees):
    """A value within seven standard deviations or so of the middle."""
    wide = (2 * degrees) ** 0.5
    return float(f"{max(degrees * 1e-3, degrees + chance.uniform(-3.5, 7) * wide):.6g}")


def beta_part(a, b, x):
    """I_x(a, b) by its series of positive terms, for x up to about a half."""
    term = total = mpf(1)
    n = 0
    while term > total * mpf(10) ** -mp.dps:
        term *= (a + b + n) / (a + 1 + n) * x
        total += term
        n += 1
    front = a * mpmath.log(x) + b * mpmath.log1p(-x) + mpmath.loggamma(a + b) - mpmath.loggamma(a + 1) - mpmath.loggamma(b)
    return mpmath.exp(front) * total


def student_cdf(t, degrees):
    t, n = mpf(t), mpf(degrees)
    half = mpf(1) / 2
    if t == 0:
        return half
    # From the end at which the series is short; the digits beyond forty pay for the difference.
    square = t * t / (n + t * t)
    tail = (1 - beta_part(half, n / 2, square)) / 2 if t * t < n else beta_part(n / 2, half, n / (n + t * t)) / 2
    return tail if t < 0 else 1 - tail


def solve(function, density, bounds, wanted):
    """A search by halves on the logarithm, then Newton's steps."""
    low, high = bounds
    rising = function(high) > function(low)
    while high / low > 1 + mpf(10) ** -6:
        middle = mpmath.sqrt(low * high)
        if (function(middle) < wanted) == rising:
            low = middle
        else:
            high = middle
    x = mpmath.sqrt(low * high)
    for _ in range(12):
        step = (function(x) - wanted) / density(x)
        x -= step
        if abs(step) < abs(x) * mpf(10) ** -(DIGITS + 10):
            return x
    raise ArithmeticError(f"no quantile for {wanted}")


def chi_quantile(p, degrees):
    p = mpf(p)
    a = mpf(degrees) / 2

    def density(x):
        return mpmath.exp((a - 1) * mpmath.log(x / 2) - x / 2 - mpmath.loggamma(a)) / 2

    # The smaller tail, so that nothing is lost.
    if p <= 0.5:
        return solve(lambda x: chi_tail(x, degrees, False), density, (mpf(10) ** -210, mpf(degrees) + 12 * mpmath.sqrt(degrees) + 100), p)
    return solve(lambda x: chi_tail(x, degrees, True), lambda x: -density(x), (mpf(10) ** -210, mpf(degrees) + 12 * mpmath.sqrt(degrees) + 100), 1 - p)


def student_quantile(p, degrees):
    p, n = mpf(p), mpf(degrees)
    if p == 0.5:
        return mpf(0)
    tail = min(p, 1 - p)

    def density(t):
        return -mpmath.exp(mpmath.loggamma((n + 1) / 2) - mpmath.loggamma(n / 2)) / mpmath.sqrt(n * mpmath.pi) * (1 + t * t / n) ** (-(n + 1) / 2)

    t = solve(lambda t: student_cdf(-t, degrees), density, (mpf(10) ** -20, mpf(10) ** 95), tail)
    return -t if p < 0.5 else t


def rows_of(name, count, chance):
    rows = []
    while len(rows) < count:
        if name in ("chiSquareCdf", "chiSquareUpper"):
            degrees = degrees_of(chance)
            value = chi_value(chance, degrees)
            rows.append((value, degrees, chi_tail(value, degrees, name == "chiSquareUpper")))
        elif name == "chiSquareQuantile":
            p, degrees = probability(chance), degrees_of(chance)
            rows.append((p, degrees, chi_quantile(p, degrees)))
        elif name == "studentCdf":
            degrees = degrees_of(chance)
            far = 2 if degrees < 20 else 1
            t = float(f"{chance.choice([chance.uniform(-6, 6), -10 ** chance.uniform(-3, far)]):.6g}")
            rows.append((t, degrees, student_cdf(t, degrees)))
        else:
            p, degrees = probability(chance), degrees_of(chance)
            rows.append((p, degrees, student_quantile(p, degrees)))
    return rows


TABLES = {
    "chiSquareCdf": 1e-13,
    "chiSquareUpper": 1e-13,
    "chiSquareQuantile": 1e-14,
    "studentCdf": 1e-13,
    "studentQuantile": 1e-14,
}


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--count", type=int, default=120)
    parser.add_argument("--out", default="tests/published")
    words = parser.parse_args()
    mp.dps = DIGITS + 120
    for name, tolerance in TABLES.items():
        chance = random.Random(f"{name} 2147")
        table = {**HEAD, "subject": name, "unit": "1", "tolerance": {"rel": tolerance}}
        lines = [json.dumps([repr(a), repr(b), mpmath.nstr(truth, DIGITS)]) for a, b, truth in rows_of(name, words.count, chance)]
        head = json.dumps(table, indent=2)[:-2]
        with open(f"{words.out}/distribution-{name}.json", "w", encoding="utf8") as file:
            file.write(head + ',\n  "rows": [\n    ' + ",\n    ".join(lines) + "\n  ]\n}\n")
        print(name, len(lines))


main()
