"""What holds the gear and the board: the holes they ask for, how they are drilled, what was printed of them.

Reading order: `holes`, `bits`, `printed`, `drill_day`.
"""
