# SPDX-License-Identifier: Apache-2.0
"""Fits the series of Saturn's moons to tabulated orbits and judges it by rows the fit never saw. Needs numpy only.

    python3 fit_series.py ORBITS.csv.gz SERIES.csv RESIDUALS.txt [MOON...]

ORBITS has the columns jd_tdb, planet, moon, x_km, y_km, z_km (planetocentric, ICRF axes, geometric). Every seventh row of a moon in order of time is
kept out of everything and only used to judge the series as it was written to SERIES. How it works is told in README.md beside this file.
"""

import csv
import gzip
import multiprocessing
import sys

import numpy as np

J2000 = 2451545.0
CENTURY = 36525.0

# Sidereal period (days; only to count turns between rows), and the highest rate looked for, in mean motions: it must hold enough multiples of the
# moon's own for its eccentricity, and for Iapetus those of the inner moons, for they move the planet's centre.
MOONS = {
    "mimas": (0.942421959, 5.3),
    "enceladus": (1.370218093, 3.3),
    "tethys": (1.887802, 3.3),
    "dione": (2.736915, 3.3),
    "rhea": (4.517500, 3.3),
    "titan": (15.945421, 4.3),
    "hyperion": (21.276609, 8.3),
    "iapetus": (79.330183, 20.0),
}

# Saturn's pole of J2000 (IAU WGCCRE 2015), deg: plane of all moons but Iapetus, which has its own mean plane.
POLE_RA, POLE_DEC = 40.589, 83.537

HELD_OUT_EVERY, HELD_OUT_FIRST = 7, 3
SECOND_FIRST = 5  # a second fit leaves out other rows; where no row stands the two are compared
SPAN = (2438030.5 - J2000, 2468711.5 - J2000)  # 1963-01-01 to 2047-01-01
INSTANTS = 20000
SEPARATION = 1.0e-4  # rad/day: half a turn over the span; closer rates would end as pairs of huge opposite terms
COSINES = ("cos", "cosT", "cosT2", "cosT3")  # kinds in the file, by the power of time on the amplitude
HIGHEST_POWER = 3
CANDIDATES = 6  # peaks of the spectrum tried for each new term
POWER_BONUS = 1.4  # a power of time costs two unknowns, a new rate three
LEAST_GAIN = 20.0  # of a new term, in units of the residual's variance: what the highest peak of pure noise would bring
LEAST_GAIN_HYPERION = 16.0  # its terms are too many for the rows: stop later; 13 gave worse second fits
GOOD_ENOUGH_KM = 1.2  # rms of one coordinate at which no more terms are added
END_DAYS = 5 * 365.25

RESIDUALS_HEAD = """\
Saturn's moons: the series as written against rows of the orbits. Distances in space, km; along the track, seconds of the moon's own motion.
"held" rows were in no way used by the fit; "first 5y", "last 5y": worst of those in the first and in the last five years of the rows. "2nd": distance from a second fit, with
other rows left out, at 20 000 random instants of 1963-01-01 to 2047-01-01: what the series may do where no row stands.

moon       cosines   fitted      rms     held    worst      rms first 5y  last 5y    s max    s rms  2nd max  2nd rms
"""

HEAD = """\
# Moons of Saturn from the planet's centre: our own fit (2026) of trigonometric series to public JPL orbits of 1962 to 2047 (of the Jet Propulsion
# Laboratory). Made by docs/moon-series/fit_series.py, where the way is told; valid from 1963-01-01 to 2047-01-01 only, no extrapolation.
# t = days TDB since J2000 (JD 2451545.0), T = t/36525; p = 0, 1, 2, 3 for the kinds cos, cosT, cosT2, cosT3.
# r, theta, z are cylindrical coordinates in a fixed plane: node = longitude of the plane's ascending node on the ICRF equator, inclination to it (rad).
# r [km] = c0 + sum value*T^p*cos(phase + rate*t); z [km] likewise; theta [rad] = c0 + c1*t + c2*T^2 + c3*T^3 + sum value*T^p*cos(phase + rate*t).
# u = r cos theta, v = r sin theta; with N = node, I = inclination the ICRF vector from Saturn's centre, km, geometric, at the moon's own time t is
# X = u cos N - v sin N cos I + z sin N sin I;  Y = u sin N + v cos N cos I - z cos N sin I;  Z = v sin I + z cos I.
# Read no physics into single terms and drop none. Distance (km) from rows of those orbits kept out of the fit, largest and rms:
"""


