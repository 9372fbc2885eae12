"""Drill day: the board over the whole window, the next hole lit, its drill in huge type, one press a hole.

Reading order: `show` (what is seen, as values), `plan` (where it lies), the `paint_` files, `book` (what is
made and what comes next), `view` and `stage`.
"""
