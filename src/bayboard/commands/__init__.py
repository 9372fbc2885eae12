"""The command line: one file a command, each a function from words to an exit code.

Reading order: `run`, then the command you came for.
"""
