"""Choose the command and turn a refusal into one sentence and exit code 2."""

import os
import sys
from importlib import import_module
from types import ModuleType

from bayboard import __version__
from bayboard.commands.words import Words
from bayboard.model.refused import Refused
from bayboard.store.sentences import reason

UNUSABLE, STOPPED = 2, 130
_COMMANDS = {
    "check": "say what is wrong with a layout",
    "print": "print full-size templates and card stand-ins to a PDF",
    "keep": "keep the draft of a job file as a revision",
    "revisions": "list what was kept of a vehicle",
    "compare": "say what differs between two revisions",
    "restore": "make an old revision the draft again",
    "convert": "write a layout in its normal form, or a job file",
}


def run(words: list[str]) -> int:
    """Run the command that `words` name; return 0, 1 (check: some must), 2 (unusable) or 130 (stopped)."""
    try:
        code = _run(words)
        if sys.stdout is not None:
            sys.stdout.flush()
        return code
    except Refused as refused:
        print(f"bayboard: {refused}", file=sys.stderr)
    except KeyboardInterrupt:
        print("bayboard: stopped before the end.", file=sys.stderr)
        return STOPPED
    except BrokenPipeError:  # who read the answer has read enough
        _hush()
    except OSError as error:
        place = error.filename or "the answer"
        print(f"bayboard: {place} cannot be written ({reason(error)}). Name another place.", file=sys.stderr)
        _hush()
    return UNUSABLE


def _hush() -> None:
    """Let what is left of the answer go nowhere, so that the end of the program does not try again."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, sys.stdout.fileno())
    os.close(nowhere)


def _run(words: list[str]) -> int:
    parser = Words(
        prog="bayboard",
        description="Arrange gear on a vehicle board. Without a command: open the window, with FILE in it.",
        epilog="bayboard [FILE] opens the window.",
    )
    parser.add_argument("--version", action="version", version=f"bayboard {__version__}")
    commands = parser.add_subparsers(dest="command", metavar="COMMAND", required=True, parser_class=Words)
    asked = next((word for word in words if word in _COMMANDS), None)
    for name, says in _COMMANDS.items():
        described = commands.add_parser(name, help=says, description=f"{says[0].upper()}{says[1:]}.")
        if name == asked:
            _room(name).describe(described)
    chosen = parser.parse_args(words)
    return int(_room(chosen.command).run(chosen))


def _room(command: str) -> ModuleType:
    """Return the module of a command; only that of the command asked for is ever loaded."""
    return import_module(f"bayboard.commands.{command}_command")
