"""A plain bay to begin with: a wall and a board, until somebody measures the vehicle."""

from bayboard.model.layout import Bay, Board, Layout, Outline, Units, Vehicle
from bayboard.window.steps import INCH


def plain_layout(units: Units) -> Layout:
    """Return a layout with a plain wall, a plain board on it and nothing else."""
    unit = INCH if units == "in" else 25.0
    return Layout(
        vehicle=Vehicle(name="New vehicle"),
        units=units,
        bay=Bay(wall=_rectangle(0.0, 0.0, 48 * unit, 22 * unit)),
        boards=(
            Board(
                id="B",
                outline=_rectangle(3 * unit, 3 * unit, 45 * unit, 19 * unit),
                corner_radius=unit,
                thickness=unit / 2,
                standoff=unit,
            ),
        ),
    )


def _rectangle(x0: float, y0: float, x1: float, y1: float) -> Outline:
    return ((x0, y0), (x1, y0), (x1, y1), (x0, y1))
