"""Three whole pots, integrated from the published relations and from nothing of the engine's code:

1. a covered pot brought to a simmer and kept there for an hour, with evaporation;
2. cold pieces put into hot water that no longer is heated;
3. a deep pot of thick stew left uncovered in air.

Run: python3 whole_pots.py (needs numpy and scipy). The printed rows stand in `src/cook/tests/whole_pots.rs`.

Shared with the engine are its stated priors, which no source gives: a simmer 5 K below the boil, a lid that lets 8 % of
the open pot's vapour past, 250 W/(m2 K) between still liquid and pieces, and the geometric mean of three evaporation laws
at the surface of a liquid that mixes by itself.
"""

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

G, SIGMA, ATM = 9.80665, 5.670374e-8, 101325.0
R_AIR, R_VAPOUR, CP_AIR = 287.05, 461.52, 1006.0


def saturation(c):
    """Pa; the saturation equation of Wagner and Pruss (IAPWS)."""
    t = c + 273.15
    x = 1 - t / 647.096
    a = [(-7.85951783, 1), (1.84408259, 1.5), (-11.7866497, 3), (22.6807411, 3.5), (-15.9618719, 4), (1.80122502, 7.5)]
    return 22.064e6 * np.exp(647.096 / t * sum(k * x**n for k, n in a))


def latent(c):
    """J/kg; steam tables."""
    return 1e3 * np.interp(c, [0, 20, 40, 60, 80, 100], [2500.9, 2453.5, 2406.0, 2357.7, 2308.0, 2256.4])


def air(c):
    """Density, conductivity, kinematic viscosity, diffusivity; Sutherland's formulas, ideal gas."""
    t = c + 273.15
    rho = ATM / (R_AIR * t)
    k = 0.0241 * (t / 273.15) ** 1.5 * (273.15 + 194) / (t + 194)
    mu = 1.716e-5 * (t / 273.15) ** 1.5 * (273.15 + 110.4) / (t + 110.4)
    return rho, k, mu / rho, k / (rho * CP_AIR)


def top(c, air_c, humidity, diameter, bulk=None):
    """Over an open wet surface: convection W/(m2 K) by McAdams with moist densities, evaporation kg/(s m2) as the
    geometric mean of Carrier's formula, which goes by the bulk, the linear law and Stefan's."""
    pw, pa = saturation(c), humidity * saturation(air_c)
    rho, k, nu, alpha = air(0.5 * (c + air_c))
    moist = lambda t, p: (ATM - p) / (R_AIR * (t + 273.15)) + p / (R_VAPOUR * (t + 273.15))
    length = diameter / 4
    ra = G * abs(moist(air_c, pa) - moist(c, pw)) / rho * length**3 / (nu * alpha)
    h = (0.54 * ra**0.25 if ra < 1e7 else 0.15 * ra ** (1 / 3)) * k / length
    if pw <= pa:
        return h, 0.0
    d = 2.26e-5 * ((0.5 * (c + air_c) + 273.15) / 273.15) ** 1.81
    hm = h / (rho * CP_AIR * (alpha / d) ** (2 / 3))
    carrier = 0.089 * (saturation(c if bulk is None else bulk) - pa) / latent(c)
    linear = hm * (pw / (R_VAPOUR * (c + 273.15)) - pa / (R_VAPOUR * (air_c + 273.15)))
    stefan = hm * ATM / (R_VAPOUR * (0.5 * (c + air_c) + 273.15)) * np.log((ATM - pa) / (ATM - pw))
    return h, (carrier * linear * stefan) ** (1 / 3)


# Water by IAPWS-IF97: density, specific heat, conductivity, viscosity.
WATER_C = [10, 20, 30, 40, 50, 60, 70, 80, 90, 100, 110]
WATER_RHO = [999.654, 998.161, 995.609, 992.183, 988.009, 983.175, 977.748, 971.779, 965.304, 958.354, 950.950]
WATER_CP = [4195.8, 4185.1, 4180.3, 4178.8, 4179.8, 4182.9, 4188.2, 4195.6, 4205.1, 4216.6, 4230.4]
WATER_K = [0.57871, 0.59795, 0.61434, 0.62845, 0.64059, 0.65098, 0.65974, 0.66698, 0.67278, 0.67722, 0.68035]
WATER_MU = [1.30599e-3, 1.00163e-3, 7.9722e-4, 6.5272e-4, 5.4650e-4, 4.6602e-4, 4.0354e-4, 3.5404e-4, 3.1417e-4, 2.8159e-4,
            2.5461e-4]


