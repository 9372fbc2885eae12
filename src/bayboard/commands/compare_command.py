"""`bayboard compare FILE A B [--json]`: what differs between two revisions, or a revision and the draft."""

import argparse
import json
from typing import Any

from bayboard.commands.opened import looked_into
from bayboard.job.row_words import Rows
from bayboard.model.compare import Comparison, compare
from bayboard.model.layout import Layout
from bayboard.store.named import job_named, layout_in, revision_named

_DIGITS = 4  # figures in --json are rounded to 0.0001


def describe(parser: argparse.ArgumentParser) -> None:
    """Add the command's words to `parser`."""
    parser.add_argument("file", metavar="FILE", help="a .bay job file")
    parser.add_argument("old", metavar="A", help="the number of a revision, or draft")
    parser.add_argument("new", metavar="B", help="the number of a revision, or draft")
    parser.add_argument("--json", action="store_true", help="write it as JSON")


def run(chosen: argparse.Namespace) -> int:
    """Print what differs from A to B; return 0."""
    old, new = revision_named(chosen.old), revision_named(chosen.new)
    with looked_into(job_named(chosen.file)) as file:
        before, after = layout_in(file, old), layout_in(file, new)
    found = compare(before, after)
    if chosen.json:
        print(json.dumps(as_json(found), ensure_ascii=False, indent=1))
    else:
        print("\n".join(as_text(before, after, found)))
    return 0


def as_json(found: Comparison) -> dict[str, Any]:
    """Return what differs as the JSON value that `compare --json` prints."""
    return {
        "moved": [
            {"id": m.id, "by": [_rounded(v) for v in m.by], "turned": _rounded(m.turned)} for m in found.moved
        ],
        "added": list(found.added),
        "removed": list(found.removed),
        "changed": [
            {"id": c.id, "member": c.member, "from": _rounded(c.before), "to": _rounded(c.after)}
            for c in found.changed
        ],
    }


def as_text(old: Layout, new: Layout, found: Comparison) -> list[str]:
    """Return what differs as lines to read: each thing, then what became of it."""
    rows = Rows(old, new, found).all()
    wide = max(len(row.label) for row in rows)
    return [f"{row.label:<{wide}}  {row.words}".strip() for row in rows]


def _rounded(value: Any) -> Any:
    """Return a document's value with its figures rounded, whatever it is made of."""
    if isinstance(value, bool):
        return value
    if isinstance(value, float):
        return round(value, _DIGITS) + 0.0
    if isinstance(value, dict):
        return {name: _rounded(part) for name, part in value.items()}
    if isinstance(value, list | tuple):
        return [_rounded(part) for part in value]
    return value
