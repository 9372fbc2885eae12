"""What is read of the revisions for their cards: pictures, and how many holes were drilled, kept ready."""

from collections import OrderedDict
from collections.abc import Iterable
from datetime import datetime

from msgspec.structs import replace
from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtGui import QPixmap

from bayboard.job.picture import picture
from bayboard.model.layout import Layout
from bayboard.model.refused import Refused
from bayboard.store.records import Revision
from bayboard.window.compare.desk import CompareDesk
from bayboard.window.compare.words import DRAFT, Pick, draft_words, drilled_count, foot_words
from bayboard.window.draw.job_card import JobCard, lean_of
from bayboard.window.when import day_words

PICTURES = 96  # pictures kept ready; one is 90 kB


class Cards(QObject):
    """The cards' contents.  Holes are counted one revision at a time, when nothing else is to be done."""

    counted = Signal()  # a card can say more than before

    def __init__(self, desk: CompareDesk) -> None:
        super().__init__(desk)
        self.desk = desk
        self._pictures: OrderedDict[int, QPixmap | None] = OrderedDict()
        self._drafts: tuple[Layout, QPixmap] | None = None
        self._drilled: dict[int, int] = {}
        self._waiting: list[int] = []
        self._idle = QTimer(self)
        self._idle.setSingleShot(True)
        self._idle.setInterval(0)
        self._idle.timeout.connect(self._count_one)
        desk.place.opened.connect(self.forget)

    def forget(self) -> None:
        """Begin anew with another vehicle."""
        self._pictures.clear()
        self._drafts = None
        self._drilled.clear()
        self._waiting.clear()

    def card(self, pick: Pick) -> JobCard:
        """Return what stands on a card now."""
        revision = self.desk.revision(pick)
        if revision is None:
            return JobCard("draft", "now", foot=draft_words(self.desk.kept_as), draft=True)
        return JobCard(
            f"rev {revision.number}",
            day_words(revision.kept, datetime.now().astimezone()),
            revision.note,
            foot_words(self._printed(revision), self._drilled.get(revision.number, 0)),
            lean_of(revision.number),
        )

    def _printed(self, revision: Revision) -> bool:
        return any(str(line.revision) == str(revision.number) for line in self.desk.prints)

    def want(self, shown: Iterable[Revision]) -> None:
        """Have the holes of these counted, the first of them first."""
        self._waiting = [revision.number for revision in shown if revision.number not in self._drilled]
        if self._waiting:
            self._idle.start()

    def rest(self) -> None:
        """Count nothing more until it is wanted again."""
        self._idle.stop()
        self._waiting.clear()

    def _count_one(self) -> None:
        if not self._waiting:
            return
        number = self._waiting.pop(0)
        try:
            self._drilled[number] = drilled_count(self.desk.layout(number))
        except Refused:
            self._drilled[number] = 0
        if self._drilled[number]:
            self.counted.emit()
        if self._waiting:
            self._idle.start()

    def picture(self, pick: Pick) -> QPixmap | None:
        """Return the small picture of a card, None where none was kept and none can be made."""
        if pick == DRAFT:
            return self._of_draft()
        if pick not in self._pictures:
            self._pictures[pick] = self._stored(pick)
            while len(self._pictures) > PICTURES:
                self._pictures.popitem(last=False)
        self._pictures.move_to_end(pick)
        return self._pictures[pick]

    def _of_draft(self) -> QPixmap:
        layout = self.desk.place.layout
        if self._drafts is None or not _alike(self._drafts[0], layout):
            self._drafts = layout, _pixmap(picture(layout))
        return self._drafts[1]

    def _stored(self, number: int) -> QPixmap | None:
        try:
            data = self.desk.place.job.picture(number)
            made = QPixmap() if data is None else _pixmap(data)
            return _pixmap(picture(self.desk.layout(number))) if made.isNull() else made
        except Refused:
            return None  # the card hangs there without; why is said where it is chosen


def _alike(a: Layout, b: Layout) -> bool:
    """Return whether two layouts look alike in small: the same, but for what is printed and drilled."""
    if a is b:
        return True
    same = all(getattr(a, name) is getattr(b, name) for name in ("bay", "boards", "cards", "gear"))
    return same or replace(a, printed=None) == replace(b, printed=None)


def _pixmap(data: bytes) -> QPixmap:
    made = QPixmap()
    made.loadFromData(data)
    return made
