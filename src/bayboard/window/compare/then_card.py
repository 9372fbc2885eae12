"""The revision at hand: its note in full, what was printed from it, and the way back to it."""

from pathlib import Path

from PySide6.QtCore import QPointF, Signal
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QFileDialog, QWidget

from bayboard.model.layout import Layout
from bayboard.model.refused import Refused
from bayboard.store.files import save_layout
from bayboard.store.records import Revision
from bayboard.window import lettering
from bayboard.window.access import announce
from bayboard.window.compare import words
from bayboard.window.compare.desk import CompareDesk
from bayboard.window.controls import TARGET, Button, Link
from bayboard.window.lettering import HELPER
from bayboard.window.note import quoted
from bayboard.window.told import PAD, Paragraphs, ToldSheet
from bayboard.window.when import moment_words


def ask_where(parent: QWidget, start: str) -> str:
    """Return the path a person chose for a revision's own file, "" for none."""
    return QFileDialog.getSaveFileName(parent, "Save the revision", start, "Layouts (*.json)")[0]


class ThenCard(ToldSheet):
    """The right panel.  `back` is the one button; there is none where there is no going back."""

    went_back = Signal(int, object)  # the revision, and the number the draft was kept as, None for not anew
    said = Signal(str)

    def __init__(self, desk: CompareDesk, parent: QWidget | None = None) -> None:
        super().__init__(desk.place, parent)
        self.desk = desk
        self.save = Link("", self, "Writes this revision as a plain .json layout beside the job.")
        self.back = Button("", self, tip="Makes this revision the draft.")
        self.save.clicked.connect(self.save_own)
        self.back.clicked.connect(self.go_back)
        desk.changed.connect(self.follow)
        self.setAccessibleName("Revision")
        self.dress()

    @property
    def stops(self) -> tuple[QWidget, ...]:
        """Return what Tab walks here, in order."""
        return self.save, self.back

    def dress(self) -> None:
        """Wear the workplace's colours."""
        theme = self.place.theme
        for control in (self.save, self.back):
            control.dress(theme)
        self.scroll.dress(theme)
        self.follow()

    # --- what is told ---

    def follow(self) -> None:
        """Tell of the revision that is then."""
        revision = self.desk.subject()
        self.told.tell(self.paragraphs())
        number = 0 if revision is None else revision.number
        self.save.setVisible(revision is not None and not self.desk.trouble)
        self.save.setText(f"Save revision {number} as a file of its own…")
        self.back.setVisible(revision is not None and not self.why_not())
        self.back.setText(f"Go back to revision {number}")
        for control in (self.save, self.back):
            control.setAccessibleName(control.text())
        self.back.setAccessibleDescription(self.foot())
        self.lay_out()
        self.update()

    def title(self) -> tuple[str, str]:
        """Return the title and when it was kept."""
        revision = self.desk.subject()
        if revision is None:
            return "Draft", words.draft_words(self.desk.kept_as) if self.desk.revisions else words.NOT_KEPT
        return words.capital(words.name_of(revision.number)), moment_words(revision.kept)

    def paragraphs(self) -> Paragraphs:
        """Return the note, then what it went on from and what was printed, with whether in strong ink."""
        revision = self.desk.subject()
        if revision is None:
            return ((words.EMPTY, True),)
        note = quoted(revision.note)
        told = [(note, True)] if note else [("No note.", False)]
        went_on = words.parent_words(revision, self._before(revision))
        if went_on:
            told.append((went_on, False))
        prints = [p for p in self.desk.prints if str(p.revision) == str(revision.number)]
        told += [(words.print_words(line), False) for line in prints] or [
            ("Nothing was printed from it.", False)
        ]
        return tuple(told)

    def _before(self, revision: Revision) -> int | None:
        """Return the number of the revision kept just before one."""
        older = [item.number for item in self.desk.revisions if item.number < revision.number]
        return older[-1] if older else None

    def why_not(self) -> str:
        """Return why there is no going back here, "" where there is."""
        revision, job = self.desk.subject(), self.place.job
        if revision is None:
            return ""
        if job.looking:
            return words.ONLY_LOOKED_AT
        if self.desk.trouble:
            return self.desk.trouble
        return words.same_as_draft(revision.number) if self.desk.is_draft(revision.number) else ""

    def foot(self) -> str:
        """Return what is said over the button: what becomes of the draft, or why there is no button."""
        revision = self.desk.subject()
        if revision is None:
            return ""
        coming = self.desk.revisions[-1].number + 1
        drilled = words.drilled_count(self.place.layout) > 0
        return self.why_not() or words.back_words(self.desk.kept_as, coming, drilled)

    # --- the two acts ---

    def go_back(self) -> None:
        """Make the revision the draft."""
        done = self.desk.go_back()
        if done is not None:
            self.went_back.emit(*done)

    def save_own(self) -> None:
        """Ask where, and write the revision there as a plain layout."""
        revision, job = self.desk.subject(), self.place.job
        if revision is None:
            return
        folder = job.path.parent if job.path else Path.home()
        stem = job.path.stem if job.path else "layout"
        chosen = ask_where(self, str(folder / words.file_name(stem, revision.number)))
        if not chosen:
            return
        path = Path(chosen)
        if path.suffix.lower() != ".json":
            path = path.with_name(f"{path.name}.json")
        trouble = self.desk.save_own(lambda layout: _save(path, layout))
        line = trouble or f"Revision {revision.number} is in {path.name}."
        (self.place.refused if trouble else self.said).emit(line)
        announce(self, line)

    # --- where things lie ---

    def _foot_lines(self) -> tuple[str, ...]:
        style = HELPER.sized(self.place.theme.size)
        return lettering.wrapped(self.foot(), style, max(self.width() - 2 * PAD, 80.0)) if self.foot() else ()

    def lay_out(self) -> None:
        """Put the controls at the foot, what is told over them."""
        size = self.place.theme.size
        pad, tall = round(PAD * size), round((TARGET + 8) * size)
        bottom = self.height() - round(10.0 * size)
        if not self.back.isHidden():
            bottom -= tall
            self.back.setGeometry(pad - 4, bottom, self.width() - 2 * pad + 8, tall)
        if not self.save.isHidden():
            link = self.save.sizeHint()
            bottom -= link.height() - round(6.0 * size)
            self.save.setGeometry(pad - 6, bottom, min(link.width(), self.width() - pad), link.height())
        self._foot_top = bottom - len(self._foot_lines()) * 18.0 * size - 2.0 * size
        self.lay_told(round(self._foot_top) - 4)

    def paint(self, p: QPainter) -> None:
        """Paint the title and what becomes of the draft."""
        super().paint(p)
        theme, size = self.place.theme, self.place.theme.size
        style = HELPER.sized(size)
        for i, line in enumerate(self._foot_lines()):
            at = QPointF(PAD * size, self._foot_top + (14.0 + 18.0 * i) * size)
            lettering.draw(p, at, line, style, theme.ink2)


def _save(path: Path, layout: Layout) -> None:
    """Write a layout; a disk that cannot take it is told as a refusal."""
    try:
        save_layout(path, layout)
    except OSError as error:
        raise Refused(path.name, "it could not be written", str(error.strerror or error)) from error
