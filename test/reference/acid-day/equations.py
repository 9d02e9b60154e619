"""The semi-discrete equations of the acid day, written apart from the program: for SciPy, with the pH as a state of its own.

State: for each layer from the tooth, then the film: sugar, lactate, acetate, phosphate, carbonate, urea, ammonia, store, pH; then the
saliva in the mouth: sugar, and what it holds of acetate, phosphate, carbonate, urea and protons more than fresh saliva does.
dpH/dt = (dT/dt - sum of dT/dc dc/dt) / (dT/dpH), T being the exchangeable protons.
"""
import numpy as np

LN10 = np.log(10.0)
NAMES = ["Sugar", "Lactate", "Acetate", "Phosphate", "Carbonate", "Urea", "Ammonia"]
WIDTH = 9
MOUTH = 6
REST_BEFORE_S = 6 * 3600


class Plaque:
    def __init__(self, constants, mouth, exposures, minutes, cells=6):
        self.c, self.n = constants, cells
        self.saliva, self.plaque = mouth["saliva"], mouth["plaque"]
        c, n = constants, cells
        self.w = self.plaque["thicknessMm"] * 1e-3 / n
        self.h = c["filmThicknessMm"] * 1e-3
        inner = np.array([c["plaqueDiffusion" + k] for k in NAMES + ["Proton"]]) * 1e-10
        film = np.array([c["filmDiffusion" + k] for k in NAMES + ["Proton"]]) * 1e-10
        # Conductance of every interface, one row each: between layers, then the surface.
        self.g = np.tile(inner / self.w, (n, 1))
        self.g[-1] = 1 / (self.w / 2 / inner + self.h / 2 / film)
        self.size = np.full(n + 1, self.w)
        self.size[-1] = self.h
        self.buffer = np.array([c[f"fixedBuffer{i}MmolPerL"] for i in (1, 2, 3, 4)])
        self.buffer_k = 10.0 ** -np.array([c[f"fixedBuffer{i}Pk"] for i in (1, 2, 3, 4)])
        self.k = {k: 10.0 ** -c[k + "Pk"] for k in ("lactic", "acetic", "phosphate", "carbonic", "bicarbonate", "ammonium")}
        self.kw = 1000 * 10.0 ** -c["waterPk"]
        depth = c["basalDepthMm"] * 1e-3 / self.w
        self.basal = np.clip(depth - (n - 1 - np.arange(n)), 0, 1) * c["basalAcidMmolPerLPerS"]
        r, v = self.saliva["residualVolumeMl"], self.saliva["swallowVolumeMl"]
        self.clear = np.log(v / r) / (v - r) / 60
        self.exposures, self.minutes = exposures, minutes
        self.phases = self.list_phases()

    # --- chemistry -------------------------------------------------------------------------------------------------------------
    def forms(self, h, y):
        """Proton-bearing forms by carrier, and their slopes by ln h; columns lactate, acetate, phosphate, carbonate, ammonia, free."""
        k, out, slope = self.k, np.empty((len(h), 6)), np.empty((len(h), 6))
        for column, (name, place) in enumerate((("lactic", 1), ("acetic", 2), ("phosphate", 3))):
            share = h / (h + k[name])
            out[:, column] = y[:, place] * share
            slope[:, column] = out[:, column] * (1 - share)
        first, second = k["carbonic"], k["bicarbonate"]
        total = h * h + h * first + first * second
        dioxide, carbonate = h * h / total, first * second / total
        out[:, 3] = y[:, 4] * (dioxide - carbonate)
        slope[:, 3] = y[:, 4] * (dioxide * (1 - dioxide + carbonate) + carbonate * (1 + dioxide - carbonate))
        share = k["ammonium"] / (h + k["ammonium"])
        out[:, 4] = -y[:, 6] * share
        slope[:, 4] = y[:, 6] * share * (1 - share)
        free, hydroxide = 1320 * h, self.kw / h
        out[:, 5], slope[:, 5] = free - hydroxide, free + hydroxide
        return out, slope

    def fresh(self, flow):
        c, k = self.c, self.k
        hco3 = min(c["salivaBicarbonateMost"], c["salivaBicarbonateAtRest"] + c["salivaBicarbonatePerFlow"] * flow)
        co2 = c["salivaCarbonDioxideMmolPerL"]
        h = k["carbonic"] * co2 / hco3
        co3 = hco3 * k["bicarbonate"] / h
        share = min(1, max(0, (flow - c["salivaLowFlowMlPerMin"]) / (c["salivaHighFlowMlPerMin"] - c["salivaLowFlowMlPerMin"])))
        between = lambda name: c[f"saliva{name}LowFlow"] + share * (c[f"saliva{name}HighFlow"] - c[f"saliva{name}LowFlow"])
        p, u, a = between("Phosphate"), between("Urea"), c["salivaAcetateMmolPerL"]
        t = a * h / (h + k["acetic"]) + p * h / (h + k["phosphate"]) + co2 - co3 + 1320 * h - self.kw / h
        return np.array([a, p, co2 + hco3 + co3, u, t])

    # --- what the mouth meets --------------------------------------------------------------------------------------------------
    def food(self, e):
        """Sugar, then acetate, phosphate, carbonate, urea, protons; NaN: as saliva."""
        out = np.full(6, np.nan)
        out[0] = e["hexoseMmolPerL"]
        if "ureaMmolPerL" in e:
            out[4] = e["ureaMmolPerL"]
        ph, acid, alkali = e.get("pH"), e.get("titratableMmolPerL"), e.get("bicarbonateMmolPerL")
        if ph is None and acid is None and alkali is None and e["kind"] != "brushing":
            return out
        out[1:4] = 0
        free = lambda x: 1320 * 10.0**-x - self.kw * 10.0**x
        if acid is not None:
            out[5] = acid
            if ph is None:
                out[1] = acid
            else:
                name, place = ("acetic", 1) if ph < self.c["aceticPk"] else ("phosphate", 2)
                out[place] = (acid - free(ph)) * (10.0**-ph + self.k[name]) / 10.0**-ph
        elif alkali is not None:
            ph = 8.4 if ph is None else ph
            co2, co3 = alkali * 10.0**-ph / self.k["carbonic"], alkali * self.k["bicarbonate"] / 10.0**-ph
            out[3], out[5] = alkali + co2 + co3, co2 - co3 + free(ph)
        else:
            out[5] = 0 if ph is None else free(ph)
        return out

    def list_phases(self):
        rest = dict(untasted=self.saliva["restingFlowMlPerMin"], base=0, least=0, food=None)
        phases, held, free_from = [], [], 0.0
        for e in self.exposures:
            start, end = e["startMinute"] * 60.0, (e["startMinute"] + e["minutes"]) * 60.0
            if start > free_from:
                phases.append(dict(rest, start=free_from, end=start, held=list(held)))
            if e["kind"] == "brushing":
                held = []
            phases.append(dict(self.exposure_phase(e), start=start, end=end, held=list(held)))
            if "retained" in e:
                rate = np.log(2) / (60 * e["retained"]["halfTimeMinutes"])
                held.append((end, rate, e["retained"]["share"] * e["hexoseMmolPerL"] * rate))
            free_from = end
        if self.minutes * 60 > free_from:
            phases.append(dict(rest, start=free_from, end=self.minutes * 60.0, held=list(held)))
        first = self.exposures[0] if self.exposures else None
        asleep = first is not None and first["kind"] == "sleep" and first["startMinute"] == 0
        before = self.exposure_phase(first) if asleep else rest
        return [dict(before, start=-float(REST_BEFORE_S), end=0.0, held=[])] + phases

    def exposure_phase(self, e):
        least = {"eating": "eatingExchangePerS", "drinking": "eatingExchangePerS", "rinse": "rinseExchangePerS", "brushing": "rinseExchangePerS"}.get(e["kind"])
        return dict(
            untasted=self.saliva["sleepFlowMlPerMin" if e["kind"] == "sleep" else "restingFlowMlPerMin"],
            base=e.get("flowMlPerMin", 0),
            least=self.c[least] if least else 0,
            food=self.food(e) if least else None,
        )

    def flow(self, phase, sugar):
        highest = max(self.saliva["highestFlowMlPerMin"], phase["untasted"])
        return max(phase["base"], min(highest, phase["untasted"] + self.c["flowPerHexose"] * sugar))

    def exchange(self, phase, flow):
        c = self.c
        factor = min(c["filmVelocityMostFactor"], max(c["filmVelocityLeastFactor"], flow / c["filmVelocityFlowMlPerMin"]))
        return max(phase["least"], self.plaque["filmVelocityMmPerMin"] * factor / (60 * c["filmLengthMm"]))

    # --- the equations ---------------------------------------------------------------------------------------------------------
    def start(self):
        y = np.zeros((self.n + 1, WIDTH))
        a, p, carbon, u, _ = self.fresh(self.phases[0]["untasted"])
        y[:, 2], y[:, 3], y[:, 4], y[:, 5], y[:, 8] = a, p, carbon, u, 7
        return np.concatenate([y.ravel(), np.zeros(MOUTH)])

    def rhs(self, phase):
        c, n, g, w = self.c, self.n, self.g, self.w
        vmax, alpha = self.plaque["uptakeMmolPerLPerS"], self.plaque["aciduricShare"]
        km, gmax = c["uptakeHalfMmolPerL"], c["storeMostMmolPerL"]
        g_solutes, g_protons = g[:, :7], g[:, [1, 2, 3, 4, 6, 7]]
        size = self.size[:, None]
        flux, fluxt = np.zeros((n + 2, 7)), np.zeros(n + 2)

        def derivative(t, state):
            y = state[: (n + 1) * WIDTH].reshape(n + 1, WIDTH)
            mouth = state[(n + 1) * WIDTH :]
            ph = y[:, 8]
            h = 10.0**-ph
            forms, slopes = self.forms(h, y)
            flux[1:-1] = g_solutes * (y[:-1, :7] - y[1:, :7])
            fluxt[1:-1] = ((forms[:-1] - forms[1:]) * g_protons).sum(axis=1)
            change = (flux[:-1] - flux[1:]) / size
            dt = (fluxt[:-1] - fluxt[1:]) / self.size
            # Saliva in the mouth, and what it does to the film.
            flow = self.flow(phase, mouth[0])
            fresh = self.fresh(flow)
            dmouth = np.empty(MOUTH)
            if phase["food"] is None:
                release = sum(a * np.exp(-r * (t - start)) for start, r, a in phase["held"])
                dmouth[:] = -self.clear * flow * mouth
                dmouth[0] += release
            else:
                food = phase["food"]
                dmouth[0] = (food[0] - mouth[0]) / c["mixingTimeS"]
                more = food[1:] - fresh
                dmouth[1:] = (np.where(np.isnan(more), 0, more) - mouth[1:]) / c["mixingTimeS"]
            exchange = self.exchange(phase, flow)
            beside = np.array([mouth[0], 0, fresh[0] + mouth[1], fresh[1] + mouth[2], fresh[2] + mouth[3], fresh[3] + mouth[4], 0])
            film_t = forms[-1].sum()
            change[-1] += exchange * (beside - y[-1, :7])
            dt[-1] += exchange * (fresh[4] + mouth[5] - film_t)
            # Reactions in plaque.
            s, u, store, p = y[:-1, 0], y[:-1, 5], y[:-1, 7], ph[:-1]
            steep = c["phSlope"]
            f = (1 - alpha) / (1 + 10 ** (steep * (c["sensitiveHalfPh"] - p))) + alpha / (1 + 10 ** (steep * (c["aciduricHalfPh"] - p)))
            q = vmax * f * s / (km + s)
            stored = c["storedShare"] * (1 - store / gmax) * q
            used = c["storeUsePerS"] * store * f * km / (km + s)
            e = q - stored + used
            mix = s / (s + 2 * km)
            lactate = e * (2 * c["lactateYield"] * mix + c["scarceLactateYield"] * (1 - mix))
            acetate = e * (2 * c["acetateYield"] * mix + c["scarceAcetateYield"] * (1 - mix)) + self.basal * f
            split = c["ureaseMmolPerLPerS"] * u / (c["ureaseHalfMmolPerL"] + u)
            carbon = c["carbonateYield"] * e
            change[:-1, 0] -= q
            change[:-1, 1] += lactate
            change[:-1, 2] += acetate
            change[:-1, 4] += split + carbon
            change[:-1, 5] -= split
            change[:-1, 6] += 2 * split
            dt[:-1] += lactate + acetate + carbon - split
            # dT/dc is form / total for each carrier; dT/dpH is -ln 10 times the slope by ln h.
            k = self.k
            total = h * h + h * k["carbonic"] + k["carbonic"] * k["bicarbonate"]
            by = (
                change[:, 1] * h / (h + k["lactic"])
                + change[:, 2] * h / (h + k["acetic"])
                + change[:, 3] * h / (h + k["phosphate"])
                + change[:, 4] * (h * h - k["carbonic"] * k["bicarbonate"]) / total
                - change[:, 6] * k["ammonium"] / (h + k["ammonium"])
            )
            slope = slopes.sum(axis=1)
            share = h[:-1, None] / (h[:-1, None] + self.buffer_k)
            slope[:-1] += (self.buffer * share * (1 - share)).sum(axis=1)
            out = np.zeros((n + 1, WIDTH))
            out[:, :7] = change
            out[:-1, 7] = stored - used
            out[:, 8] = (dt - by) / (-LN10 * slope)
            return np.concatenate([out.ravel(), dmouth])

        return derivative

    def tooth(self, state):
        """pH at the tooth: a parabola without slope there, through the first two layers. Works on one state or on columns of states."""
        first, second = state[8], state[WIDTH + 8]
        return first + (first - second) / 8
