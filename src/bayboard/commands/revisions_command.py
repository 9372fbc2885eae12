"""`bayboard revisions FILE [--json]`: list what was kept of a vehicle."""

import argparse
import json
from typing import Any

from bayboard.commands.opened import looked_into
from bayboard.commands.words import local_time
from bayboard.store.job_file import JobFile, PrintLine
from bayboard.store.named import job_named


def describe(parser: argparse.ArgumentParser) -> None:
    """Add the command's words to `parser`."""
    parser.add_argument("file", metavar="FILE", help="a .bay job file")
    parser.add_argument("--json", action="store_true", help="write them as JSON")


def run(chosen: argparse.Namespace) -> int:
    """Print the revisions, oldest first, then the draft; return 0."""
    with looked_into(job_named(chosen.file)) as file:
        if chosen.json:
            print(json.dumps(as_json(file), ensure_ascii=False, indent=1))
        else:
            print("\n".join(as_text(file)))
    return 0


def as_json(file: JobFile) -> dict[str, Any]:
    """Return the revisions, the prints and the draft as the JSON value that `revisions --json` prints."""
    draft = file.draft()
    return {
        "bayboard": 1,
        "revisions": [
            {
                "number": kept.number,
                "parent": kept.parent,
                "kept": kept.kept,
                "note": kept.note,
                "sha256": kept.sha256,
            }
            for kept in file.revisions()
        ],
        "draft": {"parent": draft.parent, "changed": draft.changed, "sha256": draft.sha256},
        "prints": [
            {"at": line.at, "revision": line.revision, "paper": line.paper, "face": line.face}
            | {"sheets": line.sheets, "words": line.words, "pages": line.pages}
            for line in file.prints()
        ],
    }


def as_text(file: JobFile) -> list[str]:
    """Return the revisions as lines to read."""
    kept, draft, prints = file.revisions(), file.draft(), file.prints()
    lines = [_line(r.number, r.kept, r.note, prints) for r in kept] or ["Nothing is kept yet."]
    after = f"after revision {draft.parent}" if draft.parent is not None else "not kept yet"
    return [*lines, f"draft  {local_time(draft.changed)}  {after}"]


def _line(number: int, time: str, note: str, prints: tuple[PrintLine, ...]) -> str:
    times = sum(line.revision == str(number) for line in prints)
    told = {0: "", 1: "  (printed)"}.get(times, f"  (printed {times} times)")
    return f"{number:>5}  {local_time(time)}  {' '.join(note.split())}{told}".rstrip()
