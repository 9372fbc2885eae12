"""Colour tokens, light and dark, and the Scale setting: LOOK's section 3 as values.

A colour is a "#rrggbb" text in the tokens; `colour` and `pen` turn it into what a painter takes, cached.
"""

from dataclasses import dataclass, replace
from functools import lru_cache

from PySide6.QtCore import Qt
from PySide6.QtGui import QBrush, QColor, QPalette, QPen

SCALES = (1.0, 1.15, 1.3, 1.5)  # the Scale setting: type and targets together


@dataclass(frozen=True, slots=True)
class Theme:
    """One set of colours.  `size` is the Scale setting; it multiplies type and targets."""

    name: str
    dark: bool
    paper: str
    field: str
    bench: str
    shelf: str
    lath: str
    ink: str
    ink2: str
    rule: str
    rule2: str
    room: str
    wall: str
    board: str
    boardhi: str
    buff: str
    buffedge: str
    pencil: str
    pencil2: str
    chalk: str
    tape: str
    tapeink: str
    footred: str
    blue: str
    must: str
    should: str
    shouldfill: str
    note: str
    ok: str
    hold: str
    power: str = "#A4603A"
    ground: str = "#CECDC3"
    signal: str = "#7CB5CF"
    speaker: str = "#8662AC"
    remote: str = "#CDAC62"
    data: str = "#748E7C"
    size: float = 1.0

    def sized(self, size: float) -> "Theme":
        """Return the theme with the Scale setting at `size` (1.0, 1.15, 1.3 or 1.5)."""
        return replace(self, size=size)

    def severity(self, severity: str) -> str:
        """Return the colour of "must", "should" or "note" for text and lines."""
        return {"must": self.must, "should": self.should, "note": self.note}[severity]

    def lead(self, kind: str | None) -> str:
        """Return the jacket's colour of a kind of lead; ends that may not be joined wear must."""
        jackets = {
            "power": self.power,
            "ground": self.ground,
            "signal": self.signal,
            "speaker": self.speaker,
            "remote": self.remote,
            "data": self.data,
        }
        return jackets.get(kind or "", self.must)


LIGHT = Theme(
    name="light",
    dark=False,
    paper="#F5F2EB",
    field="#FFFFFF",
    bench="#E6E1D6",
    shelf="#DDD6C8",
    lath="#EFE5CB",
    ink="#221F1B",
    ink2="#575146",
    rule="#C9C2B3",
    rule2="#8B8475",
    room="#C6CAC6",
    wall="#AEB4B0",
    board="#1F2123",
    boardhi="#45494C",
    buff="#D3BC90",
    buffedge="#9C835A",
    pencil="#2A2622",
    pencil2="#6A5A40",
    chalk="#F4F1E8",
    tape="#F0DDA0",
    tapeink="#2A2418",
    footred="#7A130A",
    blue="#1B57A6",
    must="#B3261E",
    should="#7A4B00",
    shouldfill="#F2B632",
    note="#1F5B7A",
    ok="#2C6A3F",
    hold="#8FB8A6",
)

DARK = Theme(
    name="dark",
    dark=True,
    paper="#22252A",
    field="#14161A",
    bench="#1A1C20",
    shelf="#1F2125",
    lath="#34302A",
    ink="#EDEAE2",
    ink2="#B4B0A6",
    rule="#3B4047",
    rule2="#7D848E",
    room="#2C302F",
    wall="#5A615F",
    board="#0F1011",
    boardhi="#6A7073",
    buff="#B8A077",
    buffedge="#7A6542",
    pencil="#1B1815",
    pencil2="#4E4027",
    chalk="#F4F1E8",
    tape="#C8B474",
    tapeink="#17130A",
    footred="#7A130A",
    blue="#8AB8F5",
    must="#FF8A7A",
    should="#F2B632",
    shouldfill="#F2B632",
    note="#7FC4E6",
    ok="#86CF9B",
    hold="#6E9A88",
)


@lru_cache(maxsize=1024)
def colour(token: str, alpha: float = 1.0) -> QColor:
    """Return a token as a colour, `alpha` from 0 (clear) to 1.  Shared: never change it."""
    made = QColor(token)
    made.setAlphaF(alpha)
    return made


@lru_cache(maxsize=256)
def mixed(token: str, other: str, share: float) -> str:
    """Return the colour `share` of the way from a token to another."""
    a, b = QColor(token), QColor(other)
    parts = (
        round(x + (y - x) * share)
        for x, y in ((a.red(), b.red()), (a.green(), b.green()), (a.blue(), b.blue()))
    )
    return "#{:02X}{:02X}{:02X}".format(*parts)


@lru_cache(maxsize=256)
def brush(token: str, alpha: float = 1.0) -> QBrush:
    """Return a plain brush of a token.  Shared: never change it."""
    return QBrush(colour(token, alpha))


@lru_cache(maxsize=1024)
def pen(
    token: str,
    width: float = 1.0,
    alpha: float = 1.0,
    dash: tuple[float, ...] = (),
    round_ends: bool = False,
) -> QPen:
    """Return a pen of a token, `width` in pixels; dashes in pen widths.  Shared: never change it."""
    made = QPen(colour(token, alpha), width)
    made.setCapStyle(Qt.PenCapStyle.RoundCap if round_ends else Qt.PenCapStyle.FlatCap)
    made.setJoinStyle(Qt.PenJoinStyle.RoundJoin if round_ends else Qt.PenJoinStyle.MiterJoin)
    if dash:
        made.setDashPattern(list(dash))
    return made


def palette(theme: Theme) -> QPalette:
    """Return the palette for the widgets of the panels, Base and AlternateBase set."""
    made = QPalette(colour(theme.paper), colour(theme.bench))
    role = QPalette.ColorRole
    for which, token in (
        (role.Window, theme.bench),
        (role.WindowText, theme.ink),
        (role.Base, theme.field),
        (role.AlternateBase, theme.paper),
        (role.Text, theme.ink),
        (role.Button, theme.field),
        (role.ButtonText, theme.ink),
        (role.PlaceholderText, theme.ink2),
        (role.ToolTipBase, theme.ink),
        (role.ToolTipText, theme.paper),
        (role.Highlight, theme.blue),
        (role.HighlightedText, theme.field),
        (role.Link, theme.blue),
    ):
        made.setColor(which, colour(token))
    return made
