"""Integrates the days of days-input.json with SciPy at 1e-8 and prints days.json: the pH at the tooth, every minute, to 1e-5."""
import json
import sys
from pathlib import Path

import numpy as np
import scipy
from scipy.integrate import solve_ivp

from equations import Plaque

HERE = Path(__file__).parent


LINES = (5.7, 5.5, 5.0)
GRID_S = 2


def integrate(plaque, method="LSODA", rtol=1e-8, atol=1e-8, **options):
    """Seconds and the pH at the tooth, every two seconds and at every edge, from minute 0 on."""
    y, seconds, ph = plaque.start(), [], []
    for phase in plaque.phases:
        start, end = phase["start"], phase["end"]
        grid = np.arange(np.ceil(start / GRID_S) * GRID_S, end, GRID_S)
        grid = np.unique(np.concatenate([[start], grid, [end]]))
        run = solve_ivp(plaque.rhs(phase), (start, end), y, method=method, rtol=rtol, atol=atol, t_eval=grid, **options)
        assert run.success, run.message
        y = run.y[:, -1]
        if start >= 0:
            seconds.append(run.t)
            ph.append(plaque.tooth(run.y))
    return np.concatenate(seconds), np.concatenate(ph)


def minutes_below(seconds, ph, line):
    """With straight lines between the two-second points."""
    total = 0.0
    for t0, t1, a, b in zip(seconds[:-1], seconds[1:], ph[:-1] - line, ph[1:] - line):
        if a < 0 and b < 0:
            total += t1 - t0
        elif (a < 0) != (b < 0):
            share = a / (a - b)
            total += (t1 - t0) * (share if a < 0 else 1 - share)
    return total / 60


if __name__ == "__main__":
    given = json.loads((HERE / "days-input.json").read_text())
    curves, below = {}, {}
    for name, mouth in given["mouths"].items():
        band = 9 * 2 + 6
        seconds, ph = integrate(Plaque(given["constants"], mouth, given["exposures"], 1440), lband=band, uband=band)
        curves[name] = [round(float(value), 5) for value in np.interp(60.0 * np.arange(1441), seconds, ph)]
        below[name] = {f"{line:.1f}": round(minutes_below(seconds, ph, line), 3) for line in LINES}
        print(name, below[name], file=sys.stderr)
    print(json.dumps({"program": f"SciPy {scipy.__version__}, LSODA, rtol and atol 1e-8", "minutesBelow": below, "ph": curves}))
