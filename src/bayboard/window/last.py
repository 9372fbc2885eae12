"""Which vehicle was open last, and other small things the window remembers; harmless when broken."""

import contextlib
import json
from pathlib import Path
from typing import Any

import platformdirs

_FILE = "window.json"
MOST_RECENT = 30


def data_folder() -> Path:
    """Return the folder where the window keeps its own things."""
    return Path(platformdirs.user_data_dir("Bayboard", appauthor=False))


def aside_folder() -> Path:
    """Return the folder where layouts are saved aside when something broke."""
    return data_folder() / "set aside"


def last_vehicle() -> Path | None:
    """Return the file that was open last, None when there was none or it is gone."""
    try:
        path = Path(_kept()["last"])
        return path if path.is_file() else None
    except (OSError, ValueError, KeyError, TypeError):
        return None


def recent() -> tuple[Path, ...]:
    """Return the files that were open, the last first; whether they are still there is not looked at."""
    try:
        kept = _kept()
        listed = kept.get("recent", [])
        names = [kept.get("last"), *(listed if isinstance(listed, list) else [])]
    except (OSError, ValueError):
        return ()
    return tuple(Path(name) for name in dict.fromkeys(n for n in names if isinstance(n, str) and n))[
        :MOST_RECENT
    ]


def remember(path: Path) -> None:
    """Remember the file that is open; that it cannot be written is no reason to stop."""
    with contextlib.suppress(OSError, ValueError):
        whole = str(path.resolve())
        names = dict.fromkeys((whole, *(str(known) for known in recent())))
        _keep({"last": whole, "recent": list(names)[:MOST_RECENT]})


def last_paper() -> tuple[str, float] | None:
    """Return the paper and the white edge (mm) last printed with, None when there are none."""
    try:
        paper, margin = _kept()["paper"]
        return str(paper), float(margin)
    except (OSError, ValueError, KeyError, TypeError):
        return None


def remember_paper(paper: str, margin: float) -> None:
    """Remember the paper in the printer and its white edge in mm."""
    with contextlib.suppress(OSError, ValueError):
        _keep({"paper": [paper, margin]})


def _kept() -> dict[str, Any]:
    kept = json.loads((data_folder() / _FILE).read_text(encoding="utf-8"))
    return kept if isinstance(kept, dict) else {}


def _keep(more: dict[str, Any]) -> None:
    """Write what is to be remembered beside what is remembered already."""
    kept: dict[str, Any] = {}
    with contextlib.suppress(OSError, ValueError):
        kept = _kept()
    data_folder().mkdir(parents=True, exist_ok=True)
    text = json.dumps(kept | more, ensure_ascii=False)
    (data_folder() / _FILE).write_text(text + "\n", encoding="utf-8", newline="\n")
