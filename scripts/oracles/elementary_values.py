#!/usr/bin/env python3
"""Makes the tables of true values for the elementary functions, to 40 digits, from mpmath.

Run from the project's root: python3 scripts/oracles/elementary_values.py [--count N] [--out FOLDER]
Each row is the input doubles as they print, and the true value for exactly those doubles.
"""
import argparse
import json
import math
import random
import struct

from mpmath import mp, mpf
import mpmath

DIGITS = 40
TINY = 5e-324
SMALLEST_NORMAL = 2.2250738585072014e-308
LARGEST = 1.7976931348623157e308


def neighbours(x, steps=2):
    found = [x]
    up = down = x
    for _ in range(steps):
        up = math.nextafter(up, math.inf)
        down = math.nextafter(down, -math.inf)
        found += [up, down]
    return found


def any_double(chance):
    while True:
        x = struct.unpack("<d", struct.pack("<Q", chance.getrandbits(64)))[0]
        if math.isfinite(x):
            return x


def spread(chance, low, high):
    """A positive number with its exponent spread evenly."""
    return math.ldexp(1 + chance.random(), chance.randint(low, high))


def signed(chance, x):
    return x if chance.random() < 0.5 else -x


def cases(name, count, chance):
    """The inputs for a function: hard ones first, then random ones."""
    one = {
        "exp": lambda: signed(chance, min(spread(chance, -60, 9), 709.0)),
        "expm1": lambda: signed(chance, min(spread(chance, -60, 6), 700.0)),
        "log": lambda: chance.choice([abs(any_double(chance)) or 1.0, chance.uniform(0.5, 2)]),
        "log1p": lambda: chance.choice([spread(chance, -80, 80), -chance.random(), signed(chance, spread(chance, -60, -1))]),
        "log10": lambda: chance.choice([abs(any_double(chance)) or 1.0, chance.uniform(0.5, 2)]),
        "sin": lambda: signed(chance, spread(chance, -40, chance.choice([3, 20, 1000]))),
        "cos": lambda: signed(chance, spread(chance, -40, chance.choice([3, 20, 1000]))),
        "atan": lambda: signed(chance, spread(chance, -40, chance.choice([3, 20, 1000]))),
        "asin": lambda: signed(chance, chance.choice([chance.random(), spread(chance, -40, -1), 1 - spread(chance, -50, -2)])),
        "acos": lambda: signed(chance, chance.choice([chance.random(), spread(chance, -40, -1), 1 - spread(chance, -50, -2)])),
        "tanh": lambda: signed(chance, spread(chance, -40, 4)),
        "erf": lambda: signed(chance, spread(chance, -40, 2)),
        "erfc": lambda: chance.choice([chance.uniform(-6, 27), signed(chance, spread(chance, -40, 2))]),
        "normalCdf": lambda: chance.choice([chance.uniform(-38.4, 8), signed(chance, spread(chance, -40, 2))]),
        "normalQuantile": lambda: chance.choice([chance.random(), spread(chance, -1074, -2), 1 - spread(chance, -50, -2)]),
        "cbrt": lambda: any_double(chance),
    }
    if name == "pow":
        found = hard_powers()
        while len(found) < count:
            x = chance.choice([spread(chance, -20, 20), spread(chance, -1000, 1000), 1 + signed(chance, spread(chance, -50, -2))])
            room = 745 / max(abs(math.log(x)), 1e-18)
            found.append((x, signed(chance, min(chance.random() * room, 1e300))))
        return found
    found = [x for x in hard(name)]
    while len(found) < count:
        found.append(one[name]())
    return [(x,) for x in found]