class Coordinate:
    """One coordinate as polynomial and cosines, the amplitude of each cosine a polynomial in time of its own."""

    def __init__(self, t, y, degree, highest_rate, least_gain):
        self.middle = (t.min() + t.max()) / 2
        self.half = (t.max() - t.min()) / 2
        self.t, self.y, self.degree, self.highest_rate, self.least_gain = t, y, degree, highest_rate, least_gain
        self.rates, self.powers = [], []
        self.gain = np.inf
        self.solve()

    def pair(self, t, rate, power):
        tau = (t - self.middle) / self.half
        angle = rate * (t - self.middle)
        return np.array([np.cos(angle), np.sin(angle)]).T * (tau**power)[:, None]

    def columns(self, t):
        tau = (t - self.middle) / self.half
        parts = [tau[:, None] ** np.arange(self.degree + 1)]
        for rate, power in zip(self.rates, self.powers):
            parts += [self.pair(t, rate, k) for k in range(power + 1)]
        return np.hstack(parts)

    def unknowns(self):
        return self.degree + 1 + sum(2 * (p + 1) + (p == 0) for p in self.powers)

    def variance(self):
        return self.residual @ self.residual / (self.t.size - self.unknowns())

    def solve(self):
        a = self.columns(self.t)
        self.x = np.linalg.lstsq(a, self.y, rcond=1e-11)[0]
        self.residual = self.y - a @ self.x

    def refine(self):
        """One Gauss-Newton step for all amplitudes and the rates of terms without powers; a rate does not come closer to another than allowed."""
        a = self.columns(self.t)
        free = [i for i, p in enumerate(self.powers) if p == 0]
        if not free:
            return
        first = self.degree + 1 + np.concatenate([[0], np.cumsum([2 * (p + 1) for p in self.powers])]).astype(int)
        slopes = []
        for i in free:
            c, s = self.pair(self.t, self.rates[i], 0).T
            slopes.append((-self.x[first[i]] * s + self.x[first[i] + 1] * c) * (self.t - self.middle))
        jacobian = np.column_stack([a] + slopes)
        scale = np.linalg.norm(jacobian, axis=0)
        step = np.linalg.lstsq(jacobian / scale, self.residual, rcond=1e-9)[0] / scale
        old = list(self.rates), self.x, self.residual
        limit = 0.2 * np.pi / self.half
        for i, change in zip(free, step[a.shape[1] :]):
            others = [r for j, r in enumerate(self.rates) if j != i]
            moved = self.rates[i] + np.clip(change, -limit, limit)
            gap = min((abs(moved - r) for r in others), default=np.inf)
            before = min((abs(self.rates[i] - r) for r in others), default=np.inf)
            if gap >= SEPARATION or gap >= before:
                self.rates[i] = moved
        self.solve()
        if self.residual @ self.residual > old[2] @ old[2]:
            self.rates, self.x, self.residual = old

    def spectrum(self):
        """Rates and sizes of the residual's Fourier sum: rows spread over an even grid by six-point Lagrange weights, then one FFT."""
        step = np.pi / (3 * self.highest_rate)
        length = 1 << int(np.ceil(np.log2(4 * (2 * self.half / step + 20))))
        grid = np.zeros(length)
        place = (self.t - self.t.min()) / step + 8
        start = np.floor(place).astype(int) - 2
        for j in range(6):
            weight = np.ones_like(place)
            for k in range(6):
                if k != j:
                    weight *= (place - (start + k)) / (j - k)
            np.add.at(grid, start + j, weight * self.residual)
        size = np.abs(np.fft.rfft(grid))
        rate = 2 * np.pi * np.arange(size.size) / (length * step)
        wanted = rate <= self.highest_rate
        return rate[wanted], size[wanted]

    def candidates(self):
        """(rate index or None, rate, power) worth trying: powers of time on what stands, then new rates at the highest peaks."""
        for i, power in enumerate(self.powers):
            if power < HIGHEST_POWER:
                yield i, self.rates[i], power + 1
        rate, size = self.spectrum()
        peaks = np.where((size[1:-1] > size[:-2]) & (size[1:-1] >= size[2:]))[0] + 1
        tried = 0
        for peak in peaks[np.argsort(-size[peaks])[:60]]:
            new = max(rate[peak], SEPARATION)
            if all(abs(new - r) >= SEPARATION for r in self.rates):
                yield None, new, 0
                tried += 1
                if tried == CANDIDATES:
                    return

    def add(self):
        q = np.linalg.qr(self.columns(self.t))[0]
        best = (0, None, 0, 0)
        for index, rate, power in self.candidates():
            b = self.pair(self.t, rate, power)
            b = np.linalg.qr(b - q @ (q.T @ b))[0]
            gain = np.sum((b.T @ self.residual) ** 2) * (POWER_BONUS if power else 1)
            if gain > best[0]:
                best = (gain, index, rate, power)
        self.gain = best[0] / self.variance()
        if best[0] == 0:
            return
        if best[1] is None:
            self.rates.append(best[2])
            self.powers.append(0)
        else:
            self.powers[best[1]] = best[3]
        self.solve()
        self.refine()

    def fit(self):
        while self.gain >= self.least_gain and self.variance() > GOOD_ENOUGH_KM**2:
            self.add()
        for _ in range(5):
            self.refine()
        return self

    def lines(self, unit):
        """(kind, value, phase, rate), values divided by unit; powers of T in centuries since J2000 instead of powers about the span's middle."""
        inner = np.poly1d([CENTURY / self.half, -self.middle / self.half])
        constant = np.poly1d([0.0])
        for k in range(self.degree + 1):
            constant = constant + self.x[k] / unit * inner**k
        for k, value in enumerate(constant.coeffs[::-1]):
            yield f"c{k}", value / CENTURY if k == 1 else value, None, None
        i = self.degree + 1
        terms = []
        for rate, power in zip(self.rates, self.powers):
            total = np.poly1d([0j])
            for k in range(power + 1):
                total = total + (self.x[i] - 1j * self.x[i + 1]) / unit * inner**k
                i += 2
            shifted = total.coeffs[::-1] * np.exp(-1j * rate * self.middle)
            terms.append((rate, shifted))
        for rate, shifted in sorted(terms, key=lambda term: -np.abs(term[1]).max()):
            for k, value in enumerate(shifted):
                yield COSINES[k], abs(value), np.angle(value) % (2 * np.pi), rate


