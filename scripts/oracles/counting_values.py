#!/usr/bin/env python3
"""Tails of drawing without putting back, and the likeliest normal of censored values, with scipy."""
import numpy as np
from answering import answer
from scipy.optimize import root
from scipy.stats import fisher_exact, hypergeom, norm


def at_least_drawn(total, marked, drawn, atLeast):
    return hypergeom.sf(atLeast - 1, total, marked, drawn)


def fisher(total, marked, drawn, atLeast):
    """The table of two by two itself, one-sided."""
    table = [[atLeast, marked - atLeast], [drawn - atLeast, total - marked - drawn + atLeast]]
    return fisher_exact(table, alternative="greater")[1]


def censored_normal(seen, below, above):
    """Where both slopes of the likelihood are nothing, by mean and logarithm of the standard deviation."""
    seen, below, above = np.array(seen), np.array(below), np.array(above)

    def slopes(at):
        mean, sd = at[0], np.exp(at[1])
        z, low, high = (seen - mean) / sd, (below - mean) / sd, (above - mean) / sd
        low_rate = np.exp(norm.logpdf(low) - norm.logcdf(low))
        high_rate = np.exp(norm.logpdf(high) - norm.logsf(high))
        by_mean = z.sum() - low_rate.sum() + high_rate.sum()
        by_spread = (z * z - 1).sum() - (low * low_rate).sum() + (high * high_rate).sum()
        return [by_mean, by_spread]

    found = root(slopes, [seen.mean(), np.log(seen.std())], tol=1e-13, method="hybr")
    if max(abs(np.array(slopes(found.x)))) > 1e-8:
        raise ValueError("the slopes are not nothing")
    return [found.x[0], float(np.exp(found.x[1]))]


answer(
    {
        "atLeastDrawn": lambda **point: float(at_least_drawn(**point)),
        "fisher": lambda **point: float(fisher(**point)),
        "censoredNormal": lambda **point: [float(value) for value in censored_normal(**point)],
    }
)
