"""The six-coat, twelve-day film job with SciPy's solve_ivp: what one would write first.

The same equations, cells and answers as cvode_film.c beside it, with numpy arrays; prints the same
tab-separated row. Temperatures are carried as differences from the room's, so that SciPy's tolerance
can be the same as the others'.

usage: film_scipy.py LSODA|BDF whole|merged RTOL
"""

import sys
import time

import numpy as np
from scipy.integrate import solve_ivp
from scipy.sparse import diags

COAT_AT = [0, 900, 1800, 2700, 6300, 8700]
UNTIL = 8700 + 12 * 86400.0
KELVIN, GAS, P = 273.15, 8.314462618, 101325.0
AIR_K, RH, DRAUGHT = 20 + KELVIN, 0.5, 0.1
WET, CUT, STRENGTH, PER_COAT, WOOD = 75e-6, 179.74, 0.95, 8, 10
DG, DL, STEEP, EG, EL = 3.83e-15, 3e-10, 5.08, 41e3 / GAS, 15e3 / GAS
SPEED = np.array([1.0, 5.0])
VOLUME = np.array([0.04607 / 789, 0.01802 / 998])
LATENT = np.array([42.3e3, 44.2e3])
RHO = np.array([789.0, 998.0])
CHI = np.array([0.5, 2.5])
G, CHI23, GLASS, A, B = 1.4, 0.2, 323.15, 1.6798, 0.9227
R = VOLUME[0] / VOLUME[1]
LN_DG, RISE = np.log(DG), np.log(DL / DG) / (1 - np.exp(-STEEP))


def water_pa(c):
    t = c + KELVIN
    poly = t * (-4.8640239e-2 + t * (4.1764768e-5 - t * 1.4452093e-8))
    return np.exp(-5.8002206e3 / t + 1.3914993 + poly + 6.5459673 * np.log(t))


ROOM_PA = RH * water_pa(AIR_K - KELVIN)
_rho = P * 0.02897 / (GAS * AIR_K)
_k = 0.0241 * (AIR_K / KELVIN) ** 0.81
_nu = 1.716e-5 * (AIR_K / KELVIN) ** 0.7 / _rho
_alpha = _k / (_rho * 1006)
_forced = 0.664 * np.sqrt(DRAUGHT * 0.3 / _nu) * np.cbrt(_nu / _alpha) * _k / 0.3
H = np.cbrt(27 + _forced**3)
_d = 1e-7 * AIR_K**1.75 * np.sqrt(1 / 28.97 + 1 / np.array([46.07, 18.02]))
_d /= (np.cbrt(20.1) + np.cbrt(np.array([50.36, 12.7]))) ** 2
KC = H / (_rho * 1006) * (_d / _alpha) ** (2 / 3) / GAS

_sg, _mc, _t = 0.55, 9, 293.15
WOOD_K = _sg * (0.1941 + 0.004064 * _mc) + 0.01864
_cp = (0.1031 + 0.003867 * _t + 4.18 * _mc / 100) / (1 + _mc / 100)
_cp = 1000 * (_cp + _mc * (-0.06191 + 2.36e-4 * _t - 1.33e-4 * _mc))
DZ = 1.5 ** np.arange(WOOD)
DZ *= 0.018 / DZ.sum()
WOOD_C = _sg * 1000 * (1 + _mc / 100) * _cp * DZ
WOOD_FACE = WOOD_K / (0.5 * (DZ[:-1] + DZ[1:]))


def glass_k(u):
    m = np.maximum(u, 0) * RHO
    return (m.sum() + 1140) / (1140 / GLASS + m[0] / 97 + m[1] / 136)


def blush(u):
    e, w = np.maximum(u, 0)
    s, p = 1 / R, 1 / (1 + e + w)
    b, d = s / max(e * p, 1e-9), VOLUME[1] / (1.006 / 1140) / max(p, 1e-9)
    c = G + CHI[1] - s * CHI23
    above, below = b + d - 2 * s * CHI23, c * c + (b - 2 * G) * (2 * CHI[1] - d)
    return w * p / (above / below if above > 0 and below > 1e-6 else 1)


