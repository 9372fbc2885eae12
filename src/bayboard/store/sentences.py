"""What the system says of a file, as one sentence for a person."""

import contextlib
import os
from collections.abc import Iterator
from pathlib import Path

from bayboard.model.places import quoted
from bayboard.model.refused import Refused


def path_words(path: Path) -> str:
    """Return the path as it is shown, quoted when it holds letters that cannot be."""
    text = str(path)
    return text if text.isprintable() else quoted(text)


def is_there(path: Path | str) -> bool:
    """Return whether there is anything of that name; a name that is too long is none."""
    return os.path.exists(path)  # noqa: PTH110  Path's own raises for such a name


def is_file(path: Path) -> bool:
    """Return whether there is a plain file of that name; a name that is too long is none."""
    return os.path.isfile(path)  # noqa: PTH113  Path's own raises for such a name


def unopened(path: Path, error: Exception, ending: str = ".json") -> Refused:
    """Return the sentence for a file that cannot be read; `ending`: what is looked for in a folder."""
    if os.path.isdir(path):  # noqa: PTH112  Path's own raises for a name that is too long
        return Refused(path_words(path), "this is a folder", f"Name a {ending} file in it")
    if isinstance(error, FileNotFoundError | ValueError):
        return Refused(path_words(path), "there is no such file", "Check the name and the folder")
    if isinstance(error, PermissionError):
        return Refused(path_words(path), "this file may not be read", "Ask its owner, or copy it")
    return Refused(path_words(path), f"this file cannot be read ({reason(error)})", "Try a copy of it")


def unsaved(path: Path, error: Exception) -> Refused:
    """Return the sentence for a file that cannot be written."""
    if isinstance(error, FileNotFoundError | NotADirectoryError | ValueError):
        return Refused(
            path_words(path), "there is no such folder to save in", "Make the folder, or name another"
        )
    if isinstance(error, PermissionError):
        return Refused(path_words(path), "nothing may be written there", "Save in another folder")
    return Refused(
        path_words(path), f"this file cannot be written ({reason(error)})", "Save in another place"
    )


@contextlib.contextmanager
def said_of(path: Path) -> Iterator[None]:
    """Turn what the system says when `path` is written into one sentence about it."""
    try:
        yield
    except (OSError, ValueError) as error:
        raise unsaved(path, error) from None


def reason(error: Exception) -> str:
    """Return the system's own words for an error, beginning small."""
    text = error.strerror if isinstance(error, OSError) and error.strerror else type(error).__name__
    return text[:1].lower() + text[1:]
