"""on-landing, on-vent, lining-cut and way-in, said plainly."""

import numpy as np
from shapely import Polygon
from shapely.ops import unary_union
from tests.plain.arrange import guessed
from tests.plain.shapes import rounded, under

SPECK = 0.01  # mm2; less is touching


def on_landing(bay):
    """Say which boards meet metal that stands proud."""
    lined = bay.bay.get("lined", 0)
    for landing in bay.bay.get("landings", []):
        if landing["recess"] is None:
            yield ((landing["id"],),)
            continue
        metal = Polygon(landing["outline"])
        for name, board in bay.boards.items():
            left = board["standoff"] + landing["recess"] - lined
            if bay.shapes[name].intersection(metal).area > SPECK and under(left, 0):
                yield "must", (landing["id"], name), left, 0


def on_vent(bay):
    """Say which vents breathe less with a board before them."""
    lined = bay.bay.get("lined", 0)
    for vent in bay.bay.get("vents", []):
        opening = Polygon(vent["outline"])
        free = vent.get("free_area")
        free = opening.area if free is None else free
        for name, board in bay.boards.items():
            covered = bay.shapes[name].intersection(opening)
            if covered.area <= SPECK:
                continue
            edge = min(covered.length, Polygon(bay.wholes[name].exterior).length)
            behind = max(board["standoff"] - lined, 0)
            left = edge * behind + (1 - covered.area / opening.area) * free
            if under(left, free):
                yield "must", (vent["id"], name), left, free


def lining_cut(bay):
    """Say how much of a lining boards and deep gear want away."""
    for lining in bay.bay.get("linings", []):
        thick = lining["thickness"]
        if thick is None:
            yield ((lining["id"],),)
            continue
        meets = [bay.shapes[name] for name, board in bay.boards.items() if board["standoff"] < thick - 1e-9]
        deep = [piece for piece in bay.pieces.values() if piece.under < thick - 1e-9]
        meets += [piece.shape for piece in deep]
        yield from (((piece.id,),) for piece in deep if guessed(piece, "outline"))
        away = unary_union(meets).intersection(Polygon(lining["outline"])).area if meets else 0
        if away > SPECK:
            yield "note", (lining["id"],), away, None


def way_in(bay):
    """Say which boards do not go through the way into the vehicle, lengthwise and edge-on."""
    way = bay.bay.get("way_in")
    for name, board in bay.boards.items():
        if way is None:
            yield ((name,),)
            continue
        over = least_width(rounded(board["outline"], board.get("corner_radius", 0))) - max(way)
        if over > 1e-9:
            yield "should", (name,), over, 0


def least_width(ring):
    """Return the least distance of two parallel lines that hold a ring: one of them lies along an edge."""
    hull = np.array(Polygon(ring).convex_hull.exterior.coords)
    edge = np.diff(hull, axis=0)
    across = np.column_stack((edge[:, 1], -edge[:, 0])) / np.hypot(edge[:, 0], edge[:, 1])[:, None]
    return float(np.ptp(across @ hull.T, axis=1).min())
