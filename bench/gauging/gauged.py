"""Gaugings by gas injection in python3-uncertainties: each with its doubt and what every input makes of it. Middle of five runs, in processor time."""
import json
import sys
import time

from uncertainties import ufloat

tanks = [json.loads(line) for line in sys.stdin]


def gauged(told):
    x = {name: ufloat(each["value"], each["u"]) for name, each in told.items()}
    p1 = x["tankBeforePa"] * (1 + x["tankGaugeGain"])
    p2 = x["tankAfterPa"] * (1 + x["tankGaugeGain"])
    b1 = x["bottleBeforePa"] * (1 + x["bottleGaugeGain"])
    b2 = x["bottleAfterPa"] * (1 + x["bottleGaugeGain"])
    gave = b1 / (x["bottleBeforeK"] + x["bottleThermometerK"]) - b2 / (x["bottleAfterK"] + x["bottleThermometerK"])
    rise = p2 / (x["tankAfterK"] + x["tankThermometerK"]) - p1 / (x["tankBeforeK"] + x["tankThermometerK"])
    water = x["tankM3"] + x["seatingM3"] - x["bottleM3"] * gave / rise
    parts = water.error_components()
    return water.nominal_value, water.std_dev, {name: parts.get(each, 0) for name, each in x.items()}


times = []
for _ in range(5):
    started = time.process_time()
    found = [gauged(told) for told in tanks]
    times.append((time.process_time() - started) * 1000)
print(json.dumps({"ms": sorted(times)[2], "figures": [figure for value, u, _ in found for figure in (value, u)]}))
