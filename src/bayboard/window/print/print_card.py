"""The Card of the Print stage: paper, white edge, face, units, and the one button that makes the PDF."""

from pathlib import Path
from typing import Literal

from PySide6.QtCore import QPointF, QRectF, QUrl, Signal
from PySide6.QtGui import QDesktopServices, QPainter
from PySide6.QtWidgets import QFileDialog, QWidget

from bayboard.window import lettering
from bayboard.window.access import announce
from bayboard.window.controls import TARGET, Button, Link, Switch
from bayboard.window.draw.marks import paint_mark, paint_tick
from bayboard.window.fields import LengthField
from bayboard.window.lettering import HEADING, HELPER, Style
from bayboard.window.panel_title import paint_panel_title
from bayboard.window.print import words
from bayboard.window.print.desk import PrintDesk
from bayboard.window.sheet import Sheet
from bayboard.window.text_field import HIGH

PAD, GAP = 16, 12  # px
ROOMY = 270  # px; a lower panel stands its rows closer
SAID = Style(px=15.0)
Sign = Literal["must", "done", ""]
_PAPERS = {name: paper for paper, name in words.PAPERS.items()}


def ask_pdf(parent: QWidget, start: str) -> str:
    """Return the path a person chose for the PDF, "" for none."""
    return QFileDialog.getSaveFileName(parent, "Where to put the PDF", start, "PDF (*.pdf)")[0]


