#!/usr/bin/env python3
"""Heating, mixing, boiling and ice, by python3-iapws and by integrating the equation of heat with scipy."""
from answering import answer
from iapws import IAPWS97
from iapws._iapws import _Ice
from iapws.iapws97 import _Region1, _TSat_P
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

K = 273.15


def enthalpy(celsius, pressurePa):
    return _Region1(celsius + K, pressurePa / 1e6)["h"] * 1000


def mixed(masses, celsius, pressurePa):
    heat = sum(m * enthalpy(t, pressurePa) for m, t in zip(masses, celsius)) / sum(masses)
    return IAPWS97(P=pressurePa / 1e6, h=heat / 1000).T - K


def cooled(capacityJPerK, gainedW, lossWPerK, fromC, aroundC, timeS):
    rate = lambda t, y: [(gainedW - lossWPerK * (y[0] - aroundC)) / capacityJPerK]
    return solve_ivp(rate, (0, timeS), [fromC], rtol=1e-11, atol=1e-11, method="DOP853").y[0][-1]


def time_to_warm(massKg, fromC, toC, pressurePa, powerW, lossWPerK, aroundC):
    """With the heat capacity at every temperature, where ours takes its mean."""
    def rate(t, y):
        heat_capacity = massKg * _Region1(y[0] + K, pressurePa / 1e6)["cp"] * 1000
        return [(powerW - lossWPerK * (y[0] - aroundC)) / heat_capacity]

    arrived = lambda t, y: y[0] - toC
    arrived.terminal = True
    run = solve_ivp(rate, (0, 1e7), [fromC], rtol=1e-9, atol=1e-9, events=arrived)
    return run.t_events[0][0]


def melting_heat():
    return (_Region1(K, 0.101325)["h"] - _Ice(K, 0.101325)["h"]) * 1000


answer(
    {
        "heatToWarmJ": lambda massKg, fromC, toC, pressurePa: massKg * (enthalpy(toC, pressurePa) - enthalpy(fromC, pressurePa)),
        "mixedTemperatureC": mixed,
        "boilsAtC": lambda pressurePa: _TSat_P(pressurePa / 1e6) - K,
        "thermalGrowth": lambda fromC, toC, pressurePa: _Region1(toC + K, pressurePa / 1e6)["v"] / _Region1(fromC + K, pressurePa / 1e6)["v"] - 1,
        "temperatureAfterC": cooled,
        "timeToWarmS": time_to_warm,
        "iceDensityKgPerM3": lambda temperatureC: _Ice(temperatureC + K, 0.101325)["rho"],
        "heatToThawJPerKg": lambda temperatureC: (_Ice(K, 0.101325)["h"] - _Ice(temperatureC + K, 0.101325)["h"]) * 1000 + melting_heat(),
    }
)
