"""Scenes of air, warm boxes and swinging seats for random documents, in one cell, its corner at (x, y)."""

import math

from shapely import Polygon, box
from tests.plain.sketch import along, ell, rectangle

FACING = {"right": 0, "up": 90, "left": 180, "down": 270}


def warmth(sketch, x, y):
    """Set up one of the scenes in a cell, and now and then heat the board up to where it is worth a note."""
    scenes = (breath, breath, breath_out, swing, swing, swing, swing, stack)
    sketch.rng.choice(scenes)(sketch, x, y)
    if sketch.rng.random() < 0.4:
        _heat_up(sketch)


def _asked(sketch, *sides):
    """Return (air member, mm) that asks for air on some sides."""
    need = sketch.rng.choice([10, 25, 30.5])
    return dict.fromkeys(sides, need), need


def breath(sketch, x, y):
    """Stand a solid beside a side that asks for air, near what it asks, half of it, and the strip's rim."""
    rng = sketch.rng
    side = rng.choice(list(FACING))
    air, need = _asked(sketch, side, *rng.sample(list(FACING), rng.choice([0, 0, 1])))
    wide, high, deep = rng.choice([60, 80]), rng.choice([40, 50.8]), rng.choice([30, 45])
    turn, at = sketch.turn(), (x + 130, y + 110)
    piece = sketch.card(wide, high, deep, rng.choice([None, None, ell(wide, high)]), air=air)
    sketch.gear(piece, *at, turn, lift=rng.choice([0, 0, 12]))
    free = sketch.near(need, need / 2, need, 0, spread=6)
    out, half = (wide / 2, high / 2) if side in ("left", "right") else (high / 2, wide / 2)
    way = turn + FACING[side]
    aside = rng.choice([0, 5, half + 14.99, half + 15.01])
    what = rng.random()
    if what < 0.55:
        lift = rng.choice([0, 0, round(deep + rng.choice([-0.01, 0.01]), 6)])
        other = sketch.card(20, 30, rng.choice([30, 60, 11.99, 12.01]))
        sketch.gear(other, *along(*at, way, out + free + 10, aside), way, lift=lift)
    elif what < 0.8:
        ring = [
            along(*at, way, out + free + a, aside + b) for a, b in ((0, -15), (20, -15), (20, 15), (0, 15))
        ]
        height = round(sketch.front() + rng.choice([0.01, -0.01, 30]), 6)
        sketch.bay("stays", name="post", outline=[[round(v, 6) for v in p] for p in ring], height=height)
    else:
        foot = round(at[1] + high / 2 + free, 6)
        z = sketch.front() + rng.choice([5, deep - 0.01, deep + 0.01])
        up = [[z, foot], [z + 60, foot], [z + 60, foot + 90], [z, foot + 90]]
        _seat(sketch, [x + 20, x + rng.choice([260, 100.01])], up, None)


def breath_out(sketch, x, y):
    """Hold a shelf, a post or a seat over a piece that asks for air in front."""
    rng = sketch.rng
    air, need = _asked(sketch, "out")
    deep, at = rng.choice([30, 45]), (x + 120, y + 110)
    piece = sketch.card(80, 50, deep, rng.choice([None, ell(80, 50)]), air=air)
    sketch.gear(piece, *at, sketch.turn())
    free = sketch.near(need, need / 2, spread=6)
    what = rng.random()
    if what < 0.45:
        shelf = sketch.card(60, 40, 10)
        sketch.gear(shelf, at[0] + rng.choice([0, 40, 69.99, 70.01]), at[1], lift=round(deep + free, 6))
    elif what < 0.6:
        top = sketch.front() + deep + rng.choice([-0.01, 0.01])
        sketch.bay("stays", name="post", outline=rectangle(x + 130, y + 115, x + 190, y + 150), height=top)
    else:
        z = sketch.front() + deep + free
        lean = rng.choice([0, 5, -4])
        up = [[z, y + 60], [z + 60, y + 60], [z + 60 + lean, y + 180], [z + lean, y + 180]]
        _seat(sketch, [x + 20, x + rng.choice([230, 140])], up, None, give=rng.choice([0, 5]))


