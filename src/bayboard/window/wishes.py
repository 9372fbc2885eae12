"""What a person wishes of every window: how large, light or dark, how much moves.  Kept per user.

They stand in a file of the user's own settings folder, never in a vehicle.  A broken file is as good as none.
"""

import contextlib
import json
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import platformdirs

from bayboard.window.stillness import desktop_is_still
from bayboard.window.theme import DARK, LIGHT, SCALES, Theme

FILE = "wishes.json"
COLOURS = ("light", "dark", "as the system")
MOTIONS = ("as the system", "off")
LARGE_SCREEN = 24 * 25.4  # mm from corner to corner; over it one stands farther off, in the garage
GARAGE = 1.15  # the Scale that a large screen starts with


@dataclass(frozen=True, slots=True)
class Wishes:
    """How large type and targets are (one of SCALES), which colours, and whether anything moves."""

    size: float = 1.0
    colours: str = "as the system"
    motion: str = "as the system"

    def larger(self, by: int) -> "Wishes":
        """Return the wishes at the next Scale up (`by` 1) or down (-1); both ends have a stop."""
        at = SCALES.index(self.size) + by
        return replace(self, size=SCALES[min(max(at, 0), len(SCALES) - 1)])

    def theme(self, desktop_dark: bool) -> Theme:
        """Return the colours and size to wear on a desktop that is dark or not."""
        dark = desktop_dark if self.colours == "as the system" else self.colours == "dark"
        return (DARK if dark else LIGHT).sized(self.size)


_now = Wishes()


def wished() -> Wishes:
    """Return what is wished now."""
    return _now


def wish(wishes: Wishes, keep: bool = True) -> None:
    """Wish this from now on; `keep`: write it down, where that can be."""
    global _now  # noqa: PLW0603  one program, one person
    _now = wishes
    if keep:
        with contextlib.suppress(OSError):
            _folder().mkdir(parents=True, exist_ok=True)
            told = {"scale": wishes.size, "colours": wishes.colours, "motion": wishes.motion}
            (_folder() / FILE).write_text(json.dumps(told) + "\n", encoding="utf-8", newline="\n")


def read_wishes(across: float = 0.0) -> Wishes:
    """Return what was wished last; the first time, what suits a screen `across` mm from corner to corner."""
    first = Wishes(size=GARAGE if across > LARGE_SCREEN else 1.0)
    try:
        told = json.loads((_folder() / FILE).read_text(encoding="utf-8"))
    except (OSError, ValueError, RecursionError):
        return first
    return _understood(told if isinstance(told, dict) else {}, first)


def reduced_motion() -> bool:
    """Return whether nothing may move on the screen that only explains."""
    return _now.motion == "off" or desktop_is_still()


def _understood(told: dict[str, Any], first: Wishes) -> Wishes:
    size, colours, motion = told.get("scale"), told.get("colours"), told.get("motion")
    return Wishes(
        next((known for known in SCALES if known == size), first.size),
        next((known for known in COLOURS if known == colours), first.colours),
        next((known for known in MOTIONS if known == motion), first.motion),
    )


def _folder() -> Path:
    return Path(platformdirs.user_config_dir("Bayboard", appauthor=False))
