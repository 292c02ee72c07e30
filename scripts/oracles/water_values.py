#!/usr/bin/env python3
"""Properties of liquid water, steam and humid air by python3-iapws."""
from answering import answer
from iapws._iapws import _Liquid, _Sublimation_Pressure, _Viscosity
from iapws.humidAir import HumidAir
from iapws.iapws95 import IAPWS95
from iapws.iapws97 import _Region1, _TSat_P


def region1(temperatureK, pressurePa):
    found = _Region1(temperatureK, pressurePa / 1e6)
    thousands = [found["h"] * 1e3, found["s"] * 1e3, found["cp"] * 1e3]
    return [found["v"], *thousands, found["w"]]


def latent(temperatureK):
    """From the equation of state of 1995, solved for its own boiling line."""
    water, steam = IAPWS95(T=temperatureK, x=0), IAPWS95(T=temperatureK, x=1)
    return (steam.h - water.h) * 1e3


def saturated_moles(temperatureK, pressurePa):
    """Moles of vapour to a mole of dry air, from the real-gas equation of humid air.

    Below 25 °C the package does not find the state: it gives more than all for the share of dry air.
    """
    share = float(HumidAir(T=temperatureK, P=pressurePa / 1e6, W=0.004).xa_sat)
    if not 0 < share < 1:
        raise ValueError(f"the package gave a share of dry air of {share}")
    return (1 - share) / share


answer(
    {
        "region1": region1,
        "boilingTemperatureK": lambda pressurePa: _TSat_P(pressurePa / 1e6),
        "viscosityPaS": lambda temperatureK, densityKgPerM3: _Viscosity(densityKgPerM3, temperatureK),
        "ambientViscosityPaS": lambda temperatureK: _Liquid(temperatureK, 0.1)["mu"],
        "latentHeatJPerKg": latent,
        "iceVapourPressurePa": lambda temperatureK: _Sublimation_Pressure(temperatureK) * 1e6,
        "saturatedMoles": saturated_moles,
    }
)
