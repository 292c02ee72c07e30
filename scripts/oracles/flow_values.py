#!/usr/bin/env python3
"""Friction, coils, valves, flow in a line and compressors by python3-fluids."""
from math import pi, sqrt

from answering import answer
from fluids.compressible import isentropic_T_rise_compression, isentropic_work_compression, isothermal_work_compression
from fluids.constants import R
from fluids.control_valve import control_valve_choke_P_l, convert_flow_coefficient, rho0, size_control_valve_l
from fluids.core import dP_from_K
from fluids.friction import (
    Colebrook,
    Haaland,
    Serghides_1,
    friction_laminar,
    helical_laminar_fd_Schmidt,
    helical_transition_Re_Schmidt,
    helical_turbulent_fd_Schmidt,
)
from fluids.numerics import brenth

LAMINAR_TO = 2000.0
TURBULENT_FROM = 4000.0


def friction(reynolds, roughness):
    """By the laws on both sides; between them none is held, and a straight line stands in so that a search can pass."""
    if reynolds <= LAMINAR_TO:
        return friction_laminar(reynolds)
    if reynolds >= TURBULENT_FROM:
        return Colebrook(reynolds, roughness)
    low, high = friction_laminar(LAMINAR_TO), Colebrook(TURBULENT_FROM, roughness)
    return low + (high - low) * (reynolds - LAMINAR_TO) / (TURBULENT_FROM - LAMINAR_TO)


def line_drop(flow, length, bore, roughness, minor, kv, density, viscosity):
    velocity = 4 * flow / (pi * bore * bore)
    reynolds = density * velocity * bore / viscosity
    loss = friction(reynolds, roughness / bore) * length / bore + minor
    valve = (flow * 3600 / kv) ** 2 * density / 1000 * 1e5
    return dP_from_K(loss, density, velocity) + valve


def line_flow(driving, length, bore, roughness, minor, kv, density, viscosity):
    """The valve alone, or friction-free bends alone, would let more through than the line can."""
    most = kv / 3600 * sqrt(driving / 1e5 * 1000 / density)
    line = (length, bore, roughness, minor, kv, density, viscosity)
    return brenth(lambda flow: line_drop(flow, *line) - driving, most * 1e-9, most, xtol=most * 1e-15, rtol=1e-15)


def coil(reynolds, ratio, roughness):
    """Laminar and turbulent friction in a coil, and where the one ends."""
    critical = helical_transition_Re_Schmidt(ratio, 1)
    if reynolds <= critical:
        return helical_laminar_fd_Schmidt(reynolds, ratio, 1)
    # The turbulent form of the package takes the friction of a straight pipe by another law.
    straight = 1e-3
    factor = helical_turbulent_fd_Schmidt(reynolds, ratio, 1, straight * ratio)
    plain = helical_turbulent_fd_Schmidt(reynolds, ratio, 1e30, straight * ratio)
    return factor / plain * Colebrook(reynolds, roughness)


def valve(flow, before, after, vapour, recovery, density):
    """Kv, Cv, and the drop at which the valve chokes."""
    # The package weighs water at 15 °C where the definition of Kv has 1000 kg/m3.
    reference = sqrt(rho0 / 1000)
    kv = size_control_valve_l(density, vapour, 22.064e6, 1e-3, before, after, flow, FL=recovery) * reference
    choking = before - control_valve_choke_P_l(vapour, 22.064e6, recovery, before)
    return [kv, convert_flow_coefficient(kv, "Kv", "Cv"), choking]


def compression(before, after, kelvin, exponent):
    """Work in relation to p V without heat, at constant temperature, and the temperature at the outlet."""
    work = isentropic_work_compression(T1=kelvin, k=exponent, P1=before, P2=after, eta=1)
    still = isothermal_work_compression(before, after, kelvin)
    return [work / (R * kelvin), still / (R * kelvin), isentropic_T_rise_compression(kelvin, before, after, exponent)]


answer(
    {
        "turbulentFriction": lambda reynolds, roughness: Colebrook(reynolds, roughness),
        "explicitFriction": lambda reynolds, roughness: [Haaland(reynolds, roughness), Serghides_1(reynolds, roughness)],
        "laminarFriction": lambda reynolds: friction_laminar(reynolds),
        "jointEnds": lambda roughness, near: [friction_laminar(LAMINAR_TO), Colebrook(TURBULENT_FROM, roughness)],
        "coilFriction": coil,
        "lineFlow": line_flow,
        "valve": valve,
        "compression": compression,
    }
)
