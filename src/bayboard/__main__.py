"""The front door: chooses the window or a command."""

import sys


def main() -> int:
    """Run Bayboard with the words of the command line; return the exit code."""
    raise NotImplementedError


if __name__ == "__main__":
    sys.exit(main())
