"""What joins a person's wishes to the window: the sheet they are told on, its keys, the desktop's colours."""

from dataclasses import replace
from typing import Protocol

from PySide6.QtCore import QObject, QRect
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QWidget

from bayboard.window.bench_style import dress_tips
from bayboard.window.desktop import ask_desktop, desktop_is_dark
from bayboard.window.settings_sheet import SettingsSheet
from bayboard.window.theme import Theme
from bayboard.window.wishes import Wishes, wish, wished
from bayboard.window.workplace import Workplace


class Window(Protocol):
    """What is needed of the window."""

    place: Workplace
    strip: QWidget

    def dress(self, theme: Theme) -> None:
        """Wear a theme, all parts alike."""

    def to_wall(self) -> None:
        """Give the keys to the Wall."""


class Wishing(QObject):
    """The window's side of the settings; it lives as long as the window."""

    def __init__(self, window: Window, parent: QWidget) -> None:
        super().__init__(parent)
        self.window = window
        self.sheet = SettingsSheet(window.place.theme, wished(), parent)
        self.sheet.wished.connect(self.take)
        self.sheet.left.connect(window.to_wall)
        QGuiApplication.styleHints().colorSchemeChanged.connect(self.follow_desktop)
        dress_tips(window.place.theme)

    def dress(self, theme: Theme) -> None:
        """Wear a theme."""
        dress_tips(theme)
        self.sheet.dress(theme)
        self.sheet.follow(replace(wished(), size=theme.size))
        if self.sheet.isVisible():
            self.sheet.lay(self.window.strip.geometry())

    def open(self) -> None:
        """Show the settings, or put them away."""
        if self.sheet.isVisible():
            self.sheet.leave()
            return
        self.dress(self.window.place.theme)
        self.sheet.open_below(self.window.strip.geometry())

    def lay(self, strip: QRect) -> None:
        """Keep the sheet below the strip."""
        if self.sheet.isVisible():
            self.sheet.lay(strip)

    def take(self, wishes: Wishes) -> None:
        """Wish this from now on: all parts wear it at once."""
        wish(wishes)
        ask_desktop(wishes)
        self.window.dress(wishes.theme(desktop_is_dark()))
        self.window.place.said.emit(told(wishes))

    def larger(self, by: int) -> None:
        """Go to the next Scale up (1) or down (-1)."""
        self.take(self._now().larger(by))

    def other_colours(self) -> None:
        """Go from light to dark colours, or back."""
        dark = self.window.place.theme.dark
        self.take(replace(self._now(), colours="light" if dark else "dark"))

    def follow_desktop(self) -> None:
        """Wear what the desktop asks for, where that is wished."""
        self.window.dress(self._now().theme(desktop_is_dark()))

    def _now(self) -> Wishes:
        return replace(wished(), size=self.window.place.theme.size)


def told(wishes: Wishes) -> str:
    """Return the wishes in a line: "Scale 115 %, dark colours"."""
    colours = "the system's" if wishes.colours == "as the system" else wishes.colours
    still = ", nothing glides" if wishes.motion == "off" else ""
    return f"Scale {round(wishes.size * 100)} %, {colours} colours{still}"
