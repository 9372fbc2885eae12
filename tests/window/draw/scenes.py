"""Scenes and images for the painters' tests: a bay with a bit of everything, and the odd ones."""

from typing import Any

import numpy as np
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QImage, QPainter
from tests.build import card, gear, layout, rectangle

from bayboard.model.layout import Layout
from bayboard.routing.route import Route
from bayboard.rules.scene import Scene
from bayboard.window.draw.scale import Scale

VIEW = QRectF(0, 0, 900, 560)
SCALE = Scale(0.6, 90.0, 420.0)  # the plain bay, 1200 x 600, well inside the view


def image(size: QRectF = VIEW) -> QImage:
    """Return an image of a colour that no painter uses."""
    made = QImage(int(size.width()), int(size.height()), QImage.Format.Format_ARGB32_Premultiplied)
    made.fill(QColor("#FF00FF"))
    return made


def painted(paint: Any, size: QRectF = VIEW) -> QImage:
    """Return what `paint(painter)` paints."""
    made = image(size)
    with QPainter(made) as p:
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        paint(p)
    return made


def at(made: QImage, spot: QPointF) -> str:
    """Return the colour of a pixel as "#rrggbb"."""
    return made.pixelColor(round(spot.x()), round(spot.y())).name()


def near(made: QImage, spot: QPointF, token: str, off: int = 24) -> bool:
    """Return whether a pixel has nearly the colour of a token, channel by channel."""
    a, b = made.pixelColor(round(spot.x()), round(spot.y())), QColor(token)
    return max(abs(a.red() - b.red()), abs(a.green() - b.green()), abs(a.blue() - b.blue())) <= off


def count(made: QImage, box: QRectF, token: str, off: int = 24) -> int:
    """Return how many pixels of a box have nearly the colour of a token."""
    return sum(
        near(made, QPointF(x, y), token, off)
        for x in range(int(box.left()), int(box.right()) + 1)
        for y in range(int(box.top()), int(box.bottom()) + 1)
        if made.rect().contains(x, y)
    )


def port(name: str, kind: str, x: float, y: float, towards: float | str, ways: int = 1) -> dict[str, Any]:
    """Return a port of a card."""
    return {"id": name, "kind": kind, "at": [x, y], "z": 20, "towards": towards, "plug": 40, "ways": ways}


AMP = card(
    200,
    120,
    45,
    name="Fourfold",
    kind="amplifier",
    screws=[{"at": [x, y], "thread": "M5"} for x in (-90, 90) for y in (-50, 50)],
    ports=[
        port("b", "power", -80, -60, 270),
        port("g", "ground", -55, -60, 270),
        port("s", "speaker-out", 10, -60, 270, 4),
        port("i", "signal-in", 70, -60, 270, 2),
        port("r", "remote", 0, 0, "out"),
    ],
    service=[
        {"id": "d", "kind": "dial", "at": [50, -20], "z": 40, "facing": "out"},
        {"id": "f", "kind": "fuse", "at": [-60, 12], "z": 40, "facing": 270, "tool": "fingers"},
    ],
)
BAY = {
    "landings": [{"id": "L1", "outline": rectangle(50, 20, 150, 120), "recess": 18}],
    "stays": [{"id": "S1", "name": "latch", "outline": rectangle(450, 430, 520, 480), "height": 30}],
    "linings": [{"id": "N1", "name": "carpet", "outline": rectangle(-80, -80, 0, 400), "thickness": 8}],
    "vents": [{"id": "V1", "outline": rectangle(200, -80, 380, -40)}],
    "no_drill": [{"id": "D1", "name": "harness", "outline": rectangle(700, 10, 900, 60)}],
    "entries": [
        {"id": "battery", "name": "battery", "at": [1040, -60], "carries": ["power"], "run": 3000},
        {"id": "doors", "name": "doors", "at": [500, -70], "carries": ["speaker"], "run": None},
    ],
    "seats": [
        {
            "id": "BENCH",
            "x": [0, 1000],
            "up": [[140, 10], [300, 10], [330, 380], [170, 380]],
            "folded": [[120, -20], [600, -20], [600, 90], [120, 90]],
            "hinge": [150, 10],
            "probes": [[300, 60, 130]],
        }
    ],
}


def full(**members: Any) -> Layout:
    """Return a layout with a bit of everything; A1 stands mid-board, A2 turned, A3 waits."""
    plain: dict[str, Any] = {
        "bay": BAY,
        "board": {"corner_radius": 12, "cutouts": [{"id": "C1", "outline": rectangle(600, 250, 660, 300)}]},
        "cards": {"amp": AMP},
        "gear": [
            gear("A1", 200, 250, "amp", taped=True),
            gear("A2", 450, 250, "amp", turn=90),
            {"id": "A3", "card": "amp", "at": None},
            gear("B1", 800, 300, "box"),
        ],
        "leads": [
            {"id": "W1", "from": "battery", "to": "A1.b", "size": "4 AWG"},
            {"id": "W2", "from": "A2.s", "to": "doors", "size": None},
        ],
        "fixings": [
            {"id": "H1", "at": [40, 360], "thread": "M6"},
            {"id": "H2", "at": [960, 360], "thread": "M6", "slot": {"travel": 6, "angle": 0}},
            {"id": "H3", "at": [40, 40], "thread": "M6", "drilled": [40, 40]},
        ],
    }
    return layout(**(plain | members))


def route(lead: str, kind: str | None, points: list[tuple[float, float]], od: float = 10) -> Route:
    """Return a route over the plain board."""
    return Route(lead, kind, "BD", np.array(points, dtype=float), od, True)  # type: ignore[arg-type]


def scene(made: Layout | None = None) -> Scene:
    """Return the scene of a layout (else of `full()`) with two routes drawn by hand."""
    routes = {
        "W1": route("W1", "power", [(1040, -60), (1040, 100), (120, 100), (120, 190)]),
        "W2": route("W2", "speaker", [(500, 200), (500, -70)], 6),
    }
    return Scene(made or full(), known_routes=routes)
