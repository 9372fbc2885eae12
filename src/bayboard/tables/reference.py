"""The reference figures that the rooms above ask for, each from a table of shared/reference.

Reading order: `rows`, `threads`, `wire`, `sheets`.
"""

from bayboard.tables.sheets import paper
from bayboard.tables.threads import Insert, Thread, insert, thread, thread_names
from bayboard.tables.wire import Wire, awg_diameter, lead_od, wire

__all__ = [
    "Insert",
    "Thread",
    "Wire",
    "awg_diameter",
    "insert",
    "lead_od",
    "paper",
    "thread",
    "thread_names",
    "wire",
]
