"""Random legal documents that aim at the limits: half of the quantities lie within 0.01 of one.

A board of eight cells; in each cell one scene of `random_scenes` sets up what one rule looks at.  Scenes
disturb one another now and then, and that is wanted.
"""

import random

from tests.plain import random_scenes as scenes
from tests.plain.random_kept import drill, print_sheets
from tests.plain.random_measure import measure
from tests.plain.random_warm import warmth
from tests.plain.sketch import Sketch, rectangle

WIDE, HIGH = 300, 240  # one cell

SCENES = (
    scenes.gap,
    scenes.gap,
    scenes.gap,
    scenes.overlap,
    scenes.edge,
    scenes.edge,
    scenes.seat,
    scenes.seat,
    scenes.seat_over_lead,
    scenes.sight,
    scenes.canyon,
    scenes.canyon,
    scenes.pit,
    scenes.plug,
    scenes.plug,
    scenes.plug_out,
    scenes.stay,
    scenes.stay,
    scenes.beside,
    scenes.beside,
    scenes.crossing,
    scenes.crossing,
    scenes.through,
    scenes.through,
    scenes.fixing,
    scenes.fixing,
    scenes.holes,
    scenes.holes,
    scenes.routed,
)

OWN_LIMITS = {
    "gap_must": 9,
    "gap_should": 12,
    "gap_cold": 3,
    "cold_watts": 30,
    "seat_margin": 12,
    "probe_reach": 40,
    "sight_angle": 12,
    "corridor_length": 90,
    "corridor_fingers": 30,
    "corridor_driver": 8,
    "bend_od": 3,
    "beside_should": 12,
    "crossing_should": 45,
    "insert_margin": 1,
    "no_drill_margin": 5,
    "edge_d": 12,
    "pitch_d": 3,
    "air_must_share": 0.8,
    "warm_watts": 30,
    "rise_note": 8,
    "swing_off": 4,
}


def random_document(seed):
    """Return a legal document, always the same for a seed."""
    rng = random.Random(seed)
    sketch = Sketch(rng, _frame(rng))
    cells = [(100 + WIDE * i, 50 + HIGH * j) for i in range(4) for j in range(2)]
    rng.shuffle(cells)
    for cell, scene in zip(cells[: rng.randint(4, 7)], rng.sample(SCENES, 7), strict=False):
        scene(sketch, *cell)
    if rng.random() < 0.2:
        _second_board(sketch)
    measure(sketch)
    warmth(sketch, *cells[-1])
    _loosen(sketch)
    if rng.random() < 0.3:
        drill(sketch)
    if rng.random() < 0.35:
        print_sheets(sketch)
    return sketch.doc


def _frame(rng):
    """Return a document of wall and board: plain, L-shaped or with a notch, its corners sharp or round."""
    low = rng.choice([50, 50, 40])
    shapes = [
        rectangle(100, low, 1300, 530),
        [[100, low], [1300, low], [1300, 290], [1000, 290], [1000, 530], [100, 530]],
        [
            [100, low],
            [600, low],
            [600, 90],
            [660, 90],
            [660, low],
            [1300, low],
            [1300, 530],
            [130, 530],
            [100, 500],
        ],
    ]
    outline = rng.choice(shapes)
    radius = rng.choice([0, 0, 5, 12])
    if rng.random() < 0.3:
        outline = outline[::-1]
    edge = rng.choice([60, rng.uniform(0, 60), 100.005, 100.02, 104, 99.995])
    doc = {
        "bayboard": 1,
        "vehicle": {"name": "Invented bay"},
        "bay": {
            "wall": rectangle(edge, 0, 1600, 560),
            "lined": rng.choice([0, 0, 3]),
            "lean": rng.choice([0, 0, 0, 0, 30, 45, 45.1, 90, -90]),
        },
        "boards": [
            {
                "id": "BD",
                "outline": outline,
                "corner_radius": radius,
                "thickness": rng.choice([9, 12, 12.7]),
                "standoff": rng.choice([15, 20, 25.4]),
            }
        ],
        "cards": {},
        "gear": [],
        "leads": [],
        "fixings": [],
    }
    for many in ("landings", "stays", "no_drill", "seats", "entries"):
        doc["bay"][many] = []
    return doc


def _second_board(sketch):
    """Add a board at the right, a piece that may stand across to the first, and a lead between the two."""
    rng, doc = sketch.rng, sketch.doc
    doc["boards"].append(
        {
            "id": "BD2",
            "outline": rectangle(1310, 60, 1580, 500),
            "thickness": 9,
            "standoff": rng.choice([20, 24, 40]),
        }
    )
    card = sketch.card(80, 60, rng.choice([30, 50]), ports=[sketch.port("P", "remote", 0, -30, 270)])
    here = sketch.gear(card, rng.choice([1352, 1400, 1349.995]), 200, rng.choice([0, 0, 37.5]), board="BD2")
    there = sketch.gear(card, 1220, rng.choice([200, 120]), 0)
    bends = [[1220, 60], [1352, 90]] if rng.random() < 0.7 else []
    sketch.lead(f"{there}.P", f"{here}.P", size=None, via=bends)
    sketch.fixing(1330, 120, board="BD2")


def _loosen(sketch):
    """Forget a measure here and there, guess some, put a piece back on the bench, change a limit."""
    rng, doc = sketch.rng, sketch.doc
    _forget(rng, doc)
    if doc["gear"] and rng.random() < 0.15:
        rng.choice(doc["gear"])["at"] = None
    if rng.random() < 0.1:
        doc["limits"] = dict(rng.sample(sorted(OWN_LIMITS.items()), rng.choice([1, 1, 3])))
    if rng.random() < 0.04:
        doc["bay"]["wall"] = []
    eye = doc["bay"].setdefault("eye", {})
    if not eye and rng.random() < 0.93:
        x, y, z = rng.uniform(-200, 1400), rng.uniform(300, 700), rng.uniform(500, 700)
        eye |= {"x": [x, x + rng.choice([0, 100, 260])], "y": [y, y + rng.choice([0, 150])], "z": [z, z]}
    if rng.random() < 0.2:
        eye.pop("z", None)


def _forget(rng, doc):
    for card in doc["cards"].values():
        if rng.random() < 0.05:
            card["height"] = None
        if rng.random() < 0.08:
            card["guessed"] = rng.sample(
                ["height", "outline", "solids", "ports", "service", "screws", "heat", "mass"], 2
            )
    for stay in doc["bay"]["stays"]:
        if rng.random() < 0.08:
            stay["height"] = None
    for seat in doc["bay"]["seats"]:
        for member in ("up", "folded"):
            if rng.random() < 0.08:
                seat[member] = None
    for lead in doc["leads"]:
        if rng.random() < 0.08:
            lead["size"] = lead["od"] = None
    for entry in doc["bay"]["entries"]:
        if rng.random() < 0.05:
            entry["run"] = None
