"""Projects places on a turned spheroid to pixels, by rotation matrices only."""
import numpy as np

rng = np.random.default_rng(20)


def rot(axis, deg):
    a = np.radians(deg)
    c, s = np.cos(a), np.sin(a)
    return {
        "x": np.array([[1, 0, 0], [0, c, -s], [0, s, c]]),
        "y": np.array([[c, 0, s], [0, 1, 0], [-s, 0, c]]),
        "z": np.array([[c, -s, 0], [s, c, 0], [0, 0, 1]]),
    }[axis]


def normal(lon_east, lat):
    lo, la = np.radians(lon_east), np.radians(lat)
    return np.array([np.cos(la) * np.cos(lo), np.cos(la) * np.sin(lo), np.sin(la)])


print("# made by src/test/python/frame_rows.py with numpy; angles deg, lengths px; sense +1 east-positive, -1 west-positive longitudes")
print("polar_ratio,sense,cm,sub_lat_centric,sun_lon,sun_lat_centric,cx,cy,re,pole_angle,mirrored,lon,lat_graphic,x,y,emission,incidence,lat_centric")
rows = 0
while rows < 60:
    q = rng.choice([0.93513, 0.90204, 0.99412, 1.0, 0.97707])
    sense = rng.choice([-1, 1])
    cm, sun_lon = rng.uniform(0, 360, 2)
    sun_lon = (cm + rng.uniform(-100, 100)) % 360
    b = rng.uniform(-85, 85)
    sun_b = rng.uniform(-60, 60)
    cx, cy, re = rng.uniform(50, 400), rng.uniform(50, 400), rng.uniform(20, 300)
    pole, mirrored = rng.uniform(-180, 180), rng.integers(0, 2)
    lon, lat = rng.uniform(0, 360), rng.uniform(-88, 88)
    # body axes: x in the prime meridian, z north; east longitudes from the stated sense
    n = normal(sense * lon, lat)
    d = np.array([1, 1, q])
    p = d * d * n / np.linalg.norm(d * n)
    # turn the central meridian to +x, then tip the sub-observer point onto +x
    m = rot("y", b) @ rot("z", -sense * cm)
    v, vn = m @ p, m @ n
    if vn[0] < 0.02:
        continue
    vs = m @ (normal(sense * sun_lon, sun_b))
    right, up = v[1] * re, v[2] * re
    # picture with north up: right is +x, up is -y; mirror first, then turn counter-clockwise by the pole angle
    px = np.array([-right if mirrored else right, up])
    a = np.radians(pole)
    px = np.array([[np.cos(a), -np.sin(a)], [np.sin(a), np.cos(a)]]) @ px
    x, y = cx + px[0], cy - px[1]
    inc = np.degrees(np.arccos(np.clip(vn @ vs, -1, 1)))
    emi = np.degrees(np.arccos(np.clip(vn[0], -1, 1)))
    centric = np.degrees(np.arctan2(p[2], np.hypot(p[0], p[1])))
    print(",".join(repr(float(t)) for t in (q, sense, cm, b, sun_lon, sun_b, cx, cy, re, pole, mirrored, lon, lat, x, y, emi, inc, centric)))
    rows += 1
