"""Which vehicle was open last, and other small things the window remembers; harmless when broken."""

import contextlib
import json
from pathlib import Path

import platformdirs

_FILE = "window.json"


def data_folder() -> Path:
    """Return the folder where the window keeps its own things."""
    return Path(platformdirs.user_data_dir("Bayboard", appauthor=False))


def aside_folder() -> Path:
    """Return the folder where layouts are saved aside when something broke."""
    return data_folder() / "set aside"


def last_vehicle() -> Path | None:
    """Return the file that was open last, None when there was none or it is gone."""
    try:
        kept = json.loads((data_folder() / _FILE).read_text(encoding="utf-8"))
        path = Path(kept["last"])
        return path if path.is_file() else None
    except (OSError, ValueError, KeyError, TypeError):
        return None


def remember(path: Path) -> None:
    """Remember the file that is open; that it cannot be written is no reason to stop."""
    with contextlib.suppress(OSError, ValueError):
        data_folder().mkdir(parents=True, exist_ok=True)
        text = json.dumps({"last": str(path.resolve())}, ensure_ascii=False)
        (data_folder() / _FILE).write_text(text + "\n", encoding="utf-8", newline="\n")
