"""The painter's half of the window: pure functions over a painter, no widgets, no job, no state.

Reading order: `scale` (mm to pixels), `show` (what is shown besides the layout), `marks`, `tags`, `ground`,
`leads`, `gear`, `chalk`, then the two views that put them together, `wall` and `section`; around them
`tapes`, `bench` and `strip`.
"""