def surface(c, air_c, humidity, diameter):
    """Temperature of the open surface of mixed water at c: what it gives off is brought up by Nu = 0.156 Ra^(1/3)
    (Katsaros et al., Journal of Fluid Mechanics 83 (1977) 311)."""
    at = lambda values: np.interp(c, WATER_C, values)
    rho, cp, k, mu = map(at, (WATER_RHO, WATER_CP, WATER_K, WATER_MU))
    beta = -(np.interp(c + 5, WATER_C, WATER_RHO) - np.interp(c - 5, WATER_C, WATER_RHO)) / 10 / rho
    brings = 0.156 * k * (G * beta * rho * rho * cp / (mu * k)) ** (1 / 3)

    def balance(s):
        h, rate = top(s, air_c, humidity, diameter, c)
        return brings * (c - s) ** (4 / 3) - (rate * latent(s) + h * (s - air_c) + radiation(0.95, s, air_c))

    return c if balance(c) >= 0 else brentq(balance, air_c - 5, c)


def wall(c, air_c, height):
    """W/(m2 K) at a wall; Churchill and Chu."""
    _, k, nu, alpha = air(0.5 * (c + air_c))
    beta = 1 / (0.5 * (c + air_c) + 273.15)
    ra = G * beta * abs(c - air_c) * height**3 / (nu * alpha)
    denominator = (1 + (0.492 / (nu / alpha)) ** (9 / 16)) ** (8 / 27)
    return (0.825 + 0.387 * ra ** (1 / 6) / denominator) ** 2 * k / height


def radiation(eps, c, air_c):
    return eps * SIGMA * ((c + 273.15) ** 4 - (air_c + 273.15) ** 4)


# Choi and Okos: density, specific heat, conductivity by temperature.
CHOI_OKOS = {
    "water": ((997.18, 3.1439e-3, -3.7574e-3), (4176.2, -9.0864e-2, 5.4731e-3), (0.57109, 1.7625e-3, -6.7036e-6)),
    "protein": ((1329.9, -0.5184, 0), (2008.2, 1.2089, -1.3129e-3), (0.17881, 1.1958e-3, -2.7178e-6)),
    "fat": ((925.59, -0.41757, 0), (1984.2, 1.4733, -4.8008e-3), (0.18071, -2.7604e-4, -1.7749e-7)),
    "carbohydrate": ((1599.1, -0.31046, 0), (1548.8, 1.9625, -5.9399e-3), (0.20141, 1.3874e-3, -4.3312e-6)),
}


def mixture(parts, c):
    """Density, specific heat, conductivity (parallel model) of mass shares."""
    at = lambda q: q[0] + q[1] * c + q[2] * c * c
    volume = sum(x / at(CHOI_OKOS[name][0]) for name, x in parts.items())
    cp = sum(x * at(CHOI_OKOS[name][1]) for name, x in parts.items())
    k = sum(x / at(CHOI_OKOS[name][0]) * at(CHOI_OKOS[name][2]) for name, x in parts.items()) / volume
    return 1 / volume, cp, k


def simmer():
    """4 kg of water at 15 C in a weightless bright pot of 24 x 16 cm, lid on, 1800 W of induction at 84 %; room 21 C, half
    saturated; sea level. Minutes to the simmer, kg gone by then and in the hour after."""
    diameter, room, lid = 0.24, 21.0, 0.08
    area = np.pi * diameter**2 / 4
    power = 1800 * 0.84
    boil = brentq(lambda c: saturation(c) - ATM, 90, 110)

    def losses(c, m):
        rho, cp, _ = mixture({"water": 1.0}, c)
        depth = m / rho / area
        h, _ = top(c, room, 0.5, diameter)
        c = min(c, 99.5)
        vapour = top(surface(c, room, 0.5, diameter), room, 0.5, diameter, c)[1] * lid * area
        heat = (h * (c - room) + radiation(0.95, c, room)) * area
        heat += (wall(c, room, depth) * (c - room) + radiation(0.3, c, room)) * np.pi * diameter * depth
        return heat, vapour, m * cp

    def up(_, y):
        heat, vapour, capacity = losses(*y)
        return [(power - heat - vapour * latent(y[0])) / capacity, -vapour]

    there = lambda _, y: y[0] - (boil - 5.0)
    there.terminal = True
    run = solve_ivp(up, (0, 1e5), [15.0, 4.0], events=there, rtol=1e-8, atol=1e-8)
    minutes, mass = run.t[-1] / 60, run.y[1, -1]
    kept = solve_ivp(lambda _, y: [-losses(boil - 5.0, y[0])[1]], (0, 3600), [mass], rtol=1e-8)
    heat, vapour, _ = losses(boil - 5.0, mass)
    print(f"simmer: {minutes:.2f} min, {1000 * (4 - mass):.1f} g, {1000 * (mass - kept.y[0, -1]):.1f} g in the hour, "
          f"{heat + vapour * latent(boil - 5.0):.0f} W")


