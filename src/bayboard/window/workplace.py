"""What the window shows: one job, and how one looks at it.  Views read it and send edits through it.

It holds no rule and no geometry of its own: the job judges, this remembers what is selected, where the
chalk line stands and how large things are drawn, and says when one of them is another.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from PySide6.QtCore import QRectF, Signal

from bayboard.edits.edit import Edit
from bayboard.job.job import Job
from bayboard.model.layout import Layout, Units
from bayboard.model.refused import Refused
from bayboard.rules.check import Verdict
from bayboard.rules.finding import Finding
from bayboard.rules.scene import Scene
from bayboard.window.draw.scale import box_of
from bayboard.window.draw.show import Ghost, Lever, Snap
from bayboard.window.enlarged import Enlarged
from bayboard.window.judging import Judging
from bayboard.window.picking import Box, box_round
from bayboard.window.spans import Spans
from bayboard.window.theme import Theme

Key = tuple[str, tuple[str, ...]]


@dataclass(frozen=True, slots=True)
class Hand:
    """What a gesture shows as long as it lasts; `pieces` are those in the hand.

    `pulled` is how far (mm) the lines they were brought level with take them from where the hand is.
    `air`: those that are over no view, each with the pixel of the Wall where its origin is.
    """

    pieces: frozenset[str] = frozenset()
    ghosts: tuple[Ghost, ...] = ()
    snaps: tuple[Snap, ...] = ()
    marquee: tuple[float, float, float, float] | None = None
    turning: float | None = None
    pulled: tuple[float, float] = (0.0, 0.0)
    air: tuple[tuple[str, float, float], ...] = ()


EMPTY = Hand()


def key_of(finding: Finding) -> Key:
    """Return what stays the same about a finding while its measure changes."""
    return finding.rule, finding.subjects


class Workplace(Enlarged):
    """The job on the wall and how it is looked at."""

    opened = Signal()  # another job is on the wall
    changed = Signal()  # the shown layout or its verdict is another
    looked = Signal()  # selection, hand, chalk line, lever or pointer are others
    passed = Signal()  # the pointer is over another thing
    carried = Signal()  # what is in the hand went on; `changed` and `looked` come when the rules are done
    pointed = Signal()
    said = Signal(str)  # one line of text for the strip
    refused = Signal(str)  # one sentence that stays until it is read

    def __init__(self, job: Job, theme: Theme, first_start: bool = False) -> None:
        super().__init__(theme)
        self.wide = 0.0  # how far the Section is pulled wide over the Wall, from 0 to 1
        self.lever: Lever = "up"
        self.follow = True
        self.ledge_rect = QRectF()  # of the Bench, in pixels of the Wall
        self.rooms: tuple[str, ...] = ("measure", "arrange", "keep")  # of the rules that shout on this stage
        self._leave: Callable[[], None] | None = None
        self.judging = Judging(lambda: self.job, self)
        self.judging.done.connect(self.looked)
        self.spans = Spans(self.looked.emit)
        self.at_once = False  # the last change is one of many small ones: nothing slides
        self.take(job, first_start)

    def take(self, job: Job, first_start: bool = False) -> None:
        """Put another job on the wall; what was selected in the old one is forgotten."""
        if self._leave is not None:
            self._leave()
        self.job = job
        self._leave = job.on_change(self._follow_job)
        self.first_start = first_start
        self.selected: tuple[str, ...] = ()
        self._chosen: Box | None = None  # the box round what is selected, as the chalk line knows it
        self.by_keys = False  # the selection was walked to by keys: it wears the focus ring
        self.measured = False  # the selected piece wears its chalk measures outside a drag
        self.hovered: str | None = None
        self.pointer: tuple[float, float] | None = None
        self.pointed_at: Key | None = None  # the finding whose mark is under the pointer: its tag opens
        self.finding: Key | None = None
        self.cure: Edit | None = None  # the cure that is looked at, before it is taken
        self.service: str | None = None  # the service point that is spoken of: "A2.fuses"
        self.hand = EMPTY
        self.spans.put_away()
        self.chalk_x = _middle(job.shown)
        self.fit()
        self.opened.emit()
        self.changed.emit()
        self.looked.emit()

    # --- the job ---

    @property
    def layout(self) -> Layout:
        """Return the layout as kept, without what a gesture previews."""
        return self.job.layout

    @property
    def shown(self) -> Layout:
        """Return the layout as shown."""
        return self.job.shown

    @property
    def scene(self) -> Scene:
        """Return what is shown with its places, shapes and paths."""
        return self.job.scene

    @property
    def units(self) -> Units:
        """Return the units of everything shown."""
        return self.job.shown.units

    @property
    def verdict(self) -> Verdict:
        """Return what the rules say of what is shown."""
        return self.job.verdict

    @property
    def heard(self) -> Verdict:
        """Return what may be painted without waiting: the verdict less what it said of what just moved."""
        return self.job.heard

    @property
    def judged(self) -> bool:
        """Return whether the rules have looked at all that is shown; `changed` comes when they have."""
        return self.job.judged

    @property
    def told(self) -> Verdict:
        """Return what was last told in full: `verdict`, or while that is worked out the one before."""
        return self.judging.told()

    def _follow_job(self, *_: object) -> None:
        known = {gear.id for gear in self.job.shown.gear}
        if not known.issuperset(self.selected):
            self.selected = tuple(name for name in self.selected if name in known)
        if not self.hand.pieces and self._chosen_box() != self._chosen:
            self._follow_pieces(self.selected)
            self._chosen = self._chosen_box()
        if self.judged:
            self.judging.rest()
            self.changed.emit()

    def _chosen_box(self) -> Box | None:
        """Return the box round what is selected."""
        return box_round(self.scene.placed[n] for n in self.selected if n in self.scene.placed)

    def do(self, edit: Edit, fold: bool = False, at_once: bool = False) -> bool:
        """Do an edit; what cannot be done is said in a line.  `fold`: one undo step with the last.

        `at_once`: a step of many, so that nothing slides.
        """
        self.at_once = at_once
        try:
            self.job.do(edit, fold)
        except Refused as refused:
            self.said.emit(str(refused))
            return False
        return True

    def preview(self, edit: Edit, hand: Hand) -> None:
        """Show what an edit would do, with what the gesture lays on the scene."""
        self.hand = hand
        judged = self.judging.preview(edit)
        self._follow_pieces(hand.pieces)
        (self.looked if judged else self.carried).emit()

    def _follow_pieces(self, names: Iterable[str]) -> None:
        """Draw the chalk line through the middle of pieces, where it follows."""
        box = box_round(self.scene.placed[n] for n in names if n in self.scene.placed)
        if box is not None and self.follow:
            self.chalk_x = (box[0] + box[2]) / 2

    def show_hand(self, hand: Hand) -> None:
        """Show what a gesture lays on the scene without changing the layout."""
        self.hand = hand
        self.looked.emit()

    def settle(self, edit: Edit | None = None) -> None:
        """End a gesture: its preview goes, its edit is done once, or nothing is where it is None."""
        self.hand, self.at_once = EMPTY, False
        if edit is None or not self.do(edit):
            self.job.drop_preview()
        self._follow_pieces(self.selected)
        self.looked.emit()

    def undo(self) -> None:
        """Take the last step back and say what came back."""
        self._step(self.job.undo, "Undone", "Nothing to undo.")

    def redo(self) -> None:
        """Do again what was undone and say so."""
        self._step(self.job.redo, "Done again", "Nothing to do again.")

    def _step(self, step: Callable[[], str | None], word: str, nothing: str) -> None:
        """Go one step and say it; a step that cannot be gone is said, too."""
        self.at_once = False
        try:
            label = step()
            self.said.emit(f"{word}: {_small(label)}" if label else nothing)
        except Refused as refused:
            self.said.emit(str(refused))
        self.looked.emit()

    # --- how one looks at it ---

    def select(self, names: Iterable[str], by_keys: bool = False) -> None:
        """Select these stand-ins and no others; the section follows to their middle."""
        self.selected = tuple(dict.fromkeys(names))
        if self.service is not None and self.service.partition(".")[0] not in self.selected:
            self.service = None
        self.by_keys = by_keys
        self._chosen = self._chosen_box()
        self.measured = False
        self._follow_pieces(self.selected)
        self.looked.emit()

    def measure(self, on: bool = True) -> None:
        """Lay the chalk measures on the selected piece, or take them off."""
        self.measured = on
        self.looked.emit()

    def hover(self, name: str | None) -> None:
        """Say which stand-in or lead the pointer is over."""
        if name != self.hovered:
            self.hovered = name
            self.passed.emit()

    def point_at(self, finding: Finding | None) -> None:
        """Say which finding's mark the pointer is over."""
        key = None if finding is None else key_of(finding)
        if key != self.pointed_at:
            self.pointed_at = key
            self.looked.emit()

    def point(self, at: tuple[float, float] | None) -> None:
        """Say where the pointer is, mm on the Wall."""
        if at != self.pointer:
            self.pointer = at
            self.pointed.emit()

    def set_lever(self, lever: Lever) -> None:
        """Show the seat up or folded."""
        self.lever = lever
        self.looked.emit()

    def set_chalk(self, x: float) -> None:
        """Draw the chalk line at x, mm."""
        self.chalk_x = x
        self.looked.emit()

    def speak_of_point(self, subject: str | None, x: float | None = None) -> None:
        """Speak of a service point, or of none; the chalk line goes to its x."""
        self.service = subject
        if x is not None:
            self.chalk_x = x
        self.looked.emit()

    def take_up(self, finding: Finding | None) -> None:
        """Make a finding the one that is spoken of."""
        self.finding = None if finding is None else key_of(finding)
        self.looked.emit()

    def spoken_of(self) -> Finding | None:
        """Return the finding that is spoken of, None when it is gone."""
        if self.finding is None:
            return None
        return next((f for f in self.heard.findings if key_of(f) == self.finding), None)

    def show_cure(self, edit: Edit | None) -> None:
        """Show in chalk where a cure leads, or nothing."""
        if edit != self.cure:
            self.cure = edit
            self.looked.emit()

    def listen_to(self, rooms: tuple[str, ...]) -> None:
        """Let the rules of these rooms shout; the others fold."""
        if rooms != self.rooms:
            self.rooms = rooms
            self.changed.emit()

    def set_theme(self, theme: Theme) -> None:
        """Wear another set of colours."""
        self.theme = theme
        self.looked.emit()


def _small(label: str) -> str:
    return label[:1].lower() + label[1:]


def _middle(layout: Layout) -> float | None:
    """Return the x at which the chalk line starts: the middle of the first board, else of the wall."""
    points = layout.boards[0].outline if layout.boards else layout.bay.wall
    box = box_of(points)
    return None if box is None else (box[0] + box[2]) / 2
