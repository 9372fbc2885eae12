"""What a stage brings into the window: its widgets for the five places, and its own acts.

A stage that is not built is not in the list, and so is never shown.  A place it leaves None keeps
Arrange's widget.
"""

from dataclasses import dataclass
from typing import Literal

from PySide6.QtWidgets import QWidget

from bayboard.window.keys import told

Panels = Literal["in turn", "card", "all"]  # Card and Findings in turn, the Card alone, or all three


@dataclass(frozen=True, slots=True)
class Stage:
    """A stage of the work: its name on the lath, and the number of its Ctrl key.

    `rooms` are those of the rules that shout on it; () leaves who shouts as it was.
    """

    name: str
    key: int
    rooms: tuple[str, ...] = ()


ARRANGE = Stage("Arrange", 2, ("measure", "arrange", "keep"))


@dataclass
class Panes:
    """A stage's widgets, children of the main window.  `wall` takes the Wall's place and so on.

    A `bench` that is `wide` takes the Findings' place, too.
    """

    stage: Stage
    wall: QWidget | None = None
    section: QWidget | None = None
    bench: QWidget | None = None
    findings: QWidget | None = None
    card: QWidget | None = None
    wide: bool = False

    def panels(self) -> Panels:
        """Return which panels of the bottom row the stage needs where not all of them have room."""
        if self.stage.name == ARRANGE.name or self.card is None:
            return "in turn"
        return "all" if self.wide or self.findings is not None else "card"

    def act(self, name: str) -> bool:
        """Do an act of `keys.BINDINGS` in the stage's own way; return whether it was one of its own."""
        return False

    def shown(self) -> None:
        """Be told that the stage is on screen now."""

    def left(self) -> None:
        """Be told that another stage is on screen now."""

    def state(self) -> str:
        """Return what the strip says below the vehicle's name while this is on screen, "" for the usual."""
        return ""

    def keys(self) -> tuple[tuple[str, str], ...]:
        """Return the lines of F1: keys and what they do in this stage."""
        return told()

    def dress(self) -> None:
        """Wear the workplace's colours."""
