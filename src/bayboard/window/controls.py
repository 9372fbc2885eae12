"""Buttons, links and two-way switches: forty pixels to press, a ring where the keys are."""

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QApplication, QWidget

from bayboard.window import lettering
from bayboard.window.lettering import STRONG, Style
from bayboard.window.theme import LIGHT, Theme, brush, mixed, pen

TARGET = 40  # px that a finger needs
PAD = 20  # px of a button beside its words


def put_away(widget: QWidget) -> bool:
    """Hide a widget; return whether it had the keys, which nobody has then until they are given to somebody.

    Hiding alone passes them on as Tab does, and the Wall would begin to walk its stand-ins.
    """
    now = QApplication.focusWidget()
    had = now is not None and (now is widget or widget.isAncestorOf(now))
    if had and now is not None:
        now.clearFocus()
    widget.hide()
    return had


class Control(QAbstractButton):
    """Base: holds the colours, repaints on hover, paints a ring when reached by keys."""

    theme: Theme = LIGHT

    def __init__(self, text: str, parent: QWidget | None = None, tip: str = "") -> None:
        super().__init__(parent)
        self.setText(text)
        self.setAccessibleName(text)
        self.setToolTip(tip)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)

    def dress(self, theme: Theme) -> None:
        """Wear a theme."""
        self.theme = theme
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Press with Enter as well as with Space; letters are the window's."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        elif event.key() == Qt.Key.Key_Space:
            super().keyPressEvent(event)
        else:
            event.ignore()

    def ring(self, p: QPainter, rect: QRectF, radius: float) -> None:
        """Paint the focus ring 3 px off, where the keys are."""
        if self.hasFocus():
            p.setBrush(Qt.BrushStyle.NoBrush)
            p.setPen(pen(self.theme.blue, 2.0))
            p.drawRoundedRect(rect.adjusted(-3.0, -3.0, 3.0, 3.0), radius + 3.0, radius + 3.0)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the control."""
        with QPainter(self) as p:
            p.setRenderHint(QPainter.RenderHint.Antialiasing)
            self.paint(p)

    def paint(self, p: QPainter) -> None:
        """Paint the control with a ready painter."""


class Button(Control):
    """A button; `act` is the one filled button of its panel."""

    def __init__(self, text: str, parent: QWidget | None = None, act: bool = False, tip: str = "") -> None:
        super().__init__(text, parent, tip)
        self.act = act

    def sizeHint(self) -> QSize:
        """Return room for the words and a finger."""
        size = self.theme.size
        wide = lettering.width(self.text(), STRONG.sized(size)) + 2 * PAD * size
        return QSize(round(wide) + 8, round(TARGET * size) + 8)

    def paint(self, p: QPainter) -> None:
        """Paint the button, a pixel lower while it is pressed."""
        theme, rect = self.theme, QRectF(self.rect()).adjusted(4.0, 4.0, -4.0, -4.0)
        face = rect.translated(0.0, 1.0 if self.isDown() else 0.0)
        fill, ink = (theme.blue, theme.field) if self.act else (theme.field, theme.ink)
        if self.underMouse() and self.isEnabled():
            fill = mixed(fill, theme.ink, 0.06)
        p.setBrush(brush(fill))
        p.setPen(pen(theme.blue if self.act else theme.rule2, 1.2))
        p.drawRoundedRect(face, 6.0, 6.0)
        words = lettering.elided(self.text(), STRONG.sized(theme.size), face.width() - 12.0)
        lettering.draw_in(p, face, words, STRONG.sized(theme.size), ink)
        self.ring(p, rect, 6.0)


class Link(Control):
    """Underlined words that do something small; forty pixels high as felt."""

    def sizeHint(self) -> QSize:
        """Return room for the words and a finger."""
        size = self.theme.size
        return QSize(round(lettering.width(self.text(), _LINK.sized(size))) + 12, round(TARGET * size))

    def paint(self, p: QPainter) -> None:
        """Paint the words and their line."""
        rect = QRectF(self.rect())
        paint_link(p, rect.adjusted(6.0, 0.0, -6.0, 0.0), self.text(), self.theme, self.underMouse())
        if self.hasFocus():
            p.setPen(pen(self.theme.blue, 2.0))
            p.drawRoundedRect(rect.adjusted(1.0, 8.0, -1.0, -6.0), 4.0, 4.0)


_LINK = Style(px=15.0, weight=600)


def paint_link(p: QPainter, rect: QRectF, text: str, theme: Theme, hovered: bool = False) -> None:
    """Paint a link's words at the left of a rectangle, underlined."""
    style = _LINK.sized(theme.size)
    lettering.draw_in(p, rect, text, style, theme.blue, "left")
    y = rect.center().y() + lettering.line(text, style).rise / 2 + 4.0
    wide = lettering.width(text, style)
    p.fillRect(QRectF(rect.left(), y, wide, 1.6 if hovered else 1.0), brush(theme.blue))