def stack(sketch, x, y):
    """Hang a warm piece over a hotter one, near touching in height and across."""
    rng = sketch.rng
    low, high = (sketch.card(60, 40, 30, heat=heat) for heat in (rng.choice([20, 20.01, 60, 60]), 20))
    at = (x + 110, y + 60)
    sketch.gear(low, *at, rng.choice([0, 90, 180]))
    across = rng.choice([0, 20, 31, sketch.near(60, 50, spread=1)])
    sketch.gear(high, at[0] + across, at[1] + 40 + rng.choice([sketch.near(0, 10, spread=1), 10, 60]), 0)


def swing(sketch, x, y):
    """Fold a seat past a piece that just clears it, or is just met."""
    rng = sketch.rng
    angle = rng.choice([-88, -60.5, 90, 45, -30, 0.7, 120, -150])
    hinge = (0, y + rng.choice([40, 110, 180]))
    wide, tall, foot = rng.choice([40, 60]), rng.choice([60, 120]), rng.choice([-50, -15, 0])
    rel = [[-wide / 2, foot], [wide / 2, foot], [wide / 2, tall], [-wide / 3, tall]]
    up = [[round(z, 6), round(hinge[1] + b, 6)] for z, b in rel]
    ring = rng.choice([None, ell(80, 50)])
    turn, deep, at = rng.choice([0, 0, 90, 24]), rng.choice([30, 45]), (x + 130, y + 100)
    steps = math.ceil(abs(angle))
    ways = [_turned(up, hinge, angle * k / steps) for k in range(1, steps + 1)]
    seen = [Polygon(way).intersection(box(-500, at[1] - 25, 500, at[1] + 25)) for way in ways]
    least = min((shape.bounds[0] for shape in seen if shape.area > 1), default=-60)
    z = round(sketch.front() + deep - least - sketch.near(0, 2, 2, 8, spread=3), 6)
    moved = [[round(a + z, 6), b] for a, b in up]
    folded = [[round(a, 6), round(b, 6)] for a, b in _turned(moved, (z, hinge[1]), angle)]
    members = {"hinge": [z, hinge[1]], "swing": angle}
    if rng.random() < 0.2:
        off = sketch.near(15, spread=2)
        folded = [[round(a + off, 6), b] for a, b in folded]
    elif rng.random() < 0.5:
        members["swing"] = None
    if rng.random() < 0.06:
        members["hinge"] = None
    sketch.gear(sketch.card(80, 50, deep, ring), *at, turn)
    _seat(sketch, rng.choice([[x + 10, x + 260], [x + 10, x + 110]]), moved, folded, **members)


def _turned(ring, hinge, angle):
    c, s = math.cos(math.radians(angle)), math.sin(math.radians(angle))
    rel = [(z - hinge[0], y - hinge[1]) for z, y in ring]
    return [[hinge[0] + c * a - s * b, hinge[1] + s * a + c * b] for a, b in rel]


def _seat(sketch, x, up, folded, **members):
    up = [[round(z, 6), round(y, 6)] for z, y in up]
    sketch.bay("seats", x=x, up=up, folded=folded, **members)


def _heat_up(sketch):
    """Give one piece the heat that brings the first board about to where it is worth a note."""
    rng, doc = sketch.rng, sketch.doc
    board = doc["boards"][0]
    face = Polygon(board["outline"]).area - sum(Polygon(c["outline"]).area for c in board.get("cutouts", []))
    face -= (4 - math.pi) * board.get("corner_radius", 0) ** 2
    cards = [doc["cards"][gear["card"]] for gear in doc["gear"]]
    if not cards:
        return
    face += sum(Polygon(card["outline"]).area for card in cards)
    hot = rng.choice([card for card in cards if cards.count(card) == 1] or cards)
    others = sum(card["heat"] or 0 for card in cards if card is not hot)
    if cards.count(hot) == 1:
        watts = 20 * 5 * face / 1e6 * (1 + rng.choice([-1e-3, 1e-3, 0.2, 0])) - others
        hot["heat"] = round(max(watts, 0), 6)
