"""One open job without a window: do, preview, undo, what the rules say, save.

Reading order: `change`, `runner`, `job`.
"""
