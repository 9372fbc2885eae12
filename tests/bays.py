"""Whole bays for tests and long runs: many stand-ins in rows, leads, seats, stays and cut-outs."""

import random
from typing import Any

from tests.build import card, rectangle

CELL = 160, 120  # mm; room for one stand-in
PORTS = (
    ("P", "power", -1),
    ("G", "ground", -1),
    ("R", "remote", -1),
    ("I", "signal-in", 1),
    ("O", "signal-out", 1),
    ("S", "speaker-out", 1),
)
FEEDS = (("P", "PE"), ("G", "GE"), ("O", "SE"))  # a port that passes something on, and where it comes from


def bay(
    pieces: int, seed: int = 1, across: int = 8, jitter: float = 12.0, chained: bool = False
) -> dict[str, Any]:
    """Return a document of `pieces` stand-ins, three leads each, on one board; some of it is wrong.

    A hundred go well with 12 across.  `chained`: power, ground and remote go on from neighbour to neighbour
    and nothing carries a signal, so that about 60 findings are left at 40 and none of the leads' noise.
    """
    dice = random.Random(seed)
    rows = -(-pieces // across)
    wide, high = across * CELL[0], rows * CELL[1]
    return {
        "bayboard": 1,
        "vehicle": {"name": f"Bay {seed}"},
        "bay": {
            "wall": rectangle(-200, -200, wide + 200, high + 200),
            "landings": [
                {
                    "id": f"L{n}",
                    "outline": rectangle(x, 20, x + 60, 80),
                    "recess": 10,
                    "sheet": 1.5,
                    "behind": 60,
                }
                for n, x in enumerate(range(40, wide - 60, 320))
            ],
            "stays": [
                {
                    "id": "post",
                    "name": "Post",
                    "outline": rectangle(wide * 0.4, -60, wide * 0.4 + 30, 30),
                    "height": 70,
                },
                {
                    "id": "catch",
                    "name": "Catch",
                    "outline": rectangle(wide * 0.7, high - 30, wide * 0.7 + 25, high),
                    "height": 12,
                },
            ],
            "no_drill": [{"id": "loom", "name": "Loom", "outline": rectangle(300, -20, 340, high + 20)}],
            "seats": [_seat("left", 0, wide * 0.6, high), _seat("right", wide * 0.6, wide, high)],
            "entries": [
                {
                    "id": "PE",
                    "name": "Battery",
                    "at": [-60, 40],
                    "carries": ["power"],
                    "run": 2000,
                    "way": "sill",
                },
                {"id": "GE", "name": "Chassis", "at": [-60, 60], "carries": ["ground"], "run": 300},
                {
                    "id": "SE",
                    "name": "Radio",
                    "at": [-60, 80],
                    "carries": ["signal", "remote"],
                    "run": 1500,
                    "way": "sill",
                },
            ],
        },
        "boards": [
            {
                "id": "BD",
                "outline": rectangle(0, 0, wide, high),
                "corner_radius": 25,
                "cutouts": [
                    {
                        "id": "CO",
                        "outline": rectangle(wide * 0.55, high * 0.5 - 8, wide * 0.55 + 40, high * 0.5 + 8),
                    }
                ],
                "thickness": 12,
                "standoff": 20,
            }
        ],
        "cards": {name: _card(name) for name in ("amp", "bent", "low")},
        "gear": [_gear(n, across, dice, jitter) for n in range(pieces)],
        "leads": [lead for n in range(pieces) for lead in _leads(n, chained)],
        "fixings": [
            {"id": f"F{n}", "at": [x, 50], "thread": "M6"} for n, x in enumerate(range(70, wide, 320))
        ],
    }


def _seat(name: str, x0: float, x1: float, high: float) -> dict[str, Any]:
    up = [[150, -100], [60 if name == "right" else 110, high + 300], [300, high + 300], [300, -100]]
    folded = [[140, -150], [140, high * 0.3], [320, high * 0.3], [320, -150]]
    return {"id": name, "x": [x0, x1], "up": up, "folded": folded, "probes": [[x0 + 60, high / 2, 100]]}


def _card(name: str) -> dict[str, Any]:
    wide, high = {"amp": (100, 70), "bent": (100, 80), "low": (70, 50)}[name]
    members: dict[str, Any] = {"heat": 40, "current": 20, "fuse": 30, "kind": "amplifier"}
    if name == "bent":
        members["outline"] = [[-50, -40], [50, -40], [50, 0], [0, 0], [0, 40], [-50, 40]]
    members["ports"] = [
        {
            "id": port,
            "kind": kind,
            "at": [side * wide / 2, (0.25 * (n % 3) - 0.4) * high],
            "z": 12,
            "towards": 180 if side < 0 else 0,
            "plug": 15,
            "ways": 2,
        }
        for n, (port, kind, side) in enumerate(PORTS)
    ]
    members["service"] = [
        {"id": "gain", "kind": "dial", "at": [-20, -10], "z": 45, "facing": "out", "tool": "screwdriver"},
        {"id": "fuse", "kind": "fuse", "at": [-wide / 2, -12], "z": 20, "facing": 180, "tool": "fingers"},
        {"id": "lamp", "kind": "light", "at": [-30, 10], "z": 45, "facing": "out"},
    ]
    members["screws"] = [{"at": [x * (wide / 2 - 8), -high / 2 + 8], "thread": "M5"} for x in (-1, 1)]
    return card(wide, high, 45, **members)


def _gear(n: int, across: int, dice: random.Random, jitter: float) -> dict[str, Any]:
    x, y = (n % across + 0.5) * CELL[0], (n // across + 0.5) * CELL[1]
    at = [round(x + dice.uniform(-jitter, jitter), 3), round(y + dice.uniform(-jitter, jitter), 3)]
    turn = dice.choice([0, 0, 0, 90, 180, 12.5])
    return {
        "id": f"A{n}",
        "card": dice.choice(["amp", "bent", "low"]),
        "at": at,
        "turn": turn,
        "lift": dice.choice([0, 0, 8]),
    }


def _leads(n: int, chained: bool) -> list[dict[str, Any]]:
    power, ground, source = (f"A{n - 1}.{port}" if n else entry for port, entry in FEEDS)
    signal = {"id": f"S{n}", "from": source, "to": f"A{n}.I", "size": None}
    if not chained:
        power, ground = "PE", "GE"
    else:
        signal |= {"from": f"A{n - 1}.R" if n else "SE", "to": f"A{n}.R"}
    return [
        {"id": f"P{n}", "from": power, "to": f"A{n}.P", "size": "8 AWG"},
        {"id": f"G{n}", "from": f"A{n}.G", "to": ground, "size": "8 AWG"},
        signal,
    ]
