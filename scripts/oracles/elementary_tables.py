#!/usr/bin/env python3
"""Makes the constant tables of src/ground/maths from mpmath at 60 digits.

Run from the project's root: python3 scripts/oracles/elementary_tables.py
The tables are committed; this shows where each number comes from, and makes the same files again.
"""
from mpmath import mp, mpf, exp, log, erfc, sqrt, pi, matrix, lu_solve, cos, atan

mp.dps = 60
HEAD = "// {0}\n// Made by scripts/oracles/elementary_tables.py; a pair is a double and the double nearest to what it leaves over.\n// biome-ignore-all lint/suspicious/noApproximativeNumericConstant: a table stays as it was made\n"


def pair(value):
    high = float(value)
    return high, float(value - mpf(high))


def cut(value, bits):
    """The value with its significand cut to so many bits, and the rest."""
    mantissa, power = mp.frexp(value)
    high = mp.floor(mantissa * 2**bits) / 2**bits * mpf(2) ** power
    return float(high), value - high


def show(number):
    text = repr(float(number))
    return text[:-2] if text.endswith(".0") else text


def array(name, doc, numbers, per_line):
    rows = [numbers[i : i + per_line] for i in range(0, len(numbers), per_line)]
    body = "".join("  " + " ".join(show(number) + "," for number in row) + "\n" for row in rows)
    return f"\n/** {doc} */\n// biome-ignore format: a table reads by rows\nexport const {name} = new Float64Array([\n{body}]);\n"


def constant(name, doc, number):
    return f"\n/** {doc} */\nexport const {name} = {show(number)};\n"


def write(path, title, parts):
    with open(path, "w", encoding="utf-8") as file:
        file.write(HEAD.format(title) + "".join(parts))


def exp_table():
    roots = []
    for step in range(32):
        roots.extend(pair(mpf(2) ** (mpf(step) / 32)))
    first, rest = cut(log(2) / 32, 37)
    second, rest = cut(rest, 37)
    write(
        "src/ground/maths/exp-table.ts",
        "Constants of the exponential: powers of two in steps of 1/32, and ln 2 / 32 in three parts.",
        [
            array("rootsOfTwo", "2^(j/32) for j = 0 to 31, as pairs.", roots, 2),
            constant("stepFirst", "ln 2 / 32, the first 37 bits: its product with a step number is exact.", first),
            constant("stepSecond", "The next 37 bits.", second),
            constant("stepThird", "What is left over.", rest),
            constant("stepsPerUnit", "32 / ln 2.", 32 / log(2)),
        ],
    )


def log_table():
    numbers = []
    for index in range(90, 183):
        inverse = mp.nint(mpf(128) / index * 1024) / 1024
        numbers.append(inverse)
        numbers.extend(pair(-log(inverse)))
    first, rest = cut(log(2), 41)
    write(
        "src/ground/maths/log-table.ts",
        "Constants of the logarithm: short reciprocals of 90/128 to 182/128 and their logarithms.",
        [
            constant("firstIndex", "The first row is for numbers near 90/128.", 90),
            array("reciprocals", "Rows of: reciprocal r, and -ln r as a pair.", numbers, 3),
            constant("lnTwoFirst", "ln 2, the first 41 bits: its product with an exponent is exact.", first),
            constant("lnTwoRest", "What is left over of ln 2.", rest),
            constant("perLnTen", "1 / ln 10.", pair(1 / log(10))[0]),
            constant("perLnTenRest", "What is left over of 1 / ln 10.", pair(1 / log(10))[1]),
        ],
    )


