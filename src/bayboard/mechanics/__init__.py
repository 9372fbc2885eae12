"""What holds the gear and the board: the holes they ask for.

Reading order: `holes`.
"""
