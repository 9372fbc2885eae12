"""The window: what is on screen, and what hands and keys do there.  It shows and sends; it decides nothing.

Reading order: `app` and `first_frame` (how it opens), `main_window` (the parts and their places), `workplace`
(what is looked at), `wall_view` with `gestures/`, the panels, and `draw/`, the painter's half.
"""