def flux(u, tf):
    e, w = np.maximum(u, 0)
    moles = e / VOLUME[0] + w / VOLUME[1]
    xw = w / VOLUME[1] / moles if moles > 0 else 0
    mean = (e + w) / moles if moles > 0 else VOLUME[1]
    p = 1 / (1 + e + w)
    weighted = A * (1 - xw) + B * xw
    van_laar = np.array([A * (B * xw / weighted) ** 2, B * (A * (1 - xw) / weighted) ** 2])
    cross = np.array([(G * R + CHI[0] - CHI[1] * R) * w, (G + CHI[1] - CHI[0] / R) * e]) * p
    ln = ((e + w) * p) ** 2 * van_laar + p / mean * VOLUME + CHI * p * p + cross * p
    c = tf - KELVIN
    pure = np.array([1000 * np.exp(16.8958 - 3795.17 / (c + 230.918)), water_pa(c)])
    pa = u / VOLUME * mean * p * np.exp(ln) * pure
    a, b = P - min(pa.sum(), 9e4), P - ROOM_PA
    stefan = P / a if abs(b - a) < 1e-6 else P * np.log(b / a) / (b - a)
    return KC * stefan / (0.5 * (AIR_K + tf)) * (pa - np.array([0, ROOM_PA]))


class Film:
    def __init__(self):
        self.dx = np.zeros(0)
        self.start = 0

    def lay(self, y, merged):
        old = y is not None
        n = len(self.dx)
        u = y[: 2 * n].reshape(n, 2) if old else np.zeros((0, 2))
        temps = y[2 * n :].copy() if old else np.zeros(1 + WOOD)
        if old and merged:
            into = self.start + 2
            thick = self.dx[into:]
            u = np.vstack([u[:into], thick @ u[into:] / thick.sum()])
            self.dx = np.append(self.dx[:into], thick.sum())
        solids = CUT / 1140 / (1 + CUT / 1140)
        sizes = 1.8 ** np.arange(PER_COAT - 1, -1, -1)
        self.start = len(self.dx)
        self.dx = np.append(self.dx, WET * solids * sizes / sizes.sum())
        liquid = (1 - solids) / solids
        u = np.vstack([u, np.tile([liquid * STRENGTH, liquid * (1 - STRENGTH)], (PER_COAT, 1))])
        temps[0] *= 0.5
        above = np.append(np.cumsum(self.dx[::-1])[-2::-1], 0)
        self.skin = self.dx * np.maximum(0, 1 - above / 1e-6)
        self.skin /= self.skin.sum()
        self.resin = self.dx.sum()
        self.between = self.dx[1:] + self.dx[:-1]
        return np.concatenate([u.ravel(), temps])

    def rates(self, t, y):
        n = len(self.dx)
        u = y[: 2 * n].reshape(n, 2)
        tf, wood = y[2 * n] + AIR_K, y[2 * n + 1 :]
        plus = np.maximum(u, 0)
        q = plus[:, 0] / (1 + plus[:, 0])
        p = 1 / (1 + plus.sum(1))
        energy = (EG - (EG - EL) * q) * (1 / tf - 1 / 293.15)
        m = np.exp(LN_DG + RISE * (1 - np.exp(-STEEP * q)) - energy) * p * p
        up = ((m[1:] + m[:-1]) / self.between)[:, None] * SPEED * (u[1:] - u[:-1])
        out = flux(u[-1], tf)
        f = np.empty_like(y)
        du = f[: 2 * n].reshape(n, 2)
        du[:-1] = up
        du[-1] = -out * VOLUME
        du[1:] -= up
        du /= self.dx[:, None]
        heat = 50 + 1140 * 1500 * self.resin + (self.dx @ plus) @ (RHO * 2400)
        hr = 4 * 0.9 * 5.670374e-8 * (0.5 * (AIR_K + tf)) ** 3
        down = np.append(WOOD_K / (DZ[0] / 2) * (y[2 * n] - wood[0]), WOOD_FACE * -np.diff(wood))
        f[2 * n] = (-(H + hr) * y[2 * n] - out @ LATENT - down[0]) / heat
        f[2 * n + 1 :] = (down - np.append(down[1:], 0)) / WOOD_C
        return f

    def soft(self, y):
        n = len(self.dx)
        return AIR_K - glass_k(self.dx @ y[: 2 * n].reshape(n, 2) / self.resin)

    def touch(self, t, y):
        n = len(self.dx)
        return y[2 * n] + AIR_K - glass_k(self.skin @ y[: 2 * n].reshape(n, 2)) - 55

    def rub_out(self, t, y):
        n = len(self.dx)
        return max(self.dx @ y[: 2 * n : 2] / self.resin / 0.010 - 1, (8 + self.soft(y)) / 10)

    def peak(self, solution):
        n = len(self.dx)
        first, s = solution.t[0], solution.sol
        at = solution.t[solution.t < first + 3600]
        ends = np.append(at[1:], min(solution.t[-1], first + 3600))
        looks = np.concatenate([at + (ends - at) * k / 4 for k in range(4)] + [ends[-1:]])
        value = lambda t: blush(s(t)[2 * n - 2 : 2 * n])
        tops = s(looks)[2 * n - 2 : 2 * n].T
        best = looks[max(range(len(looks)), key=lambda i: blush(tops[i]))]
        step = np.interp(best, at, ends - at) / 4
        low, high = max(best - step, first), best + step
        for _ in range(24):
            a, b = high - 0.618034 * (high - low), low + 0.618034 * (high - low)
            low, high = (low, b) if value(a) > value(b) else (a, high)
        return max(value(0.5 * (low + high)), value(best))


