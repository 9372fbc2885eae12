"""The map of a print: where each thing's own origin lies on its page, as `print --map` writes it."""

from collections.abc import Sequence
from typing import Any

from bayboard.paper.marks import Page, Shown

DIGITS = 4  # figures are rounded to 0.0001


def page_map(pages: Sequence[Page]) -> dict[str, Any]:
    """Return the map as a JSON value: mm from the page's lower left corner, degrees counter-clockwise."""
    return {
        "pages": [
            {
                "page": number,
                "sheet": page.sheet,
                "size": [_figure(v) for v in page.size],
                "shows": [_shown(s) for s in page.shows],
            }
            for number, page in enumerate(pages, start=1)
        ]
    }


def _shown(shown: Shown) -> dict[str, Any]:
    told: dict[str, Any] = {
        "what": shown.what,
        "id": shown.id,
        "at": [_figure(v) for v in shown.at],
        "turn": _figure(shown.turn),
    }
    if shown.part:
        told["part"] = [[_figure(x), _figure(y)] for x, y in shown.part]
    return told


def _figure(value: float) -> float:
    return round(value, DIGITS) + 0.0
