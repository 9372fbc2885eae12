"""One open job without a window: do, preview, undo, what the rules say, keep, go back, print.

Reading order: `change`, `runner`, `past` (undo steps and what the file holds of them), `filed` (its
revisions), `job`; then `printing`, `on_the_bench` (the sheets that lie there), `row_words` (what differs
between two revisions), `picture` and `shelf`.
"""
