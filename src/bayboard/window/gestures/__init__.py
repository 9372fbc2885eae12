"""One class for each thing a hand does with the mouse: press, move, release, or Escape in between.

Reading order: `gesture`, `held`, then `move`, `turn`, `pick_up`, `marquee`, `span`, `chalk`, `pan`.
"""
