#!/usr/bin/env python3
"""Gaugings with their doubts by python3-uncertainties: formulas written from the pages of docs/methods, not from the code."""
import math

import numpy
from answering import answer
from uncertainties import correlated_values, ufloat, umath


def independent(values, doubts):
    return [ufloat(value, u) for value, u in zip(values, doubts)]


def together(values, doubts, pairs):
    """Inputs with correlations told by places."""
    covariance = numpy.diag(numpy.square(doubts))
    for (a, b), r in pairs.items():
        covariance[a, b] = covariance[b, a] = r * doubts[a] * doubts[b]
    return correlated_values(values, covariance)


def figures(*results):
    return [figure for result in results for figure in (result.nominal_value, result.std_dev)]


def injection(values, doubts):
    (tank, bottle, b1, b2, tb1, tb2, p1, p2, t1, t2, vapour, lost, gain, offset, compliance) = independent(values, doubts)
    p1, p2, b1, b2 = p1 * (1 + gain), p2 * (1 + gain), b1 + offset, b2 + offset
    stayed = bottle * (b1 / tb1 - b2 / tb2) * (1 - lost)
    dense = (p2 - vapour) / t2
    gas = (stayed - compliance * (p2 - p1) * dense) / (dense - (p1 - vapour) / t1)
    return figures(tank - gas, gas)


def blow_down(values, doubts):
    tank, drawn, p1, p2, t1, t2, vapour = independent(values, doubts)
    before, after = (p1 - vapour) / t1, (p2 - vapour) / t2
    gas = drawn * after / (before - after)
    return figures(tank - gas - drawn, gas)


def weighing(values, doubts, r):
    inputs = together(values, doubts, {(1, 2): r[0]})
    period, stiffness, carriage, tare, frame, slosh = inputs

    def content(period, stiffness, carriage, tare, frame, slosh):
        felt = stiffness * period**2 / (4 * math.pi**2)
        return (felt * frame / (frame - felt) - carriage - tare) * (1 + slosh)

    # Sensitivities one by one, from inputs that do not go together.
    apart = independent(values, doubts)
    alone = content(*apart)
    return [*figures(content(*inputs)), *(alone.derivatives[each] for each in apart)]


def formula(values, doubts, r):
    a, b, c = together(values, doubts, {(0, 1): r[0], (0, 2): r[1], (1, 2): r[2]})
    return figures(a * umath.exp(-b) + umath.sqrt(c) / umath.log(a + 2))


def strokes(values, doubts):
    count = ufloat(values[0], doubts[0])
    bias = ufloat(values[1], doubts[1])
    scatter = ufloat(0, doubts[2] * math.sqrt(values[0]))
    return figures(values[2] * (count * (1 + bias) + scatter))


def combined(values, doubts, shell):
    z, ones = numpy.array(values), numpy.ones(len(values))
    weight = numpy.linalg.inv(numpy.diag(numpy.square(doubts)) + numpy.outer(shell, shell))
    variance = 1 / (ones @ weight @ ones)
    best = variance * (ones @ weight @ z)
    return [float(best), float(math.sqrt(variance)), float((z - best) @ weight @ (z - best))]


answer(
    {
        "injection": injection,
        "blowDown": blow_down,
        "weighing": weighing,
        "formula": formula,
        "strokes": strokes,
        "combined": combined,
    }
)