def axes(node, inclination):
    u = np.array([np.cos(node), np.sin(node), 0.0])
    z = np.array([np.sin(node) * np.sin(inclination), -np.cos(node) * np.sin(inclination), np.cos(inclination)])
    return u, np.cross(z, u), z


def plane_of(moon, x):
    if moon != "iapetus":
        return np.radians(POLE_RA) + np.pi / 2, np.pi / 2 - np.radians(POLE_DEC)
    pole = np.linalg.eigh(x.T @ x)[1][:, 0]
    pole = pole * np.sign(pole[2])
    return np.arctan2(pole[1], pole[0]) + np.pi / 2, np.arccos(pole[2])


def cylindrical(moon, t, x, node, inclination):
    u, v, z = (x @ axis for axis in axes(node, inclination))
    motion = 2 * np.pi / MOONS[moon][0]
    theta = np.unwrap(np.arctan2(v, u) - motion * t) + motion * t
    return np.hypot(u, v), theta, z


def fit_moon(arguments):
    moon, t, x = arguments
    highest = MOONS[moon][1] * 2 * np.pi / MOONS[moon][0]
    least_gain = LEAST_GAIN_HYPERION if moon == "hyperion" else LEAST_GAIN
    node, inclination = plane_of(moon, x)
    r, theta, z = cylindrical(moon, t, x, node, inclination)
    size = r.mean()
    out = [f"{moon},frame,node,{node:.12f},,", f"{moon},frame,inclination,{inclination:.12f},,"]
    for name, y, degree, unit, digits in (("r", r, 0, 1, 3), ("theta", theta * size, 3, size, 11), ("z", z, 0, 1, 3)):
        for kind, value, phase, rate in Coordinate(t, y, degree, highest, least_gain).fit().lines(unit):
            if rate is None:
                out.append(f"{moon},{name},{kind},{value:.{16 if kind == 'c1' else digits}f},,")
            else:
                out.append(f"{moon},{name},{kind},{value:.{digits}f},{phase:.7f},{rate:.12f}")
    print(moon, len(out), "lines", flush=True)
    return out


