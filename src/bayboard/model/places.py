"""Where something stands in a document, spelled for people: `gear A2 › at`."""

import json
from collections.abc import Sequence
from typing import Any

Path = Sequence[str | int]

LONGEST = 40  # letters of a stranger's text that a sentence repeats
DEEPEST = 8  # steps that a place spells; no layout has more
STEP = " › "
_ONE = {
    "boards": "board",
    "cards": "card",
    "leads": "lead",
    "fixings": "fixing",
    "photos": "photo",
}


def spell(path: Path, root: object) -> str:
    """Return the place that `path` (members and list indices from `root`) leads to.

    Things with an id are named by it, others by their number from 1; the numbers within a point are left out.
    """
    parts: list[str] = []
    here: Any = root
    for depth, step in enumerate(path):
        item = here[step]
        if isinstance(step, str):
            if depth == 1 and path[0] == "cards":
                parts[-1] += f" {label(step)}"
            else:
                parts.append(heading(step) if depth == 0 and len(path) > 1 else label(step))
        elif isinstance(item, dict):
            parts[-1] += f" {_name(item, step)}"
        elif isinstance(item, list | tuple):
            parts.append(f"point {step + 1}")
        here = item
    return STEP.join(parts if len(parts) <= DEEPEST else [*parts[:DEEPEST], "…"])


def heading(member: str) -> str:
    """Return how a place starts: `board` for the member `boards`."""
    return _ONE.get(member, label(member))


def step_to(place: str, *steps: str) -> str:
    """Return the place that lies `steps` further in."""
    return STEP.join(part for part in (place, *steps) if part)


def _name(item: dict[str, Any], index: int) -> str:
    given = item.get("id")
    return label(given) if isinstance(given, str) and given else f"#{index + 1}"


def label(text: str) -> str:
    """Return `text` fit for a place: bare when plain, quoted and shortened when it is not."""
    return text if text.isprintable() and text.strip() and len(text) <= LONGEST else quoted(text)


def quoted(text: str) -> str:
    """Return `text` between quotes on one line, cut after `LONGEST` letters."""
    short = text if len(text) <= LONGEST else text[: LONGEST - 1] + "…"
    spelled = json.dumps(short, ensure_ascii=False)
    return spelled if spelled.isprintable() else json.dumps(short)


def spoken(value: object) -> str:
    """Return a JSON value as a sentence names it: `null`, `"abc"`, `3.5`, `a list`, `an object`."""
    if isinstance(value, str):
        return quoted(value)
    if isinstance(value, dict):
        return "an object"
    if isinstance(value, list | tuple):
        return f"a list of {len(value)}" if value else "an empty list"
    if value is None or isinstance(value, bool):
        return {None: "null", True: "true", False: "false"}[value]
    return f"{value:.12g}" if isinstance(value, int | float) else f"a {type(value).__name__}"