def hard(name):
    everywhere = [TINY, 1e-310, SMALLEST_NORMAL, 1e-300, 1e-160, 1e-20, 2**-54, 2**-53, 2**-27]
    both = everywhere + [-x for x in everywhere]
    steps = [x for k in (1, 3, 7, 31, 33, -1, -5, 1000, -30000) for x in neighbours(k * math.log(2) / 64, 1)]
    near_one = [y for k in (1, 8, 20, 30, 45) for y in (1 + 2.0**-k, 1 - 2.0**-k)] + neighbours(1.0)
    rows = [x / 256 for x in range(181, 363, 9)]
    angles = [x for k in (1, 2, 3, 4, 10, 22, 355, 710, 103993, 600000) for x in neighbours(k * math.pi / 2, 1)]
    huge = [math.ldexp(6381956970095103, 797), math.ldexp(5, 500), 1e22, 1e308, LARGEST, 999999.9, 1000000.1, math.pi / 4]
    tangents = [y for k in (1, 2, 3, 5, 8, 16, 31, 32, 33, 63) for x in (k / 64, 64 / k) for y in neighbours(x, 1)]
    near_end = [1.0] + [1 - 2.0**-k for k in (1, 2, 8, 20, 30, 45, 53)] + [math.sqrt(0.5), math.sqrt(0.75), 0.5]
    arcs = both + near_end + [-x for x in near_end]
    grid = [0.5, 1.0, 2.0, 4.0, 8.0, 0.53125, 1.0625, 3.875, 7.75]
    return {
        "exp": both + steps + neighbours(709.782712893384, 1)[:1] + [-708.4, -720.3, -744.5, -745.1332191019411, 709.1, 1.0, -1.0],
        "expm1": both + steps + [x for x in neighbours(math.log(2) / 64)] + [0.3, -0.3, 1.0, -1.0, -36.7, -37.5, 39.9, 40.1, 709.0],
        "log": everywhere + near_one + rows + neighbours(math.sqrt(2)) + neighbours(math.sqrt(0.5)) + [LARGEST, 10.0, math.e],
        "log1p": both + [x - 1 for x in near_one if x != 1] + [1 / 512, -1 / 512, -0.9999999, -1 + 2**-53, 1e300] + [x - 1 for x in rows if x != 1],
        "log10": everywhere + near_one + rows + [10.0**k for k in range(-5, 23)] + [LARGEST],
        "sin": both + angles + huge,
        "cos": both + angles + huge,
        "atan": both + tangents + [-x for x in tangents] + [2.0**53, 2.0**54, 1e17, 1e300, LARGEST, -LARGEST, 3.0, 1e6],
        "asin": arcs,
        "acos": arcs,
        "tanh": both + [1e-9, 1.0001e-9, 0.35, 0.55, 1.0, -1.0, 18.9, 19.5, 20.0, 25.0],
        "erf": both + [y for x in grid for y in neighbours(x, 1)] + [1e-140, 1.1e-140, 5.9, 6.1, -0.5, 0.4999],
        "erfc": both + [y for x in grid for y in neighbours(x, 1)] + [-0.5, -0.4999, -5.9, 26.5, 26.54, 27.2, 15.0, 20.0],
        "normalCdf": both + [1.96, -1.96, 0.70710678, -0.70710678, 0.7072, -0.7072, -37.5, -38.0, -38.4, 8.2, -11.3137, -11.314, 5.0],
        "normalQuantile": everywhere + [0.25, 0.75, 0.5, 0.025, 0.975, 0.05, 0.95, 0.1, 0.9, 1 - 2**-53] + neighbours(0.25, 1) + neighbours(0.75, 1) + neighbours(0.5, 2),
        "cbrt": both + [8.0, 27.0, 1e3, 0.001, LARGEST, -64.0, 2.0, 3.0] + near_one,
    }[name]


def hard_powers():
    whole = [(float(x), float(y)) for x in (2, 3, 7, 10, -2, -3) for y in (1, 2, 3, 10, 17, -1, -5)]
    roots = [(x, y) for x in (2.0, 10.0, 0.1, 1e300, 1e-300, TINY, SMALLEST_NORMAL) for y in (0.5, -0.5, 1 / 3, 0.01)]
    near = [(1 + 2.0**-k, s * 2.0 ** (k + 8)) for k in (10, 20, 30, 40, 52) for s in (1, -1)]
    edge = [(2.0, 1023.5), (2.0, -1022.5), (2.0, -1073.9), (10.0, 308.2), (10.0, -323.0), (1.0000000000000002, 3e18), (0.9999999999999999, 6e18)]
    faint = [(2.0, 1e-300), (2.0, 1e-17), (1 + 2.0**-52, 1e-3), (1e-300, 1e-30), (1.5, TINY)]
    return whole + roots + near + edge + faint


