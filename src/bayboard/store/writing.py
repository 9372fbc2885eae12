"""A write to a job file: one transaction, and none before it is sure that the file is still ours."""

import contextlib
import sqlite3
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from bayboard.store import holder
from bayboard.store.base import Base
from bayboard.store.open_here import Identity, identity_of
from bayboard.store.sentences import path_words
from bayboard.store.troubles import Changed, moved


@dataclass
class Writer:
    """What this window knows of the file that it holds, which it opened at `place`.

    `writes`: the file's counter after our last write; `unsure`: a write failed, so that it may or may
    not have been the last.
    """

    base: Base
    place: Path
    token: str
    identity: Identity
    writes: int
    unsure: bool = False

    @contextlib.contextmanager
    def writing(self, first: Callable[[], None]) -> Iterator[None]:
        """Run a transaction; raise `Refused`, nothing written, when it cannot be or the file is not ours.

        `first` runs inside, before anything is written.
        """
        self._is_where_it_was()
        rolled_back(self.base)  # what a disk that was gone did not let us take back
        self.base.do("BEGIN IMMEDIATE")
        try:
            self._is_as_we_left_it()
            first()
            yield
            self.base.do("UPDATE holder SET writes = writes + 1 WHERE one = 1")
            self.unsure = True
            self.base.do("COMMIT")
        except BaseException:
            rolled_back(self.base)
            raise
        self.writes, self.unsure = self.writes + 1, False

    def _is_where_it_was(self) -> None:
        path = self.base.path
        try:
            there = identity_of(self.place)
        except (OSError, ValueError):
            raise moved(path) from None
        if there != self.identity:
            raise Changed(
                path_words(path), "another file has taken this one's place", "Save a copy under another name"
            )

    def _is_as_we_left_it(self) -> None:
        row = self.base.one("SELECT token, writes FROM holder WHERE one = 1")
        fine = (self.writes, self.writes + 1) if self.unsure else (self.writes,)
        if row is not None and row[0] == self.token and row[1] in fine:
            self.writes = row[1]
            return
        other = holder.held_by(self.base)
        who = f" by {other.user} on {other.host}" if other and other.token != self.token else ""
        raise Changed(
            path_words(self.base.path),
            f"this file was changed{who} since this window wrote it",
            "Open it again, or save a copy under another name",
        )


def rolled_back(base: Base) -> None:
    """Take back what was begun, whatever state the file is in."""
    if base.conn.in_transaction:
        with contextlib.suppress(sqlite3.Error):
            base.conn.execute("ROLLBACK")
