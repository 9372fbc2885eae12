"""The settings on a sheet below the strip: Scale, colours, motion.  They hold at once, in every stage."""

from dataclasses import replace

from PySide6.QtCore import QPointF, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from bayboard.window import lettering
from bayboard.window.controls import TARGET, Button, Switch, put_away
from bayboard.window.draw.marks import paint_mark
from bayboard.window.floor_plan import LEAST
from bayboard.window.lettering import HELPER, STRONG
from bayboard.window.panel_title import paint_panel_title
from bayboard.window.sheet import paint_asking
from bayboard.window.theme import SCALES, Theme
from bayboard.window.wishes import COLOURS, MOTIONS, Wishes

WIDE, TOP, PITCH, FOOT = 520.0, 44.0, 70.0, 58.0  # px
PAD, LABEL = 18.0, 96.0
SCALE_WORDS = tuple(f"{round(scale * 100)} %" for scale in SCALES)
ROWS = (
    ("Scale", "Type and targets together. F8 larger, Shift F8 smaller."),
    ("Colours", "F9 changes from light to dark and back."),
    ("Motion", "Pieces glide for a moment, to show what was done."),
)


def fits(scale: float, window: QSize) -> bool:
    """Return whether everything has room in a window at a Scale."""
    return window.width() >= LEAST.width() * scale and window.height() >= LEAST.height() * scale


def room_words(scale: float, window: QSize) -> str:
    """Return what is to be said where a Scale is too large for the window, "" where it fits."""
    if fits(scale, window):
        return ""
    fitting = [word for word, known in zip(SCALE_WORDS, SCALES, strict=True) if fits(known, window)]
    most = f"{fitting[-1]} fits it." if fitting else "Make the window larger."
    return f"{round(scale * 100)} % is too large for this window: {most}"


class SettingsSheet(QWidget):
    """The sheet.  `wished` carries what is wished from now on; `left` gives the keys back."""

    wished = Signal(object)
    left = Signal()

    def __init__(self, theme: Theme, wishes: Wishes, parent: QWidget) -> None:
        super().__init__(parent)
        self.theme = theme
        self.wishes = wishes
        self.scale = Switch("Scale", SCALE_WORDS, self, "Makes type and targets larger. F8")
        self.colours = Switch("Colours", COLOURS, self, "Shows light or dark colours. F9")
        self.motion = Switch("Motion", MOTIONS, self, "Lets nothing glide while it is off.")
        self.close_it = Button("Close", self, tip="Goes back to work. Esc")
        self.switches = (self.scale, self.colours, self.motion)
        self.scale.switched.connect(self._scale)
        self.colours.switched.connect(self._colours)
        self.motion.switched.connect(self._motion)
        self.close_it.clicked.connect(self.leave)
        self.setAccessibleName("Settings")
        for switch, (_, helper) in zip(self.switches, ROWS, strict=True):
            switch.setStatusTip(helper)
        self.hide()

    def dress(self, theme: Theme) -> None:
        """Wear a theme."""
        self.theme = theme
        for part in (*self.switches, self.close_it):
            part.dress(theme)
        self.update()

    def follow(self, wishes: Wishes) -> None:
        """Show what is wished."""
        self.wishes = wishes
        self.scale.hold(SCALE_WORDS[SCALES.index(wishes.size)])
        self.colours.hold(wishes.colours)
        self.motion.hold(wishes.motion)
        self.update()

    def open_below(self, strip: QRect) -> None:
        """Show the sheet below the strip's right end, with the keys on the Scale."""
        self.lay(strip)
        self.show()
        self.raise_()
        self.scale.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def lay(self, strip: QRect) -> None:
        """Lie below the strip's right end."""
        size = self.theme.size
        wide = min(round(WIDE * size), strip.width() - 20)
        high = round((TOP + len(ROWS) * PITCH + FOOT) * size)
        self.setGeometry(strip.right() - wide - 9, strip.bottom() + 9, wide, high)
        for i, switch in enumerate(self.switches):
            hint, top = switch.sizeHint(), round((TOP + i * PITCH) * size)
            left = round(LABEL * size)
            switch.setGeometry(left, top, min(hint.width(), wide - left - 10), hint.height())
        hint = self.close_it.sizeHint()
        self.close_it.setGeometry(
            wide - hint.width() - round(14 * size), high - hint.height() - 8, hint.width(), hint.height()
        )

    def leave(self) -> None:
        """Go away."""
        if put_away(self):
            self.left.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go away with Escape; Up and Down walk the rows; letters do nothing behind an open sheet."""
        if event.key() == Qt.Key.Key_Escape:
            self.leave()
        elif event.key() in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            self.focusNextPrevChild(event.key() == Qt.Key.Key_Down)
        elif event.key() in (Qt.Key.Key_F7, Qt.Key.Key_F8, Qt.Key.Key_F9):
            event.ignore()

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Walk round the sheet: what lies behind it has no keys while it is open."""
        stops = (*self.switches, self.close_it)
        here = next((i for i, stop in enumerate(stops) if stop.hasFocus()), -1 if forward else 0)
        reason = Qt.FocusReason.TabFocusReason if forward else Qt.FocusReason.BacktabFocusReason
        stops[(here + (1 if forward else -1)) % len(stops)].setFocus(reason)
        return True

    def _scale(self, word: str) -> None:
        self.wished.emit(replace(self.wishes, size=SCALES[SCALE_WORDS.index(word)]))

    def _colours(self, word: str) -> None:
        self.wished.emit(replace(self.wishes, colours=word))

    def _motion(self, word: str) -> None:
        self.wished.emit(replace(self.wishes, motion=word))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the sheet, the names of the rows and what each is for."""
        theme, size = self.theme, self.theme.size
        with QPainter(self) as p:
            paint_asking(p, QRectF(self.rect()).adjusted(1.0, 1.0, -1.0, -1.0), theme.rule2, theme)
            paint_panel_title(p, "Settings", "yours, for every vehicle", theme, float(self.width()))
            for i, (name, helper) in enumerate(ROWS):
                self._paint_row(p, (TOP + i * PITCH) * size, name, helper)

    def _paint_row(self, p: QPainter, top: float, name: str, helper: str) -> None:
        theme, size = self.theme, self.theme.size
        row = QRectF(PAD * size, top, LABEL * size, (TARGET + 4.0) * size)
        lettering.draw_in(p, row, name, STRONG.sized(size), theme.ink, "left")
        below = QPointF((LABEL + 4.0) * size, top + (TARGET + 19.0) * size)
        small = room_words(self.theme.size, self.window().size()) if name == "Scale" else ""
        if small:
            at = QPointF(below.x() + 8.0 * size, below.y() - 5.0 * size)
            paint_mark(p, at, "should", None, theme, 16.0 * size, cased=False)
            below.setX(below.x() + 22.0 * size)
        room = self.width() - below.x() - PAD * size
        words = lettering.elided(small or helper, HELPER.sized(size), room)
        lettering.draw(p, below, words, HELPER.sized(size), theme.should if small else theme.ink2)
