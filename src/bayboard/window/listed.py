"""A painted view that tells a screen reader what it holds, as a list of sentences."""

from collections.abc import Sequence

from PySide6.QtCore import QRectF


class Listed:
    """What a view mixes in: its parts as sentences, where each lies, and which of them are selected."""

    reads_as = ""  # the list's own name

    def parts_said(self) -> Sequence[str]:
        """Return the sentences of the parts, in order."""
        return ()

    def part_rect(self, index: int) -> QRectF:
        """Return where a part lies, in pixels of the view."""
        return QRectF()

    def part_held(self, index: int) -> bool:
        """Return whether a part is selected."""
        return False
