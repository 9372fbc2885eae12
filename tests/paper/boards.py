"""Boards to print: one with every kind of hole at odd places, and random ones that aim at the seams."""

import random
from math import hypot

from tests.build import card, gear, layout, rectangle

APART = 18.0  # mm; nearer no two holes of a random board lie: their rings would touch
KINDS = ("M4", "M5", "M6", "1/4-20", "#10-32")


def odd():
    """Return a wide board with taps, clearances, slots, a cut-out, gear on the bench, all at odd places."""
    screws = [{"at": [x, y], "thread": t} for (x, y), t in zip(CORNERS, KINDS, strict=False)]
    cards = {
        "amp": card(212.3, 141.7, 52.4, name="Longfellow", screws=screws, ports=PORTS, service=SERVICE),
        "long": card(430.5, 120.25, 60.0, name="Longer than a sheet", screws=screws),
    }
    return layout(
        vehicle={"name": "Plain bay"},
        bay={"wall": rectangle(-500, -500, 2500, 1500)},
        board={
            "outline": rectangle(31.7, -12.4, 1250.9, 394.0),
            "corner_radius": 12.0,
            "cutouts": [{"id": "HATCH", "outline": rectangle(610.3, 120.1, 705.9, 201.7)}],
        },
        cards=cards,
        gear=[
            gear("A1", 260.13, 180.77, "amp", turn=0),
            gear("A2", 930.401, 205.09, "amp", turn=90),
            gear("A3", 515.25, 250.5, "amp", turn=33.3),
            {"id": "L1", "card": "long", "at": None},
        ],
        fixings=[
            {"id": "H1", "at": [61.93, 17.77], "thread": "M6"},
            {"id": "H2", "at": [1221.1, 18.03], "thread": "1/4-20", "slot": {"travel": 5.5, "angle": 27.0}},
            {"id": "H3", "at": [640.07, 361.31], "thread": "M8", "slot": {"travel": 14.0, "angle": 90.0}},
        ],
    )


CORNERS = ((-90.15, -55.05), (90.15, -55.05), (90.15, 55.05), (-90.15, 55.05))
PORTS = [
    {"id": "12V", "kind": "power", "at": [-60, -70.85], "z": 20, "towards": 270, "plug": 40},
    {"id": "SPK", "kind": "speaker-out", "at": [40, -70.85], "z": 20, "towards": 270, "plug": 30, "ways": 4},
    {"id": "LINK", "kind": "data", "at": [106.15, 10], "z": 20, "towards": 0, "plug": 30},
]
SERVICE = [
    {"id": "gain", "kind": "dial", "at": [20, -20], "z": 52.4, "facing": "out", "tool": "screwdriver"},
    {"id": "main", "kind": "fuse", "at": [-106.15, 0], "z": 20, "facing": 180, "tool": "fingers"},
    {"id": "lamp", "kind": "light", "at": [0, 40], "z": 52.4, "facing": "out"},
]


def seam_board(seed, step=(185.9, 237.4)):
    """Return a random board, most of its holes within a hair of where sheets would plainly be cut."""
    rng = random.Random(seed)
    wide, high = rng.uniform(350, 1300), rng.uniform(200, 620)
    places, fixings = [], []
    for n in range(rng.randint(20, 60)):
        x = _near(rng, step[0], wide) if rng.random() < 0.7 else rng.uniform(8, wide - 8)
        y = _near(rng, step[1], high) if rng.random() < 0.7 else rng.uniform(8, high - 8)
        if all(hypot(x - a, y - b) >= APART for a, b in places):
            places.append((x, y))
            fixings.append({"id": f"H{n}", "at": [x, y], "thread": rng.choice(KINDS)})
    return layout(
        bay={"wall": rectangle(-500, -500, 2500, 1500)},
        board={"outline": rectangle(0, 0, wide, high)},
        fixings=fixings,
    )


def _near(rng, step, far):
    return min(max(rng.randint(1, 6) * step + rng.choice((-9.0, -0.5, 0.0, 0.5, 9.0)), 8.0), far - 8.0)
