"""What the long runs measured, kept in figures.json with all that is needed to doubt it.

A figure holds: what it is a ratio of (`baseline`), the `goal` it must not exceed, `value`, `spread` (lowest
and highest), `count`, `seed`, and the `rooms` it measured with a hash of their code, so that a figure older
than its room is seen.
"""

import ast
import hashlib
import json
import statistics
import time
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

HERE = Path(__file__).resolve().parent
FILE = HERE / "figures.json"
SOURCE = HERE.parents[1] / "src" / "bayboard"
TOO_NOISY = 1.5  # spread of the baseline over which a run is repeated, never judged


def code_hash(rooms: Sequence[str]) -> str:
    """Return a hash of the rooms' code, alike on every Python, blind to docstrings and lines of comment."""
    digest = hashlib.sha256()
    for room in sorted(rooms):
        place = SOURCE / room
        for path in [place] if place.is_file() else sorted(place.rglob("*.py")):
            digest.update(path.relative_to(SOURCE).as_posix().encode())
            digest.update("\n".join(_bare(path.read_text(encoding="utf-8"))).encode())
    return digest.hexdigest()[:16]


def _bare(text: str) -> list[str]:
    told = set()
    for node in ast.walk(ast.parse(text)):
        body = getattr(node, "body", None)
        first = body[0] if isinstance(body, list) and body else None
        if isinstance(first, ast.Expr) and isinstance(first.value, ast.Constant):
            told |= set(range(first.lineno, (first.end_lineno or first.lineno) + 1))
    lines = enumerate(text.splitlines(), start=1)
    return [line for number, line in lines if number not in told and line.strip() and line.strip()[0] != "#"]


def read() -> dict[str, dict[str, Any]]:
    """Return the kept figures by name."""
    return json.loads(FILE.read_text(encoding="utf-8")) if FILE.exists() else {}


def keep(name: str, rooms: Sequence[str], **figure: Any) -> None:
    """Write one figure; `figure` holds baseline, goal, value, spread, count, seed."""
    known = read()
    known[name] = {**figure, "rooms": list(rooms), "code": code_hash(rooms)}
    FILE.write_text(json.dumps(dict(sorted(known.items())), indent=1) + "\n", encoding="utf-8", newline="\n")
    print(f"{name}: {figure}", flush=True)


def paired(ours: Callable[[], object], baseline: Callable[[], object], pairs: int = 15) -> dict[str, Any]:
    """Return the median of ours / baseline over interleaved pairs, its spread and the baseline's own."""
    ours(), baseline()
    ratios, idle = [], []
    for _ in range(pairs):
        mine, theirs = _seconds(ours), _seconds(baseline)
        ratios.append(mine / theirs)
        idle.append(theirs)
    return {
        "value": round(statistics.median(ratios), 5),
        "spread": [round(min(ratios), 5), round(max(ratios), 5)],
        "count": pairs,
        "baseline_spread": round(max(idle) / min(idle), 2),
    }


def _seconds(act: Callable[[], object]) -> float:
    start = time.perf_counter()
    act()
    return time.perf_counter() - start