def place(lines, moon, t):
    """The series summed from its own text; km, ICRF axes."""
    century = t / CENTURY
    total = {"r": 0.0 * t, "theta": 0.0 * t, "z": 0.0 * t}
    frame = {}
    for line in lines:
        name, coordinate, kind, value, phase, rate = line.split(",")
        if name != moon:
            continue
        if coordinate == "frame":
            frame[kind] = float(value)
        elif kind.startswith("cos"):
            power = COSINES.index(kind)
            total[coordinate] += float(value) * century**power * np.cos(float(phase) + float(rate) * t)
        else:
            power = int(kind[1:])
            total[coordinate] += float(value) * (t if power == 1 else century**power)
    u, v, z = axes(frame["node"], frame["inclination"])
    r, theta = total["r"], total["theta"]
    return np.outer(r * np.cos(theta), u) + np.outer(r * np.sin(theta), v) + np.outer(total["z"], z)


def judge(lines, moon, t, x):
    """Errors of rows: in space, along the track (km); the moon's speed (km/s)."""
    velocity = (place(lines, moon, t + 0.001) - place(lines, moon, t - 0.001)) / 172.8
    speed = np.linalg.norm(velocity, axis=1)
    off = place(lines, moon, t) - x
    return np.linalg.norm(off, axis=1), np.abs(np.sum(off * velocity, axis=1)) / speed, speed


def rms(errors):
    return np.sqrt(np.mean(errors * errors))


def report(lines, second, moon, t, x, held):
    """A line of RESIDUALS, and the line of the series' head."""
    cosines = sum(line.startswith(moon + ",") and ",cos" in line for line in lines)
    fitted = judge(lines, moon, t[~held], x[~held])[0]
    off, along, speed = judge(lines, moon, t[held], x[held])
    first = t[held] < t.min() + END_DAYS
    last = t[held] > t.max() - END_DAYS
    instants = np.random.default_rng(1).uniform(*SPAN, INSTANTS)
    apart = np.linalg.norm(place(lines, moon, instants) - place(second, moon, instants), axis=1)
    return (
        f"{moon:10s}{cosines:8d}{(~held).sum():9d}{rms(fitted):9.2f}{held.sum():9d}{off.max():9.2f}{rms(off):9.2f}"
        f"{off[first].max():9.2f}{off[last].max():9.2f}{(along / speed).max():9.3f}{rms(along / speed):9.3f}"
        f"{apart.max():9.2f}{rms(apart):9.2f}\n",
        f"# {moon} {off.max():.1f} {rms(off):.1f}\n",
    )


def main():
    orbits, series, residuals = sys.argv[1:4]
    moons = sys.argv[4:] or list(MOONS)
    with gzip.open(orbits, "rt", encoding="utf-8") as file:
        rows = [row for row in csv.DictReader(file) if row["planet"] == "saturn"]
    data = {}
    for moon in moons:
        table = np.array([[float(row[c]) for c in ("jd_tdb", "x_km", "y_km", "z_km")] for row in rows if row["moon"] == moon])
        table = table[np.argsort(table[:, 0])]
        data[moon] = table[:, 0] - J2000, table[:, 1:], np.arange(len(table)) % HELD_OUT_EVERY
    jobs = [(moon, t[turn != out], x[turn != out]) for out in (HELD_OUT_FIRST, SECOND_FIRST) for moon, (t, x, turn) in data.items()]
    with multiprocessing.Pool(2) as pool:
        parts = pool.map(fit_moon, jobs, chunksize=1)
    lines, second = (sum(some, []) for some in (parts[: len(moons)], parts[len(moons) :]))
    reports = [report(lines, second, moon, t, x, turn == HELD_OUT_FIRST) for moon, (t, x, turn) in data.items()]
    with open(series, "w", encoding="utf-8") as file:
        file.write(HEAD + "".join(head for _, head in reports))
        file.write("moon,coordinate,kind,value,phase_rad,rate_rad_per_day\n" + "\n".join(lines) + "\n")
    with open(residuals, "w", encoding="utf-8") as file:
        file.write(RESIDUALS_HEAD + "".join(line for line, _ in reports))
    with open(residuals, encoding="utf-8") as file:
        print(file.read())


if __name__ == "__main__":
    main()