FUNCTIONS = {
    "exp": (mpmath.exp, 1),
    "expm1": (mpmath.expm1, 1),
    "log": (mpmath.log, 1),
    "log1p": (mpmath.log1p, 1),
    "log10": (lambda x: mpmath.log(x) / mpmath.log(10), 1),
    "pow": (lambda x, y: mpmath.power(x, y), 1),
    "cbrt": (lambda x: mpmath.sign(x) * mpmath.cbrt(abs(x)), 1),
    "sin": (mpmath.sin, 1),
    "cos": (mpmath.cos, 1),
    "atan": (mpmath.atan, 1),
    "asin": (mpmath.asin, 1),
    "acos": (mpmath.acos, 1),
    "tanh": (mpmath.tanh, 1),
    "erf": (mpmath.erf, 1),
    "erfc": (mpmath.erfc, 1),
    "normalCdf": (lambda x: mpmath.erfc(-x / mpmath.sqrt(2)) / 2, 1),
    "normalQuantile": (None, 1),
}


def quantile(p):
    """Newton on the logarithm of the tail, at full precision; no inverse error function is taken from a library."""
    if p == mpf("0.5"):
        return mpf(0)
    tail = min(p, 1 - p)
    z = mpmath.sqrt(-2 * mpmath.log(2 * tail)) if tail < mpf("0.1") else mpmath.sqrt(2 * mpmath.pi) * (mpf("0.5") - tail)
    for _ in range(80):
        area = mpmath.erfc(z / mpmath.sqrt(2)) / 2
        density = mpmath.exp(-z * z / 2) / mpmath.sqrt(2 * mpmath.pi)
        move = mpmath.log(area / tail) * area / density
        z += move
        if abs(move) <= abs(z) * mpf(10) ** -(DIGITS + 15):
            break
    else:
        raise ArithmeticError(f"no quantile found for {p}")
    return -z if p < mpf("0.5") else z


def true_value(name, inputs):
    # Angles of any size and sums near 1 need the digits of the input's whole range.
    mp.dps = 800 if name in ("sin", "cos", "expm1", "log1p", "normalQuantile", "erf", "pow", "tanh", "atan", "asin", "acos") and wants_more(name, inputs) else 80
    exact = [mpf(x) for x in inputs]
    value = quantile(exact[0]) if name == "normalQuantile" else FUNCTIONS[name][0](*exact)
    return mpmath.nstr(value, DIGITS, strip_zeros=True)


def wants_more(name, inputs):
    if name == "normalQuantile":
        return False
    return any(x != 0 and not 1e-30 < abs(x) < 1e30 for x in inputs)


def as_text(x):
    text = repr(float(x))
    return text[:-2] if text.endswith(".0") else text


def main():
    reader = argparse.ArgumentParser()
    reader.add_argument("--count", type=int, default=260)
    reader.add_argument("--out", default="tests/published")
    options = reader.parse_args()
    for name, (_, ulps) in FUNCTIONS.items():
        chance = random.Random(f"elementary {name}")
        seen, rows = set(), []
        for inputs in cases(name, options.count, chance):
            if inputs in seen:
                continue
            seen.add(inputs)
            rows.append([*(as_text(x) for x in inputs), true_value(name, inputs)])
        table = {
            "source": f"mpmath {mpmath.__version__}, {DIGITS} digits",
            "locator": "scripts/oracles/elementary_values.py",
            "seen": "computed",
            "subject": name,
            "unit": "1",
            "tolerance": {"ulp": ulps},
        }
        head = json.dumps(table, indent=2)[:-2]
        body = ",\n".join("    " + json.dumps(row) for row in rows)
        with open(f"{options.out}/elementary-{name}.json", "w", encoding="utf-8") as file:
            file.write(f'{head},\n  "rows": [\n{body}\n  ]\n}}\n')


main()
