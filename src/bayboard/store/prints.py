"""The log of prints: lines are added, never changed."""

from dataclasses import replace

from bayboard.model.refused import Refused
from bayboard.store.base import Base, Row
from bayboard.store.records import PrintLine
from bayboard.store.sealed import is_time, now, seal
from bayboard.store.sentences import path_words

MOST = 10_000  # lines of a log
_LONGEST = 1_000  # letters of a word in a line
_FACTS = "number, at, revision, paper, face, sheets, words, pages"


def listed(base: Base) -> tuple[PrintLine, ...]:
    """Return what was printed, oldest first, as far as it is whole."""
    found = (whole(row) for row in base.few(MOST, f"SELECT {_FACTS}, seal FROM print ORDER BY number"))
    return tuple(line for line in found if line is not None)


def numbers(base: Base) -> tuple[int, ...]:
    """Return the numbers of all lines, whole or not."""
    return tuple(row[0] for row in base.few(MOST, "SELECT number FROM print ORDER BY number"))


def line_of(base: Base, number: int) -> PrintLine:
    """Return one line; raise `Refused` when it is damaged."""
    row = base.one(f"SELECT {_FACTS}, seal FROM print WHERE number = ?", number)
    line = whole(row) if row else None
    if line is None:
        raise base.damaged(f"line {number} of the print log is damaged")
    return line


def log(base: Base, line: PrintLine) -> None:
    """Add a line under the next number, at this moment."""
    last = base.one("SELECT max(number) FROM print")
    number = (last[0] or 0) + 1 if last else 1
    if number > MOST:
        raise Refused(path_words(base.path), f"{MOST} prints are all it logs", "Go on in a copy")
    put(base, replace(line, number=number, at=now()))


def put(base: Base, line: PrintLine) -> None:
    """Write a line as it is."""
    sheets = ",".join(line.sheets)
    told = (line.number, line.at, line.revision, line.paper, line.face, sheets, line.words, line.pages)
    base.do(
        f"INSERT INTO print ({_FACTS}, seal) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)", *told, seal("print", *told)
    )


def whole(row: Row) -> PrintLine | None:
    """Return a row as a line, None when its seal is broken."""
    number, at, revision, paper, face, sheets, words, pages, sealed = row
    fine = isinstance(number, int) and isinstance(pages, int) and is_time(at)
    fine = fine and all(map(_is_word, (revision, paper, face, sheets, words)))
    if not fine or seal("print", *row[:8]) != sealed:
        return None
    return PrintLine(
        number=number,
        at=at,
        revision=revision,
        paper=paper,
        face=face,
        sheets=tuple(sheets.split(",")) if sheets else (),
        words=words,
        pages=pages,
    )


def _is_word(text: object) -> bool:
    return isinstance(text, str) and len(text) <= _LONGEST
