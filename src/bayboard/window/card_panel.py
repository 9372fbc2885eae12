"""The Card: what is selected, with exact figures to type; else what one can do now."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRect, QRectF, Signal
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QWidget

from bayboard.edits.edit import Edit
from bayboard.edits.move_gear import MoveGear
from bayboard.edits.several import Several
from bayboard.edits.turn_gear import TurnGear
from bayboard.geometry import outline as outlines
from bayboard.model.placed import Placed
from bayboard.window import lettering
from bayboard.window.card_words import about, first_start_words, idle_words, mass_and_kind
from bayboard.window.controls import TARGET, Button
from bayboard.window.draw.marks import paint_mark
from bayboard.window.fields import AngleField, Field, LengthField
from bayboard.window.lettering import HEADING, HELPER, Style
from bayboard.window.sheet import Sheet
from bayboard.window.spots import gear_of
from bayboard.window.steps import foot_of
from bayboard.window.text_field import HIGH
from bayboard.window.theme import brush
from bayboard.window.workplace import Workplace

PAD, GAP = 16, 14  # px
ROOMY = 270  # px; a lower panel writes its readings beside the labels
LABELS = ("middle, from the board's left", "and up from its foot", "turned")
SHORT_LABELS = ("from left", "up from foot", "turned")


class CardPanel(Sheet):
    """The right panel."""

    left = Signal()  # the keys want to go back to the Wall
    tape_wanted = Signal()
    hang_wanted = Signal(str)
    open_wanted = Signal()
    example_wanted = Signal()
    new_wanted = Signal()

    def __init__(self, place: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(place, parent)
        self.across = LengthField("Middle, from the board's left", self)
        self.up = LengthField("Middle, up from the board's foot", self)
        self.turn = AngleField("Turned, degrees counter-clockwise", self)
        self.fields: tuple[Field, ...] = (self.across, self.up, self.turn)
        self.tape = Button("Tape down", self, tip="Holds this stand-in where it is. T")
        self.hang = Button(
            "Hang it on the first free spot", self, act=True, tip="Hangs it where nothing must change. Enter"
        )
        self.begin = (
            Button("Open a vehicle", self, act=True, tip="Opens the shelf of vehicles. Ctrl O"),
            Button("See a finished one", self, tip="Shows a finished vehicle to try things on."),
            Button("A new vehicle", self, tip="Begins with a bare wall. Ctrl N"),
        )
        self.spare = 0  # px left free at the right end of the title line
        self._connect()
        self.setAccessibleName("Card")
        self.dress()

    def _connect(self) -> None:
        self.across.kept.connect(self._keep_across)
        self.up.kept.connect(self._keep_up)
        self.turn.kept.connect(self._keep_turn)
        for field in self.fields:
            field.left.connect(self.left)
            field.read_anew.connect(self.update)
        self.tape.clicked.connect(self.tape_wanted)
        self.hang.clicked.connect(self._hang)
        for button, signal in zip(
            self.begin, (self.open_wanted, self.example_wanted, self.new_wanted), strict=True
        ):
            button.clicked.connect(signal)
        self.place.changed.connect(self.follow)
        self.place.looked.connect(self.follow)
        self.place.carried.connect(self.follow)

    def dress(self) -> None:
        """Wear the workplace's colours."""
        for control in (*self.fields, self.tape, self.hang, *self.begin):
            control.dress(self.place.theme)
        self.follow()

    # --- what is selected ---

    def pieces(self) -> list[Placed]:
        """Return the selected stand-ins that hang on a board."""
        placed = self.place.scene.placed
        return [placed[name] for name in self.place.selected if name in placed]

    def waiting(self) -> str | None:
        """Return the one selected piece that waits on the bench."""
        names = self.place.selected
        return names[0] if len(names) == 1 and names[0] not in self.place.scene.placed else None

    def follow(self) -> None:
        """Show the figures of what is selected."""
        pieces, place = self.pieces(), self.place
        for control in (*self.fields, self.tape):
            control.setVisible(bool(pieces))
        self.hang.setVisible(self.waiting() is not None and bool(place.shown.boards))
        for button in self.begin:
            button.setVisible(place.first_start)
        if pieces:
            self._show_figures(pieces)
        self.update()

    def _show_figures(self, pieces: list[Placed]) -> None:
        span = _span(self.place)
        for field in (self.across, self.up):
            field.set_units(self.place.units, span)
        _show_shared(self.across, [p.at[0] - foot_of(p.board)[0] for p in pieces])
        _show_shared(self.up, [p.at[1] - foot_of(p.board)[1] for p in pieces])
        _show_shared(self.turn, [p.gear.turn for p in pieces])
        taped = all(p.gear.taped for p in pieces)
        self.tape.setText("Lift the tape" if taped else "Tape down")
        self.tape.setAccessibleName(self.tape.text())

    # --- edits ---

    def _keep_across(self, value: float) -> None:
        edits = [MoveGear((p.id,), foot_of(p.board)[0] + value - p.at[0], 0.0) for p in self._loose() if p.at]
        self._do(edits, "in line")

    def _keep_up(self, value: float) -> None:
        self._do(
            [MoveGear((p.id,), 0.0, foot_of(p.board)[1] + value - p.at[1]) for p in self._loose()], "level"
        )

    def _keep_turn(self, value: float) -> None:
        self._do([TurnGear((p.id,), value - p.gear.turn) for p in self._loose()], "turned alike")

    def _loose(self) -> list[Placed]:
        pieces = self.pieces()
        taped = [p.id for p in pieces if p.gear.taped]
        if taped:
            self.place.said.emit(f"{taped[0]} is taped down. Press T to lift the tape first.")
            return []
        return pieces

    def _do(self, edits: Sequence[Edit], words: str) -> None:
        if len(edits) == 1:
            self.place.do(edits[0])
        elif edits:
            self.place.do(Several(tuple(edits), f"Put {len(edits)} stand-ins {words}"))
        self.follow()

    def _hang(self) -> None:
        name = self.waiting()
        if name is not None:
            self.hang_wanted.emit(name)

    def type_in(self, text: str) -> bool:
        """Begin an exact entry in the first field; return False when nothing is selected for it."""
        if not self.pieces():
            return False
        self.across.type_in(text)
        return True

    def typing(self) -> bool:
        """Return whether a field of the Card has the keys."""
        return any(field.hasFocus() for field in self.fields)

    # --- where things lie ---

    def roomy(self) -> bool:
        """Return whether a reading has a line of its own below its field."""
        return self.height() >= ROOMY * self.place.theme.size

    def _columns(self) -> tuple[int, int, int]:
        """Return where the two columns begin, and how wide they are."""
        size = self.place.theme.size
        pad, gap = round(PAD * size), round(GAP * size)
        wide = (self.width() - 2 * pad - gap) // 2
        return pad, pad + wide + gap, wide

    def _rows(self) -> tuple[int, int]:
        """Return the tops of the two rows of fields."""
        size = self.place.theme.size
        first = 62.0 if self.roomy() else 56.0
        second = first + HIGH + (46.0 if self.roomy() else 24.0)
        return round(first * size), round(second * size)

    def lay_out(self) -> None:
        """Put the fields in their places."""
        size = self.place.theme.size
        (left, right, wide), (first, second), high = self._columns(), self._rows(), round(HIGH * size)
        self.across.setGeometry(left, first, wide, high)
        self.up.setGeometry(right, first, wide, high)
        self.turn.setGeometry(left, second, wide, high)
        tall = round((TARGET + 8) * size)
        self.tape.setGeometry(right - 2, second - 2, wide + 4, tall)
        self.hang.setGeometry(left - 4, second, self.width() - 2 * left + 8, tall)
        for i, button in enumerate(self.begin):
            top = round((44 + i * (50 if self.roomy() else 48)) * size)
            button.setGeometry(QRect(left - 4, top, self.width() - 2 * left + 8, tall))

    # --- painting ---

    def paint(self, p: QPainter) -> None:
        """Paint what is selected, labels, readings and sentences."""
        if self.place.first_start:
            self._paint_first_start(p)
            return
        pieces, waiting = self.pieces(), self.waiting()
        if pieces:
            self._paint_head(p, pieces)
            self._paint_fields(p)
            self._paint_sentences(p, pieces)
        elif waiting is not None:
            self._paint_waiting(p, waiting)
        else:
            self._title(p, "Card", "nothing selected")
            self._lines(p, idle_words(self.place), 66.0)

    def _title(self, p: QPainter, words: str, beside: str, right: str = "") -> None:
        theme, size = self.place.theme, self.place.theme.size
        heading, small = HEADING.sized(size), Style(px=15.0).sized(size)
        y, end = 28.0 * size, self.width() - PAD * size - self.spare
        if right:
            lettering.draw(p, QPointF(end, y), right, small, theme.ink2, "right")
            end -= lettering.width(right, small) + 12.0
        lettering.draw(p, QPointF(PAD * size, y), words, heading, theme.ink)
        x = PAD * size + lettering.width(words, heading) + 10.0 * size
        lettering.draw(p, QPointF(x, y), lettering.elided(beside, small, end - x), small, theme.ink2)

    def _paint_head(self, p: QPainter, pieces: list[Placed]) -> None:
        theme, size = self.place.theme, self.place.theme.size
        if len(pieces) > 1:
            self._title(p, f"{len(pieces)} stand-ins", "what is typed goes for all")
            return
        piece = pieces[0]
        self._paint_name(
            p, piece.id, piece.card.name, mass_and_kind(piece.card, self.place.units), theme.ink, size
        )

    def _paint_name(self, p: QPainter, name: str, card: str, right: str, ink: str, size: float) -> None:
        pencil, heading = Style("pencil", 21.0).sized(size), HEADING.sized(size)
        small = Style(px=15.0).sized(size)
        y, end = 28.0 * size, self.width() - PAD * size - self.spare
        lettering.draw(p, QPointF(PAD * size, y), name, pencil, ink)
        x = PAD * size + lettering.width(name, pencil) + 9.0 * size
        room = end - x - lettering.width(right, small) - 14.0
        if room < 70.0 * size:
            right, room = "", end - x
        lettering.draw(p, QPointF(x, y), lettering.elided(card, heading, room), heading, ink)
        lettering.draw(p, QPointF(end, y), right, small, self.place.theme.ink2, "right")

    def _paint_fields(self, p: QPainter) -> None:
        theme, size, roomy = self.place.theme, self.place.theme.size, self.roomy()
        style, labels = HELPER.sized(size), LABELS if roomy else SHORT_LABELS
        for field, label in zip(self.fields, labels, strict=True):
            place = field.geometry()
            y = place.top() - 5.0 * size
            wide = lettering.width(label, style)
            lettering.draw(p, QPointF(place.left() + 2, y), label, style, theme.ink2)
            if not field.reading:
                continue
            if roomy:
                at = QPointF(place.left() + 2, place.bottom() + 17.0 * size)
                lettering.draw(p, at, lettering.elided(field.reading, style, place.width()), style, theme.ink)
            elif field.hasFocus():
                words = lettering.elided(field.reading, style, place.width() - wide - 10.0)
                lettering.draw(p, QPointF(place.right() - 2, y), words, style, theme.ink, "right")

    def _paint_sentences(self, p: QPainter, pieces: list[Placed]) -> None:
        theme, size = self.place.theme, self.place.theme.size
        y = self.turn.geometry().bottom() + 12.0 * size
        if self.roomy():
            p.fillRect(QRectF(PAD, y, self.width() - 2 * PAD, 1.0), brush(theme.rule))
            y += 8.0 * size
        wrong = next((field.wrong for field in self.fields if field.wrong), "")
        asked = next((f.reading for f in self.fields if f.hasFocus() and f.reading.endswith("?")), "")
        if wrong:
            paint_mark(
                p, QPointF((PAD + 8) * size, y + 12.0 * size), "must", None, theme, 17.0 * size, cased=False
            )
            self._lines(p, [(wrong, True)], y + 17.0 * size, left=24.0, token=theme.must)
        elif asked:
            self._lines(p, [(asked, True)], y + 17.0 * size)
        elif len(pieces) == 1:
            self._lines(p, about(self.place.scene, pieces[0]), y + 17.0 * size)

    def _lines(
        self, p: QPainter, words: Sequence[tuple[str, bool]], y: float, left: float = 0.0, token: str = ""
    ) -> None:
        """Write sentences one below the other as long as there is room; strong ones in ink."""
        theme, size = self.place.theme, self.place.theme.size
        style = Style(px=15.0).sized(size)
        x = (PAD + left) * size
        room, end = self.width() - x - PAD * size, self.height() - 7.0 * size
        for text, strong in words:
            ink = token or (theme.ink if strong else theme.ink2)
            lines = lettering.wrapped(text, style, room)
            for i, line in enumerate(lines):
                if y > end:
                    return
                last = y + 21.0 * size > end
                shown = lettering.elided(" ".join(lines[i:]), style, room) if last else line
                lettering.draw(p, QPointF(x, y), shown, style, ink)
                y += 21.0 * size
            y += 3.0 * size

    def _paint_waiting(self, p: QPainter, name: str) -> None:
        gear = gear_of(self.place.shown, name)
        if gear is None:
            return
        theme, card = self.place.theme, self.place.shown.cards[gear.card]
        right = mass_and_kind(card, self.place.units)
        self._paint_name(p, name, card.name, right, theme.ink, theme.size)
        self._lines(p, [("On the bench. Drag it up to the board.", True)], 66.0 * theme.size)

    def _paint_first_start(self, p: QPainter) -> None:
        self._title(p, "Begin", "")
        bottom = self.begin[-1].geometry().bottom()
        self._lines(p, first_start_words(), bottom + 24.0 * self.place.theme.size)


def _span(place: Workplace) -> float:
    """Return the longer side of the bay, 0 where nothing was measured."""
    points = place.shown.bay.wall or tuple(p for b in place.shown.boards for p in b.outline)
    if not points:
        return 0.0
    x0, y0, x1, y1 = outlines.box(points)
    return max(x1 - x0, y1 - y0)


def _show_shared(field: Field, values: Sequence[float]) -> None:
    """Show a value that all share, else how many different ones there are."""
    different = {round(value, 4) for value in values}
    if len(different) == 1:
        field.show_value(values[0])
    else:
        field.show_value(None, len(different))