def run(method, merged, rtol):
    film, y, answers, work = Film(), None, {}, np.zeros(4, int)
    for i, laid in enumerate(COAT_AT):
        until = COAT_AT[i + 1] if i < 5 else UNTIL
        if i in (3, 5):
            answers["x%d" % (i + 1)] = film.soft(y)
        y = film.lay(y, merged)
        n = len(film.dx)
        atol = np.append(np.full(2 * n, 1e-3 * rtol), np.full(1 + WOOD, 20 * rtol))
        band = dict(lband=3, uband=3)
        if method == "BDF":
            width = len(y)
            band = dict(jac_sparsity=diags([np.ones(width)] * 7, range(-3, 4), (width, width)))
        events = []
        if i == 0:
            events = [film.touch, lambda t, v: film.soft(v) - 40]
        elif i == 5:
            events = [film.rub_out, lambda t, v: film.soft(v) - 5]
        s = solve_ivp(
            film.rates, (laid, until), y, method, dense_output=i in (0, 5),
            events=events or None, rtol=rtol, atol=atol, **band)
        if not s.success:
            raise SystemExit("film_scipy.py: " + s.message)
        y = s.y[:, -1]
        work += (len(s.t) - 1, s.nfev, s.njev, s.nlu)
        for name, found in zip(("touch", "recoat") if i == 0 else ("rub", "hard"), s.t_events or []):
            answers[name] = found[0] - laid
        if i in (0, 5):
            answers["s%d" % (i + 1)] = film.peak(s)
    return work, [answers[k] for k in ("rub", "hard", "touch", "recoat", "x4", "x6", "s1", "s6")]


def main():
    if len(sys.argv) != 4:
        raise SystemExit(__doc__)
    method, grid, rtol = sys.argv[1], sys.argv[2], float(sys.argv[3])
    best = float("inf")
    for _ in range(3):
        start = time.process_time()
        work, answers = run(method, grid == "merged", rtol)
        best = min(best, time.process_time() - start)
    row = ["scipy-" + method.lower(), grid, "%g" % rtol, "%.4f" % (1000 * best)]
    print("\t".join(row + [str(w) for w in work] + ["%.9g" % a for a in answers]))


main()
