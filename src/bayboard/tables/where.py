"""Where the shipped files are: inside the wheel, or the checkout when installed editable."""

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parents[1]


def shipped(*parts: str) -> Path:
    """Return the path of a shipped file, e.g. `shipped("assets", "fonts", "x.ttf")`.

    Raises `FileNotFoundError` naming the path when it is in neither place.
    """
    for root in (_PACKAGE / "_data", _PACKAGE.parents[1]):
        path = root.joinpath(*parts)
        if path.exists():
            return path
    raise FileNotFoundError(f"{'/'.join(parts)} is not among the shipped files")
