"""Bricks and short cylinders by the product of exact series, and salt into pieces in a little broth by the method of
lines: what the Rust tests of `physics/bodies` and `physics/diffusion` hold their own solutions against.

Run: python3 pieces.py (needs numpy and scipy); the printed rows stand in those tests.
"""

from math import pi

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import brentq
from scipy.special import j0, j1, jn_zeros

TERMS = 60


def slab(biot, fourier, mean=False):
    """Share of a step left in a slab: centre, or mean."""
    if np.isinf(biot):
        zeta = (np.arange(TERMS) + 0.5) * pi
        weight = 2 * (-1.0) ** np.arange(TERMS) / zeta
    else:
        zeta = np.array(
            [brentq(lambda x: x * np.sin(x) - biot * np.cos(x), n * pi + 1e-12, n * pi + pi / 2) for n in range(TERMS)]
        )
        weight = 4 * np.sin(zeta) / (2 * zeta + np.sin(2 * zeta))
    shape = np.sin(zeta) / zeta if mean else 1.0
    return float(np.sum(weight * shape * np.exp(-zeta**2 * fourier)))


def cylinder(biot, fourier, mean=False):
    """Share of a step left in a long cylinder."""
    if np.isinf(biot):
        zeta = jn_zeros(0, TERMS)
        weight = 2 / (zeta * j1(zeta))
    else:
        ends = np.concatenate([[0], jn_zeros(1, TERMS)])
        zeta = np.array(
            [brentq(lambda x: x * j1(x) - biot * j0(x), ends[n] + 1e-12, ends[n + 1] - 1e-12) for n in range(TERMS)]
        )
        weight = 2 * j1(zeta) / (zeta * (j0(zeta) ** 2 + j1(zeta) ** 2))
    shape = 2 * j1(zeta) / zeta if mean else 1.0
    return float(np.sum(weight * shape * np.exp(-zeta**2 * fourier)))


def bodies():
    """Biot and Fourier number by half the thickness (or the radius) of 1."""
    print("brick edges 2a x 2b x 2c (a = 1), or cylinder of radius 1 and half length b: Bi, Fo, centre, mean")
    for halves in [(1, 1, 1), (1, 1, 1e6), (1, 1, 2), (1, 1.5, 1.5)]:
        for biot in [1.0, 5.0, 20.0, np.inf]:
            for fourier in [0.05, 0.15, 0.3, 0.6]:
                ones = [(biot * h, fourier / h**2) for h in halves]
                centre = np.prod([slab(b, f) for b, f in ones])
                mean = np.prod([slab(b, f, True) for b, f in ones])
                print(f"    (Brick([{halves[0]:.1f}, {halves[1]:.1f}, {halves[2]:.1f}]), {biot}, {fourier}, {centre:.5f}, {mean:.5f}),")
    for half in [1.0, 2.0, 0.7]:
        for biot in [1.0, 5.0, 20.0, np.inf]:
            for fourier in [0.05, 0.15, 0.3, 0.6]:
                centre = cylinder(biot, fourier) * slab(biot * half, fourier / half**2)
                mean = cylinder(biot, fourier, True) * slab(biot * half, fourier / half**2, True)
                print(f"    (Cylinder({half:.1f}), {biot}, {fourier}, {centre:.5f}, {mean:.5f}),")


def salt(power, beta, times):
    """A body whose surface has the strength of a stirred bath of `beta` times its water: share of all the salt that is
    in the body, the bath salted at the start. Diffusivity and radius 1."""
    cells = 400
    edge = np.linspace(0, 1, cells + 1)
    volume = edge[1:] ** (power + 1) - edge[:-1] ** (power + 1)
    face = (power + 1) * edge**power

    def flow(_, state):
        inside, bath = state[:-1], state[-1]
        flux = np.zeros(cells + 1)
        flux[1:-1] = face[1:-1] * (inside[1:] - inside[:-1]) * cells
        flux[-1] = face[-1] * (bath - inside[-1]) * 2 * cells
        return np.append((flux[1:] - flux[:-1]) / volume, -flux[-1] / beta)

    start = np.append(np.zeros(cells), 1.0)
    run = solve_ivp(flow, (0, times[-1]), start, method="BDF", t_eval=times, rtol=1e-8, atol=1e-10)
    for time, state in zip(times, run.y.T):
        share = float(np.sum(state[:-1] * volume) / beta)
        print(f"    ({power}, {beta}, {time}, {share:.5f}),")


if __name__ == "__main__":
    bodies()
    print("salt: power of the area, water of the bath by that of the body, Fourier number, share of the salt inside")
    for power in (0, 1, 2):
        for beta in (0.5, 2.0, 10.0):
            salt(power, beta, [0.01, 0.03, 0.1, 0.3])
