"""Times of transfers by python3-fluids, for the bench to hold the product against.

In: lines of JSON with the figures of a line. Out: nanoseconds a transfer, median of the rounds; then the seconds of each.
"""
import json
import sys
import time
from math import pi, sqrt

from fluids.core import dP_from_K
from fluids.friction import Colebrook, friction_laminar
from fluids.numerics import secant

ROUNDS = 5


def seconds(driving, volume, length, bore, roughness, minor, kv, density, viscosity):
    """The flow by the secant on the root of the pressure, nearly a straight line, from a usual friction factor."""
    area = pi * bore * bore / 4
    over = length / bore
    relative = roughness / bore
    wanted = sqrt(driving)

    def miss(velocity):
        reynolds = density * velocity * bore / viscosity
        friction = friction_laminar(reynolds) if reynolds < 2000 else Colebrook(reynolds, relative)
        pipe = dP_from_K(friction * over + minor, density, velocity)
        valve = (velocity * area * 3600 / kv) ** 2 * density * 100
        return sqrt(pipe + valve) - wanted

    start = wanted / sqrt(0.5 * density * (0.03 * over + minor) + (area * 3600 / kv) ** 2 * density * 100)
    return volume / (area * secant(miss, start, xtol=1e-13, low=start * 1e-3))


lines = [json.loads(line) for line in sys.stdin]
times = []
for _ in range(ROUNDS):
    started = time.perf_counter()
    found = [seconds(**line) for line in lines]
    times.append((time.perf_counter() - started) * 1e9 / len(lines))
print(sorted(times)[ROUNDS // 2])
print("\n".join(map(repr, found)))
