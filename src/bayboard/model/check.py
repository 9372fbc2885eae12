"""What must be true of every layout beyond its form; `check` is the one door.

Reading order: `check_names` (ids), `check_figures` (numbers), `check_shapes` (outlines), `check_links`
(what points at what).
"""

from bayboard.model.check_figures import check_figures
from bayboard.model.check_links import check_links
from bayboard.model.check_names import check_names
from bayboard.model.check_shapes import check_shapes
from bayboard.model.layout import Layout
from bayboard.model.things import things


def check(layout: Layout) -> None:
    """Raise `Refused` for the first thing of a layout that cannot be so."""
    found = list(things(layout))
    check_names(layout, found)
    check_figures(layout, found)
    check_shapes(found)
    check_links(layout)