class PrintCard(Sheet):
    """The right panel of the Print stage."""

    left = Signal()  # the keys want to go back to the sheets
    drill_day_wanted = Signal()

    def __init__(self, desk: PrintDesk, parent: QWidget | None = None) -> None:
        super().__init__(desk.place, parent)
        self.desk = desk
        self.paper = Switch("Paper", tuple(words.PAPERS.values()), self, "The paper in the printer.")
        self.margin = LengthField("White edge that the printer leaves", self)
        self.face = Switch("Face", ("front", "back"), self, "Back is mirrored, for drilling from behind.")
        self.units = Switch("Units on paper", ("mm", "in"), self, "Units of the figures on paper.")
        self.make = Button("Make the PDF", self, act=True)
        self.show_it = Link("Show it", self, "Opens the PDF")
        self.drill = Link("Drill day", self, "The list to drill by, hole by hole. Ctrl D")
        self.clash = ""  # why a chosen file is not taken
        self._connect()
        self.setAccessibleName("Print")
        self.dress()

    def _connect(self) -> None:
        self.paper.switched.connect(self._choose_paper)
        self.face.switched.connect(self._choose_face)
        self.units.switched.connect(self._choose_units)
        self.margin.kept.connect(self._choose_margin)
        self.margin.left.connect(self.left)
        self.margin.read_anew.connect(self.update)
        self.make.clicked.connect(self.make_pdf)
        self.show_it.clicked.connect(self.open_pdf)
        self.drill.clicked.connect(self.drill_day_wanted)
        self.desk.changed.connect(self.follow)
        self.place.changed.connect(self.follow)

    @property
    def stops(self) -> tuple[QWidget, ...]:
        """Return what Tab walks here, in order."""
        return self.paper, self.margin, self.face, self.units, self.make, self.show_it, self.drill

    def _fields(self) -> tuple[Switch | LengthField, ...]:
        return self.paper, self.margin, self.face, self.units

    def dress(self) -> None:
        """Wear the workplace's colours."""
        for control in (*self._fields(), self.make, self.show_it, self.drill):
            control.dress(self.place.theme)
        self.follow()
        self.lay_out()

    def follow(self) -> None:
        """Show what is chosen and what came of it."""
        desk = self.desk
        self.paper.hold(words.PAPERS[desk.choices.paper])
        self.face.hold(desk.choices.face)
        self.units.hold(desk.units)
        self.margin.set_units(self.place.units, 0.0)
        if self.margin.value != desk.choices.margin:
            self.margin.show_value(desk.choices.margin)
        refused = desk.refused is not None and desk.refused.place == "--margin"
        self.margin.wrong = desk.refused.says if desk.refused is not None and refused else ""
        count = desk.to_print() if desk.fresh and desk.refused is None else 0
        few = words.swap_sheets(desk.swap_numbers()) if desk.swapping else words.counted(count)
        self.make.setText(f"Make the PDF of {few}" if count else "Make the PDF")
        self.make.setAccessibleName(self.make.text())
        self.make.setEnabled(desk.ready())
        self.make.setVisible(desk.refused is None)
        self.show_it.setVisible(desk.saved is not None)
        self.show_it.setToolTip(f"Opens {desk.saved}." if desk.saved else "")
        said = " ".join(line for _, line in self.lines())
        if said != self.accessibleDescription():
            self.setAccessibleDescription(said)
            announce(self, said)
        self.lay_out()
        self.margin.update()
        self.update()

    # --- choices ---

    def _choose_paper(self, name: str) -> None:
        self._say("")
        self.desk.choose(paper=_PAPERS[name])

    def _choose_face(self, face: str) -> None:
        self.desk.choose(face=face)

    def _choose_units(self, units: str) -> None:
        self.desk.choose(units=units)

    def _choose_margin(self, mm: float) -> None:
        self.desk.choose(margin=mm)

    def _say(self, clash: str) -> None:
        self.clash = clash

    # --- the PDF ---

    def make_pdf(self) -> None:
        """Ask where to put the PDF and make it."""
        job = self.place.job
        start = job.path.with_suffix(".pdf") if job.path else Path.home() / "template.pdf"
        chosen = ask_pdf(self, str(start))
        if not chosen:
            return
        path = Path(chosen)
        if path.suffix.lower() != ".pdf":
            path = path.with_name(f"{path.name}.pdf")
            if path.exists():
                self._say(f"{path.name} is there already. Choose it by its full name to replace it.")
                self.follow()
                return
        self._say("")
        self.desk.make_pdf(path)

    def open_pdf(self) -> None:
        """Open the PDF with what the desktop has for it."""
        if self.desk.saved is not None:
            QDesktopServices.openUrl(QUrl.fromLocalFile(str(self.desk.saved)))

    def lines(self) -> list[tuple[Sign, str]]:
        """Return what is said over the button: what stops the print, what was saved, what is open."""
        desk = self.desk
        said: list[tuple[Sign, str]] = []
        if self.margin.wrong and self.margin.isModified():
            said.append(("must", self.margin.wrong))
        elif desk.refused is not None:
            said.append(("must", desk.refused.says))
        elif self.clash:
            said.append(("must", self.clash))
        elif desk.pressing:
            said.append(("", "Making the PDF …"))
        elif desk.saved_words:
            said.append(("done" if desk.saved else "must", desk.saved_words))
            if desk.log_words:
                said.append(("must", desk.log_words))
        musts = words.open_musts(self.place.verdict)
        if musts and "drill" in desk.wanted():
            said.append(("must", musts))
        return said

    # --- where things lie ---

    def _rows(self) -> tuple[int, int, int]:
        """Return the tops of the papers, of the fields, and of the button."""
        size, roomy = self.place.theme.size, self._roomy()
        papers, fields = (48.0, 118.0) if roomy else (40.0, 102.0)
        button = self.height() - (TARGET + (20.0 if roomy else 12.0)) * size
        return round(papers * size), round(fields * size), round(button)

    def lay_out(self) -> None:
        """Put the controls in their places."""
        size, (papers, fields, button) = self.place.theme.size, self._rows()
        pad, gap, tall = round(PAD * size), round(GAP * size), round((TARGET + 4) * size)
        wide = self.width() - 2 * pad
        self.paper.setGeometry(pad - 4, papers, wide + 8, tall)
        units, face = self.units.sizeHint().width(), self.face.sizeHint().width()
        self.margin.setGeometry(pad - 2, fields, wide - face - gap + 6, round(HIGH * size))
        self.face.setGeometry(self.width() - pad - face + 4, fields, face, tall)
        self.units.setGeometry(
            self.width() - pad - units + 4, round(2 * size) if self._roomy() else 0, units, tall
        )
        self.make.setGeometry(pad - 4, button, wide + 8, round((TARGET + 8) * size))
        drill, title = self.drill.sizeHint(), lettering.width("Paper", HEADING.sized(size))
        self.drill.setGeometry(
            round(PAD * size + title + 10.0 * size), round(2 * size), drill.width(), drill.height()
        )
        link = self.show_it.sizeHint()
        self.show_it.setGeometry(
            self.width() - pad - link.width() + 6,
            round(self._said_top() - link.height() / 2),
            link.width(),
            link.height(),
        )

    def _said_top(self) -> float:
        """Return the middle of the first line that is said."""
        size = self.place.theme.size
        return self._rows()[1] + (HIGH + (22.0 if self._roomy() else 11.0)) * size

    def _roomy(self) -> bool:
        return self.height() >= ROOMY * self.place.theme.size

    def paint(self, p: QPainter) -> None:
        """Paint the labels and what is said."""
        theme, size = self.place.theme, self.place.theme.size
        paint_panel_title(p, "Paper", "", theme, self.units.x() + 12.0, "figures in")
        style = HELPER.sized(size)
        for widget, label in ((self.margin, "white edge the printer leaves"), (self.face, "face")):
            at = QPointF(widget.x() + 4.0, widget.y() - 4.0 * size)
            lettering.draw(p, at, label, style, theme.ink2)
        self._paint_lines(p)

    def _paint_lines(self, p: QPainter) -> None:
        theme, size = self.place.theme, self.place.theme.size
        style = (SAID if self._roomy() else HELPER).sized(size)
        y, x, floor = self._said_top(), (PAD + 24.0) * size, float(self._rows()[2])
        pitch, gap = (19.0 * size, 3.0 * size) if self._roomy() else (18.0 * size, 0.0)
        if self.desk.refused is not None:
            floor = self.height() - 6.0 * size  # the button is away
        for sign, text in self.lines():
            at = QPointF((PAD + 8.0) * size, y)
            end = self.width() - PAD * size
            if y + 8.0 * size > floor:
                return
            if sign == "must":
                paint_mark(p, at, "must", None, theme, 16.0 * size, cased=False)
                shown = lettering.wrapped(text, style, end - x)
            else:
                shown = (lettering.elided(text, style, self.show_it.x() - 4.0 - x),)
            if sign == "done":
                paint_tick(p, at, theme, 15.0 * size)
            for line in shown:
                if y + 8.0 * size > floor:
                    return
                lettering.draw_in(p, QRectF(x, y - 10.0, 10.0, 20.0), line, style, theme.ink, "left")
                y += pitch
            y += gap
