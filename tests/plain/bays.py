"""Random bays full of gear and leads: turned pieces, L-shapes, cut-outs, fixings, an L-shaped board."""

from random import Random

import shapely
from shapely.affinity import rotate, translate
from tests.build import card, document, gear, rectangle

EL = [[-60, -40], [60, -40], [60, 0], [0, 0], [0, 40], [-60, 40]]
SIX = [[-40, -35], [40, -35], [60, 0], [40, 35], [-40, 35], [-60, 0]]
SIDES = {"E": (1, 0, 0), "W": (-1, 0, 180), "N": (0, 1, 90), "S": (0, -1, 270)}


def _ports(wide, high):
    side = {"kind": "signal-out", "z": 10, "plug": 15, "ways": 9}
    ports = [
        side | {"id": name, "at": [x * wide / 2, y * high / 2], "towards": way}
        for name, (x, y, way) in SIDES.items()
    ]
    return [*ports, side | {"id": "O", "at": [0, high / 2 - 10], "towards": "out", "plug": 30}]


CARDS = {
    "brick": card(150, 80, 40, ports=_ports(150, 80)),
    "cube": card(60, 60, 40, ports=_ports(60, 60)),
    "el": card(120, 80, 40, outline=EL, ports=_ports(120, 80)[1:2] + _ports(120, 80)[3:4]),
    "six": card(120, 70, 40, outline=SIX, ports=_ports(120, 70)),
}
ELL_BOARD = [[0, 0], [1000, 0], [1000, 180], [520, 180], [520, 400], [0, 400]]


def bay(seed, pieces=8, leads=12, wide=1000, high=400, ods=(6.0,), gap=3.0):
    """Return a document of `pieces` stand-ins that lie apart on the board and `leads` leads among them."""
    random = Random(seed)
    whole = ELL_BOARD if seed % 3 == 2 else rectangle(0, 0, wide, high)
    room = shapely.Polygon(whole).buffer(-25)
    hole = shapely.box(wide / 2 - 30, high / 4, wide / 2 + 20, high / 4 + 40)
    taken, pieces_placed = [hole], []
    for _ in range(400 * pieces):
        name = random.choice(sorted(CARDS))
        x, y = random.uniform(0, wide), random.uniform(0, high)
        turn = random.choice([0, 90, 180, 270, random.uniform(0, 360)])
        shape = translate(rotate(shapely.Polygon(CARDS[name]["outline"]), turn, origin=(0, 0)), x, y)
        if room.covers(shape) and all(shape.distance(other) > gap for other in taken):
            taken.append(shape)
            pieces_placed.append(gear(f"G{len(taken)}", x, y, name, turn=turn))
        if len(pieces_placed) == pieces:
            break
    ends = [f"{g['id']}.{p['id']}" for g in pieces_placed for p in CARDS[g["card"]]["ports"]]
    made = []
    for number in range(leads):
        a, b = random.sample([*ends, "E1", "E2"], 2)
        made.append({"id": f"C{number}", "from": a, "to": b, "size": None, "od": random.choice(ods)})
    entries = [
        {
            "id": "E1",
            "name": "left",
            "at": [-40, random.uniform(50, high - 50)],
            "carries": ["signal"],
            "run": 0,
        },
        {"id": "E2", "name": "on", "at": [wide / 2 - 60, 20], "carries": ["signal"], "run": 0},
    ]
    fixings = [{"id": f"X{k}", "at": [40 + 180 * k, high - 12], "thread": "M6"} for k in range(3)]
    cutouts = [{"id": "K1", "outline": [list(p) for p in hole.exterior.coords[:-1]]}]
    board = {"outline": whole, "corner_radius": 20, "cutouts": cutouts}
    return document(
        bay={"entries": entries}, board=board, cards=CARDS, gear=pieces_placed, leads=made, fixings=fixings
    )
