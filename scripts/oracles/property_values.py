#!/usr/bin/env python3
"""Properties of water by python3-iapws."""
from answering import answer
from iapws._iapws import _Liquid
from iapws.iapws97 import _PSat_T

answer(
    {
        "saturationPressurePa": lambda temperatureK: _PSat_T(temperatureK) * 1e6,
        "densityKgPerM3": lambda temperatureC: _Liquid(temperatureC + 273.15, 0.101325)["rho"],
    }
)
