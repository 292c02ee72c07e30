#!/usr/bin/env python3
"""Breakthrough of beds from their differential equations and integrals, with scipy; no closed form of ours is used."""
import numpy as np
from answering import answer
from scipy.integrate import quad, solve_ivp
from scipy.special import expit

NODES = 48


def integration_matrix(count):
    """Integrals from 0 to each Chebyshev node of (0, 1), of a function given at the nodes."""
    nodes = (1 - np.cos(np.pi * np.arange(count) / (count - 1))) / 2
    powers = np.polynomial.chebyshev.chebvander(2 * nodes - 1, count - 1)
    integrals = np.empty((count, count))
    for order in range(count):
        series = np.polynomial.chebyshev.Chebyshev.basis(order, domain=[0, 1]).integ(lbnd=0)
        integrals[:, order] = series(nodes)
    return integrals @ np.linalg.inv(powers)


INTEGRATE = integration_matrix(NODES)


def bohart_adams(ratePerS, halfTimeS, timeS):
    """dC/dx = -C N, dN/dt = -C N, with C = 1 where the water comes in and N = 1 at first."""
    length = ratePerS * halfTimeS
    through = lambda free: np.exp(-length * (INTEGRATE @ free))
    run = solve_ivp(lambda t, free: -through(free) * free, (0, ratePerS * timeS), np.ones(NODES), rtol=1e-11, atol=1e-13, method="DOP853")
    return through(run.y[:, -1])[-1]


def slope(resistance, r):
    """dX / d(N T) of a front that keeps its shape, with a Langmuir sorbent."""
    if resistance == 0:
        return lambda x: x - r * x / (1 - (1 - r) * x)
    if resistance == 1:
        return lambda x: x / (r + (1 - r) * x) - x
    return lambda x: (1 - r) * x * (1 - x)


def pattern_throughput(resistance, separation, transferUnits, share):
    """The shape by integrating its slope; its place from the balance of mass: the mean of T over all shares is 1."""
    rate = slope(resistance, separation)
    tight = {"epsabs": 1e-12, "epsrel": 1e-12, "limit": 200}
    late = quad(lambda x: (1 - x) / rate(x), 0.5, 1, **tight)[0]
    early = quad(lambda x: x / rate(x), 0, 0.5, **tight)[0]
    way = quad(lambda x: 1 / rate(x), 0.5, share, **tight)[0]
    return 1 + (way - (late - early)) / transferUnits


def share_through(capacityKg, steepness, fedKg):
    return expit(steepness * (fedKg / capacityKg - 1) - np.log1p(-np.exp(-steepness)))


def behind_both(capacities, steepnesses, fed):
    """Behind the lead, behind the lag, and what passed the lead, with the lag fed by the integral over the lead."""
    passed = quad(lambda f: share_through(capacities[0], steepnesses[0], f), 0, fed, epsabs=1e-14, epsrel=1e-12, limit=400, points=[min(fed, capacities[0])])[0]
    lead = share_through(capacities[0], steepnesses[0], fed)
    return [lead, lead * share_through(capacities[1], steepnesses[1], passed), passed]


def unused_bed(times, shares, limit):
    held = np.trapz(1 - np.array(shares), times)
    at = int(np.argmax(np.array(shares) >= limit))
    break_s = float(np.interp(limit, shares[at - 1 : at + 1], times[at - 1 : at + 1]))
    used = np.trapz(1 - np.array(shares[:at] + [limit]), times[:at] + [break_s])
    return [held, break_s, used]


answer(
    {
        "bohartAdams": lambda **point: float(bohart_adams(**point)),
        "logistic": lambda ratePerS, halfTimeS, timeS: float(expit(ratePerS * (timeS - halfTimeS))),
        "patternThroughput": lambda **point: float(pattern_throughput(**point)),
        "behindBoth": lambda **point: [float(value) for value in behind_both(**point)],
        "unusedBed": lambda **point: [float(value) for value in unused_bed(**point)],
    }
)
