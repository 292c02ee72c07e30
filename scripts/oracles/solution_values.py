#!/usr/bin/env python3
"""Doubts of what is reckoned from samples, by python3-uncertainties; electrolysis with the constants of scipy and iapws."""
from answering import answer
from iapws._iapws import M
from scipy.constants import physical_constants
from scipy.optimize import brentq
from uncertainties import ufloat, umath

FARADAY = physical_constants["Faraday constant"][0]


def wall_loss(first, second, timeS, areaPerVolumePerM):
    loss = umath.log(ufloat(*first) / ufloat(*second)) / (areaPerVolumePerM * timeS)
    return [loss.nominal_value, loss.std_dev]


def against(reading, ions):
    difference = ufloat(*reading) - ufloat(*ions)
    return [difference.nominal_value, difference.std_dev, difference.nominal_value / difference.std_dev]


def stock_volume(volume, holds, wanted, stock):
    """The dose at which the mixture holds what was wanted, looked for and not solved."""
    short = lambda dose: (volume * holds + dose * stock) / (volume + dose) - wanted
    return brentq(short, 0, volume * stock / (stock - wanted), xtol=1e-18, rtol=1e-14)


answer(
    {
        "wallLoss": wall_loss,
        "against": against,
        "stockVolume": stock_volume,
        "waterSplitKgPerS": lambda cells, currentA, currentEfficiency: cells * currentA * currentEfficiency * M / 1000 / (2 * FARADAY),
    }
)
