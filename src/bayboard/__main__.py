"""The front door: the only place that chooses between the window and a command."""

import io
import sys

COMMANDS = ("check", "print", "keep", "revisions", "compare", "restore", "convert")


def main(words: list[str] | None = None) -> int:
    """Run Bayboard with the words of the command line; return the exit code.

    A first word that is a command or an option goes to the commands; anything else is a file for the window.
    """
    words = sys.argv[1:] if words is None else words
    _speak_utf8()
    if words and (words[0] in COMMANDS or words[0].startswith("-") or len(words) > 1):
        from bayboard.commands.run import run  # noqa: PLC0415  the window need not load it

        return run(words)
    from bayboard.window.app import run as open_window  # noqa: PLC0415  no command loads Qt

    return open_window(words[0] if words else None)


def _speak_utf8() -> None:
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(encoding="utf-8", newline="\n", errors="backslashreplace")


if __name__ == "__main__":
    sys.exit(main())
