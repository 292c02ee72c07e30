#!/usr/bin/env python3
"""Reconciles the published networks in exact fractions, and writes what the tests hold the tool against.

Run from the project's root: python3 scripts/oracles/reconciliation_values.py
Only square roots and probabilities are not exact; they come from mpmath with 40 digits. Which values are checked or can
be deduced is found by counting ranks, and not by projecting.
"""
import itertools
import json
from fractions import Fraction

import mpmath
from mpmath import mp, mpf

DATA = "tests/published/data"
OUT = "tests/published"
SOURCE = "the same data in exact fractions, by a program of its own"
LOCATOR = "scripts/oracles/reconciliation_values.py"
NETWORKS = [
    "heat-circuit",
    "bypass-exchanger",
    "bypass-exchanger-biased",
    "steam-metering",
    "twelve-streams",
    "industrial-water",
    "eight-streams",
]
CASES = ["S1 S2 S6", "S1 S6", "S1 S2", "S1 S2 S5 S6"]


def read(name):
    with open(f"{DATA}/{name}.json", encoding="utf8") as file:
        return json.load(file, parse_float=Fraction, parse_int=Fraction)


def matrices(network):
    """Measured values, their covariance, and the balances."""
    names = network["names"]
    if "u" in network:
        variance = [u * u for u in network["u"]]
    elif "variance" in network:
        variance = network["variance"]
    else:
        variance = [(half / network["coverageFactor"]) ** 2 for half in network["u95"]]
    s = [[variance[i] if i == j else Fraction(0) for j in range(len(names))] for i in range(len(names))]
    for one, other, r in network.get("correlations", []):
        i, j = names.index(one), names.index(other)
        # Only here a root could come in; half-widths give it exactly.
        s[i][j] = s[j][i] = r * network["u95"][i] * network["u95"][j] / network["coverageFactor"] ** 2
    a = [[balance.get(name, Fraction(0)) for name in names] for balance in network["balances"]]
    return network["measured"], s, a


def product(a, b):
    return [[sum((x * b[k][j] for k, x in enumerate(row) if x), Fraction(0)) for j in range(len(b[0]))] for row in a]


def turned(a):
    return [list(column) for column in zip(*a)]


def reduced(a):
    """Row echelon form with leading ones, and the columns that lead."""
    a = [list(row) for row in a]
    leading = []
    for column in range(len(a[0]) if a else 0):
        row = len(leading)
        pivot = next((k for k in range(row, len(a)) if a[k][column] != 0), None)
        if pivot is None:
            continue
        a[row], a[pivot] = a[pivot], a[row]
        a[row] = [x / a[row][column] for x in a[row]]
        for k in range(len(a)):
            if k != row and a[k][column] != 0:
                factor = a[k][column]
                a[k] = [x - factor * y for x, y in zip(a[k], a[row])]
        leading.append(column)
    return a[: len(leading)], leading


def rank(a):
    return len(reduced(a)[1]) if a and a[0] else 0


def inverse(a):
    n = len(a)
    wide = [list(row) + [Fraction(int(i == j)) for j in range(n)] for i, row in enumerate(a)]
    echelon, leading = reduced(wide)
    assert leading[:n] == list(range(n)), "a singular matrix"
    return [row[n:] for row in echelon]


def kernel(a, columns):
    """Rows that span what a takes to nothing."""
    echelon, leading = reduced(a)
    rows = []
    for free in (c for c in range(columns) if c not in leading):
        row = [Fraction(0)] * columns
        row[free] = Fraction(1)
        for k, lead in enumerate(leading):
            row[lead] = -echelon[k][free]
        rows.append(row)
    return rows


def reconcile(y, s, a):
    """Values, covariance, adjustments and their covariance, residuals, inverse and covariance of the residuals."""
    shared = product(a, s)
    v = product(shared, turned(a))
    weight = inverse(v)
    residual = [row[0] for row in product(a, [[value] for value in y])]
    multiplier = [row[0] for row in product(weight, [[r] for r in residual])]
    adjustment = [row[0] for row in product(turned(shared), [[m] for m in multiplier])]
    w = product(product(turned(shared), weight), shared)
    return {
        "values": [value - change for value, change in zip(y, adjustment)],
        "covariance": [[x - z for x, z in zip(left, right)] for left, right in zip(s, w)],
        "adjustment": adjustment,
        "w": w,
        "residual": residual,
        "v": v,
        "weight": weight,
        "multiplier": multiplier,
        "chi": sum(r * m for r, m in zip(residual, multiplier)),
    }


def real(x):
    return mpf(x.numerator) / mpf(x.denominator)


def root(x):
    return mpmath.sqrt(real(x))


def over_root(x, variance):
    return mpf(0) if variance == 0 else real(x) / root(variance)


def chi_quantile(p, degrees):
    def below(x):
        return mpmath.gammainc(mpf(degrees) / 2, 0, x / 2, regularized=True) - p

    return mpmath.findroot(below, (mpf(degrees) * 2, mpf(degrees) * 2 + 3))