def link_width(text: str, theme: Theme) -> float:
    """Return how wide a link's words are."""
    return lettering.width(text, _LINK.sized(theme.size))


class Switch(QWidget):
    """Words of which one holds: seat up or folded, inches or mm, a Scale.  Each may be pressed.

    Two words have room alike; of more, each has as much as it needs.
    """

    switched = Signal(str)

    def __init__(self, name: str, words: Sequence[str], parent: QWidget | None = None, tip: str = "") -> None:
        super().__init__(parent)
        self.theme = LIGHT
        self.words = tuple(words)
        self.held = self.words[0]
        self.setAccessibleName(name)
        self.setToolTip(tip)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)

    def dress(self, theme: Theme) -> None:
        """Wear a theme."""
        self.theme = theme
        self.updateGeometry()
        self.update()

    def hold(self, word: str) -> None:
        """Show which word holds."""
        self.held = word
        self.setAccessibleDescription(word)
        self.update()

    def sizeHint(self) -> QSize:
        """Return room for all words and a finger."""
        return QSize(round(sum(self._wides())) + 8, round(TARGET * self.theme.size) + 4)

    def _wides(self) -> list[float]:
        """Return how wide the room of each word is."""
        size = self.theme.size
        wides = [lettering.width(word, STRONG.sized(size)) + 30.0 * size for word in self.words]
        return [max(wides)] * 2 if len(wides) == 2 else wides

    def halves(self) -> list[QRectF]:
        """Return the rectangle of each word, as drawn."""
        rect = QRectF(self.rect()).adjusted(4.0, 4.0, -4.0, -4.0)
        wides = self._wides()
        k, found, x = rect.width() / sum(wides), [], rect.left()
        for wide in wides:
            found.append(QRectF(x, rect.top(), wide * k, rect.height()))
            x += wide * k
        return found

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Switch to the word that is pressed."""
        if event.button() == Qt.MouseButton.LeftButton:
            for word, half in zip(self.words, self.halves(), strict=True):
                if half.adjusted(-1.0, -8.0, 1.0, 8.0).contains(event.position()):
                    self.choose(word)
                    return

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Switch with the arrows; Space and Enter go round."""
        at, last = self.words.index(self.held), len(self.words) - 1
        if event.key() in (Qt.Key.Key_Space, Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.choose(self.words[(at + 1) % len(self.words)])
        elif event.key() in (Qt.Key.Key_Left, Qt.Key.Key_Right):
            by = -1 if event.key() == Qt.Key.Key_Left else 1
            self.choose(self.words[min(max(at + by, 0), last)])
        else:
            event.ignore()

    def choose(self, word: str) -> None:
        """Ask for a word, where it does not hold already."""
        if word != self.held:
            self.switched.emit(word)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the words, the one that holds in reverse."""
        theme, rect = self.theme, QRectF(self.rect()).adjusted(4.0, 4.0, -4.0, -4.0)
        with QPainter(self) as p:
            p.setRenderHint(QPainter.RenderHint.Antialiasing)
            p.setBrush(brush(theme.field))
            p.setPen(pen(theme.rule2, 1.2))
            p.drawRoundedRect(rect, 6.0, 6.0)
            for word, half in zip(self.words, self.halves(), strict=True):
                holds = word == self.held
                if holds:
                    p.setPen(Qt.PenStyle.NoPen)
                    p.setBrush(brush(theme.ink))
                    p.drawRoundedRect(half.adjusted(2.0, 2.0, -2.0, -2.0), 5.0, 5.0)
                lettering.draw_in(
                    p, half, word, STRONG.sized(theme.size), theme.field if holds else theme.ink
                )
            if self.hasFocus():
                p.setBrush(Qt.BrushStyle.NoBrush)
                p.setPen(pen(theme.blue, 2.0))
                p.drawRoundedRect(rect.adjusted(-3.0, -3.0, 3.0, 3.0), 9.0, 9.0)

    def event(self, event: QEvent) -> bool:
        """Repaint as the pointer comes and goes."""
        if event.type() in (QEvent.Type.HoverEnter, QEvent.Type.HoverLeave):
            self.update()
        return super().event(event)
