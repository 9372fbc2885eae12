"""The child that is killed: walks a job file act by act and tells each begin and end on its output.

    python writer.py PATH SEED DONE [slow] [spill]

`begin KIND N` and `end N SECONDS`: N acts are in the file once this is confirmed.  `slow` lingers at every
statement, so that a kill falls between two of one transaction.  `spill` leaves the connection a cache of
a few pages, so that pages reach the file before the transaction ends.
"""

import itertools
import os
import sqlite3
import sys
import time
from pathlib import Path

sys.path[:0] = [str(Path(__file__).resolve().parents[2])]

LINGER = 0.002  # s at each statement
MODES = frozenset(sys.argv[4:])


class Watched(sqlite3.Connection):
    """A connection that lingers or spills; what runs on it is the same."""

    def execute(self, sql, *given):
        if "slow" in MODES:
            time.sleep(LINGER)
        if "spill" in MODES and sql.lstrip().upper().startswith("BEGIN"):
            super().execute("pragma cache_size = 4")
            super().execute("pragma cache_spill = 1")
        return super().execute(sql, *given)


def watched(connect):
    """Return sqlite3.connect with every connection watched."""
    return lambda *given, **named: connect(*given, **{"factory": Watched} | named)


sqlite3.connect = watched(sqlite3.connect)

from tests.store.acts import act, start, walked  # noqa: E402

from bayboard.store.job_file import open_job_file  # noqa: E402


def say(*words):
    """Write one line in one go; a pipe takes that much whole."""
    os.write(1, (" ".join(map(str, words)) + "\n").encode())


def told(kind, number, perform, *given):
    """Perform an act between its two lines, each out before anything else happens."""
    say("begin", kind, number)
    began = time.perf_counter()
    result = perform(*given)
    say("end", number, time.perf_counter() - began)
    return result


def main(path, seed, done):
    """Open the file, or make it when nothing is done yet, and go on for ever."""
    plain, make = start(seed)
    if done < 0:
        file = told("make", 0, make, path)
    else:
        file = told("open", done, open_job_file, path)
        plain = walked(seed, done)
    for number in itertools.count(max(done, 0) + 1):
        kind, perform = act(seed, number, plain)
        told(kind, number, perform, file)
        if number % 7 == 0:
            told("close", number, file.close)
            file = told("open", number, open_job_file, path)


if __name__ == "__main__":
    main(Path(sys.argv[1]), sys.argv[2], int(sys.argv[3]))