def sidak(level, count):
    p = 1 - (1 - mpf(level)) ** (mpf(1) / count)
    return mpmath.sqrt(2) * mpmath.erfinv(1 - p)


def rows_of(name):
    network = read(name)
    names = network["names"]
    y, s, a = matrices(network)
    found = reconcile(y, s, a)
    rows = [
        ("globalTest", "", real(found["chi"])),
        ("degrees", "", mpf(len(a))),
        ("critical95", "", chi_quantile(mpf("0.95"), len(a))),
        ("probability", "", mpmath.gammainc(mpf(len(a)) / 2, real(found["chi"]) / 2, mpmath.inf, regularized=True)),
        ("sidak95", "", sidak("0.05", len(y))),
    ]
    s_inverse = inverse(s)
    d = [row[0] for row in product(s_inverse, [[x] for x in found["adjustment"]])]
    d_variance = product(product(s_inverse, found["w"]), s_inverse)
    for i, value in enumerate(names):
        rows += [
            ("reconciled", value, real(found["values"][i])),
            ("u", value, root(found["covariance"][i][i])),
            ("measurementTest", value, over_root(found["adjustment"][i], found["w"][i][i])),
            ("strongestMeasurementTest", value, over_root(d[i], d_variance[i][i])),
        ]
        if any(row[i] for row in a):
            rows += explained(found, [row[i] for row in a], "bias", value)
    for k in range(len(a)):
        node = str(k + 1)
        rows += [
            ("residual", node, real(found["residual"][k])),
            ("nodalTest", node, over_root(found["residual"][k], found["v"][k][k])),
            ("strongestNodalTest", node, over_root(found["multiplier"][k], found["weight"][k][k])),
        ]
        rows += explained(found, [Fraction(int(j == k)) for j in range(len(a))], "leak", node)
    return [[name, quantity, which, text(value)] for quantity, which, value in rows]


def explained(found, direction, kind, which):
    weighted = [row[0] for row in product(found["weight"], [[f] for f in direction])]
    power = sum(f * w for f, w in zip(direction, weighted))
    match = sum(r * w for r, w in zip(found["residual"], weighted))
    return [(f"{kind}Statistic", which, real(match * match / power)), (f"{kind}Size", which, real(match / power))]


def text(value):
    return mpmath.nstr(value, 20, strip_zeros=True)


def partly(name, case):
    """Words by ranks; values by removing the unmeasured ones from the balances by exact elimination."""
    network = read(name)
    names, kept = network["names"], case.split()
    y, s, a = matrices(network)
    x = [names.index(value) for value in kept]
    u = [i for i in range(len(names)) if i not in x]
    columns = lambda chosen: [[row[i] for i in chosen] for row in a]
    words = {}
    for i in x:
        words[names[i]] = "checked" if rank(columns(u + [i])) > rank(columns(u)) else "only source"
    for i in u:
        words[names[i]] = "deduced" if rank(columns(u)) > rank(columns([j for j in u if j != i])) else "unknown"
    across = kernel(turned(columns(u)), len(a)) if u else [[Fraction(int(i == j)) for j in range(len(a))] for i in range(len(a))]
    g = reduced(product(across, columns(x)))[0] if across else []
    measured = [y[i] for i in x]
    found = reconcile(measured, [[s[i][j] for j in x] for i in x], g) if g else None
    values = dict(zip(kept, found["values"] if found else measured))
    right = [-row[0] for row in product(columns(x), [[values[value]] for value in kept])]
    echelon, leading = reduced([row + [b] for row, b in zip(columns(u), right)])
    for row, lead in zip(echelon, leading):
        if lead < len(u) and words[names[u[lead]]] == "deduced":
            values[names[u[lead]]] = row[-1]
    numbers = [[name, case, "reconciled", value, text(real(values[value]))] for value in names if value in values]
    numbers.append([name, case, "degrees", "", str(len(g))])
    return [[name, case, value, words[value]] for value in names], numbers


def write(file, subject, tolerance, rows):
    head = {"source": SOURCE, "locator": LOCATOR, "seen": "computed", "subject": subject, "unit": "as printed", "tolerance": tolerance}
    body = ",\n    ".join(json.dumps(row) for row in rows)
    with open(f"{OUT}/{file}", "w", encoding="utf8") as out:
        out.write(json.dumps(head, indent=2)[:-2] + f',\n  "rows": [\n    {body}\n  ]\n}}\n')
    print(file, len(rows))


def main():
    mp.dps = 40
    write("reconciliation-networks.json", "network", {"abs": 1e-9}, list(itertools.chain(*(rows_of(name) for name in NETWORKS))))
    words, numbers = [], []
    for case in CASES:
        some_words, some_numbers = partly("bypass-exchanger", case)
        words += some_words
        numbers += some_numbers
    write("reconciliation-words.json", "word", {"exact": True}, words)
    write("reconciliation-partly-measured.json", "partlyMeasured", {"abs": 1e-10}, numbers)


main()
