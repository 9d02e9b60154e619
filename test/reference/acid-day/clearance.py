"""Sugar left in the mouth, swallow by swallow, integrated by SciPy between swallows. Prints clearance.json."""
import json

from scipy.integrate import solve_ivp

SLOPE = 4.35  # mL/min for each g/mL of sucrose
START = 0.1  # g/mL
SETS = {
    "adult": (0.8, 1.1, 0.32),
    "male": (0.87, 1.19, 0.32),
    "female": (0.66, 0.96, 0.32),
    "child": (0.38, 0.5, 0.22),
    "half the flow": (0.8, 1.1, 0.16),
    "hyposalivation": (0.8, 1.1, 0.1),
    "high flow": (0.8, 1.1, 0.55),
}


def clear(residual, swallow, flow):
    minute, concentration = 0.0, START
    left, reached = {}, {}
    while minute < 40:
        mass = concentration * residual
        full = lambda t, v: v[0] - swallow
        full.terminal = True
        run = solve_ivp(lambda t, v: [flow + SLOPE * mass / v[0]], [minute, minute + 60], [residual],
                        events=full, rtol=1e-12, atol=1e-14, dense_output=True)
        end = float(run.t_events[0][0])
        for at in (5, 10):
            if minute <= at < end:
                left[at] = mass / run.sol(at)[0] / START
        for share in (0.1, 0.01):
            volume = mass / (share * START)
            if residual < volume <= swallow and share not in reached:
                low, high = minute, end
                for _ in range(60):
                    middle = (low + high) / 2
                    low, high = (middle, high) if run.sol(middle)[0] < volume else (low, middle)
                reached[share] = high
        minute, concentration = end, mass / swallow
    return {"at5Min": left[5], "at10Min": left[10], "minutesToTenth": reached[0.1], "minutesToHundredth": reached[0.01]}


print(json.dumps([
    {"set": name, "residualVolumeMl": r, "swallowVolumeMl": v, "restingFlowMlPerMin": f,
     **{key: float(f"{value:.7g}") for key, value in clear(r, v, f).items()}}
    for name, (r, v, f) in SETS.items()
], indent=1))
