"""The painter's half of the window: pure functions over a painter, no widgets, no job.

Reading order: `scale` (mm to pixels), `show` (what is shown besides the layout), `strokes`, `shadow`,
`marks`, `tags`; a stand-in: `cut`, `signs`, `words`, `face`, `gear`; what lies on the wall: `ground`,
`fixings`, `jacket`, `leads`, `names`; what is laid on it: `chalk`, `uncovered`, `mark_spots`, `leaders`,
`docking` (which alone remembers the frame before); then the views
that put them together, `wall` and `section` (with `profile`, `sights`), and around them `tapes`, `bench`
and `strip`.
"""
