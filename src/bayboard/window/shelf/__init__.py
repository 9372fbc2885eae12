"""The shelf of vehicles: job cards on a line, found by name or note; one is taken down and worked on.

Read stage.py first; then desk (what is shown), looking (how the files are read beside the window), line
(the cards), choice_card (the one that is chosen), words.
"""