def circle_table():
    first, rest = cut(pi / 2, 33)
    second, rest = cut(rest, 33)
    third, rest = cut(rest, 33)
    bits = 1280
    mp.dps = 420
    two_over_pi = int(mp.floor(2 / pi * mpf(2) ** bits))
    half_pi = int(mp.nint(pi / 2 * mpf(2) ** 160))
    mp.dps = 60
    write(
        "src/ground/maths/circle-table.ts",
        "Constants of sine and cosine: a right angle in parts, and long integers for angles of any size.",
        [
            constant("rightAngleFirst", "π/2, the first 33 bits: its product with a count of 20 bits is exact.", first),
            constant("rightAngleSecond", "The next 33 bits.", second),
            constant("rightAngleThird", "The next 33 bits.", third),
            constant("rightAngleRest", "What is left over.", rest),
            constant("perRightAngle", "2/π.", 2 / pi),
            f"\n/** 2/π × 2^{bits}, cut to an integer. */\nexport const perRightAngleLong = BigInt(\n  '{hex(two_over_pi)}',\n);\n",
            f"\nexport const perRightAngleBits = {bits};\n",
            f"\n/** π/2 × 2^160, rounded to an integer. */\nexport const rightAngleLong = BigInt('{hex(half_pi)}');\n",
        ],
    )


def inverse_circle_table():
    angles = []
    for step in range(33):
        angles.extend(pair(atan(mpf(step) / 32)))
    write(
        "src/ground/maths/inverse-circle-table.ts",
        "Constants of the arc functions: the angles whose tangents are 0/32 to 32/32, and a right angle.",
        [
            array("anglesOfTangents", "atan(k/32) for k = 0 to 32, as pairs.", angles, 2),
            array("rightAngle", "π/2 as a pair.", list(pair(pi / 2)), 2),
        ],
    )


def fit(function, middle, half, degree):
    """Coefficients in (x - middle) of the polynomial through the Chebyshev points of the interval."""
    count = degree + 1
    points = [cos(pi * (2 * i + 1) / (2 * count)) for i in range(count)]
    table = matrix(count, count)
    values = matrix(count, 1)
    for row, point in enumerate(points):
        for column in range(count):
            table[row, column] = point**column
        values[row] = function(middle + half * point)
    solved = lu_solve(table, values)
    return [solved[i] / half**i for i in range(count)]


def erfc_table():
    degree = 10
    numbers = []
    for power in range(-2, 3):
        for step in range(16):
            middle = mpf(2) ** power * (1 + (step + mpf(1) / 2) / 16)
            half = mpf(2) ** power / 32
            found = fit(lambda x: exp(x * x) * erfc(x), middle, half, degree)
            numbers.extend(pair(found[0]))
            numbers.extend(float(each) for each in found[1:])
    series = [2 / sqrt(pi) * (-1) ** n / (mp.factorial(n) * (2 * n + 1)) for n in range(1, 16)]
    tail = [mpf((-1) ** n) * mp.fac2(2 * n - 1) / mpf(2) ** n for n in range(1, 21)]
    write(
        "src/ground/maths/erfc-table.ts",
        "Constants of the error function: exp(x²) erfc(x) from 0.25 to 8 by 80 polynomials, and two series.",
        [
            constant("rowLength", "Numbers in a row of `scaledErfc`.", degree + 2),
            array(
                "scaledErfc",
                "Rows for [2^e (1 + s/16), 2^e (1 + (s+1)/16)), e = -2 to 2, s = 0 to 15: value at the middle as a pair, then the coefficients of the powers of the distance from the middle.",
                numbers,
                degree + 2,
            ),
            array("erfSeries", "erf(x) = 2x/√π + x Σ c_n x^(2n), n = 1 to 15.", series, 3),
            array("erfcSeries", "x √π exp(x²) erfc(x) = 1 + Σ c_n x^(-2n), n = 1 to 20, for x of 8 and more.", tail, 3),
            array("twoPerRootPi", "2/√π as a pair.", list(pair(2 / sqrt(pi))), 2),
            array("onePerRootPi", "1/√π as a pair.", list(pair(1 / sqrt(pi))), 2),
            array("rootHalf", "√½ as a pair.", list(pair(sqrt(mpf(1) / 2))), 2),
            array("rootHalfPi", "√(π/2) as a pair.", list(pair(sqrt(pi / 2))), 2),
        ],
    )


exp_table()
log_table()
circle_table()
inverse_circle_table()
erfc_table()
