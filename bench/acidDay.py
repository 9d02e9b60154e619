"""SciPy as a peer of the acid day: reads tasks "method rtol atol" and answers each with ms of processor time and the pH of every minute."""
import json
import sys
import time
from pathlib import Path

import numpy as np
from scipy.integrate import solve_ivp
from scipy.sparse import diags

sys.path.insert(0, str(Path(__file__).parent.parent / "test" / "reference" / "acid-day"))
from equations import Plaque  # noqa: E402

# Neighbouring layers, each quantity on each other: 9 apart and up to 8 more.
BAND = 17


def options_of(method, size):
    if method == "LSODA":
        return {"lband": BAND, "uband": BAND}
    return {"jac_sparsity": diags([np.ones(size)] * (2 * BAND + 1), range(-BAND, BAND + 1), shape=(size, size))}


def run(plaque, method, rtol, atol):
    y = plaque.start()
    options, ph = options_of(method, len(y)), []
    for phase in plaque.phases:
        first = np.floor(max(0, phase["start"]) / 60 + 1e-9) + (1 if phase["start"] >= 0 else 0)
        grid = 60 * np.arange(first, np.floor(phase["end"] / 60 + 1e-9) + 1)
        times = np.unique(np.concatenate([grid, [phase["end"]]]))
        done = solve_ivp(plaque.rhs(phase), (phase["start"], phase["end"]), y, method=method, rtol=rtol, atol=atol, t_eval=times, **options)
        if not done.success:
            return np.full(1, np.nan)
        y = done.y[:, -1]
        ph.append(plaque.tooth(done.y[:, : len(grid)]))
    return np.concatenate(ph)


given = json.loads(Path(sys.argv[1]).read_text())
plaque = Plaque(given["constants"], given, given["exposures"], 1440)
for line in sys.stdin:
    method, rtol, atol = line.split()
    began = time.process_time()
    ph = run(plaque, method, float(rtol), float(atol))
    ms = 1000 * (time.process_time() - began)
    print(f"{ms:.3f}", *(f"{value:.6f}" for value in ph), flush=True)
