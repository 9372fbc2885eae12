"""What stands in a job file, as values."""

from dataclasses import dataclass

from bayboard.model.layout import Layout


@dataclass(frozen=True, slots=True)
class Revision:
    """A layout that was kept: its number from 1, the revision it came of, when (UTC), and why.

    `sha256` is that of its normal form.
    """

    number: int
    parent: int | None
    kept: str
    note: str
    sha256: str


@dataclass(frozen=True, slots=True)
class Mark:
    """An undo step in the file, unread: `label` are the words of the edit that led to it."""

    number: int
    label: str


@dataclass(frozen=True, slots=True)
class Draft:
    """What is worked on, the revision it came of, and its undo steps.

    `changed`: when (UTC).  `states`: the steps as a row of layouts, oldest first; `at`: the number of
    the one that the draft stands at, 0 when there is none.
    """

    layout: Layout
    parent: int | None
    changed: str
    sha256: str
    states: tuple[Mark, ...]
    at: int


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintLine:
    """A print that was made: of which revision, on what, which kinds of sheet, the set code's words.

    `number` and `at` (UTC) are given by the file.
    """

    number: int = 0
    at: str = ""
    revision: str
    paper: str
    face: str
    sheets: tuple[str, ...]
    words: str
    pages: int