def bath():
    """1 kg of balls 30 mm across, 80 % water and 20 % starch, at 8 C into 3 kg of water at 80 C, nothing lost, 250 W/(m2 K):
    centre and water after some minutes. 150 shells, method of lines."""
    parts, radius, n = {"water": 0.8, "carbohydrate": 0.2}, 0.015, 150
    r = np.linspace(0, radius, n + 1)
    shell = 4 / 3 * np.pi * (r[1:] ** 3 - r[:-1] ** 3)
    balls = 1.0 / (mixture(parts, 8.0)[0] * 4 / 3 * np.pi * radius**3)
    dr = radius / n

    def rhs(_, y):
        t, water = y[:-1], y[-1]
        rho, cp, k = mixture(parts, t)
        inner = 4 * np.pi * r[1:-1] ** 2 * 0.5 * (k[1:] + k[:-1]) / dr * np.diff(t)
        film = 4 * np.pi * radius**2 / (1 / 250.0 + dr / 2 / k[-1]) * (water - t[-1])
        gain = np.append(inner, film) - np.insert(inner, 0, 0.0)
        # The mass of a shell stays; its density at the start gives it.
        capacity = shell * mixture(parts, 8.0)[0] * cp
        return np.append(gain / capacity, -balls * film / (3.0 * mixture({"water": 1.0}, water)[1]))

    at = [60, 180, 300, 600, 1200]
    run = solve_ivp(rhs, (0, 1200), np.append(np.full(n, 8.0), 80.0), t_eval=at, method="BDF", rtol=1e-8, atol=1e-8)
    for i, s in enumerate(at):
        print(f"bath: {s} s, centre {run.y[0, i]:.2f} C, water {run.y[-1, i]:.2f} C")


def deep():
    """Stew of 85 % water, 5 % starch, 7 % protein, 3 % fat, 9.5 kg at 90 C in a weightless bright pot of 26 cm, uncovered on
    a table (nothing lost below) in air of 21 C, half saturated: the warmest place and the mean after some hours, and
    grams gone. 24 rings x 48 layers, each surface cell losing by itself."""
    parts = {"water": 0.85, "carbohydrate": 0.05, "protein": 0.07, "fat": 0.03}
    diameter, room, mass = 0.26, 21.0, 9.5
    radius, nr, nz = diameter / 2, 24, 48
    area = np.pi * radius**2
    height = mass / mixture(parts, 50.0)[0] / area
    re = np.linspace(0, radius, nr + 1)
    ring = np.pi * (re[1:] ** 2 - re[:-1] ** 2)
    dr, dz = radius / nr, height / nz
    shares = (ring[:, None] * np.ones(nz)[None, :]) / (area * nz)

    def rhs(_, y):
        t = y[:-1].reshape(nr, nz)
        _, cp, k = mixture(parts, t)
        qz = ring[:, None] * 0.5 * (k[:, 1:] + k[:, :-1]) / dz * np.diff(t, axis=1)
        qr = (2 * np.pi * re[1:-1] * dz)[:, None] * 0.5 * (k[1:, :] + k[:-1, :]) / dr * np.diff(t, axis=0)
        gain = np.zeros_like(t)
        gain[:, :-1] += qz
        gain[:, 1:] -= qz
        gain[:-1, :] += qr
        gain[1:, :] -= qr
        # The surface is where what comes up from the cell leaves it.
        gone = 0.0
        mean_top = float(np.sum(ring * t[:, -1]) / area)
        h, rate = top(mean_top, room, 0.5, diameter)
        slope = (top(mean_top + 0.5, room, 0.5, diameter)[1] - top(mean_top - 0.5, room, 0.5, diameter)[1])
        for i in range(nr):
            out = lambda s: h * (s - room) + radiation(0.95, s, room) + max(rate + slope * (s - mean_top), 0) * latent(s)
            s = t[i, -1]
            for _ in range(6):
                f = out(s) - 2 * k[i, -1] / dz * (t[i, -1] - s)
                s -= f / (out(s + 0.01) / 0.01 - out(s) / 0.01 + 2 * k[i, -1] / dz)
            gain[i, -1] -= ring[i] * out(s)
            gone += ring[i] * max(rate + slope * (s - mean_top), 0)
        s = t[-1, :].copy()
        for _ in range(6):
            hw = wall(float(np.mean(s)), room, height)
            out = hw * (s - room) + radiation(0.3, s, room)
            s -= (out - 2 * k[-1, :] / dr * (t[-1, :] - s)) / (hw + 2.0 + 2 * k[-1, :] / dr)
        gain[-1, :] -= 2 * np.pi * radius * dz * (hw * (s - room) + radiation(0.3, s, room))
        return np.append((gain / (shares * mass * cp)).ravel(), gone)

    at = np.array([0, 1, 2, 4, 8, 12, 16, 24]) * 3600.0
    run = solve_ivp(rhs, (0, 24 * 3600), np.append(np.full(nr * nz, 90.0), 0.0), method="BDF", rtol=1e-5, atol=1e-4,
                    dense_output=True)
    for s in at[1:]:
        y = run.sol(s)
        print(f"deep: {s / 3600:.0f} h, warmest {np.max(y[:-1]):.2f} C, mean {np.sum(shares.ravel() * y[:-1]):.2f} C, "
              f"{1000 * y[-1]:.0f} g gone")


if __name__ == "__main__":
    simmer()
    bath()
    deep()
