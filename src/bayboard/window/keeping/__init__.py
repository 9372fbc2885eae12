"""The window's ways in and out of a vehicle's file, and keeping as one goes.

Read keeper.py first (every change reaches the file), then door (opening), ways_out (what can be
done when the file cannot be written), copying, note_line (keeping a revision), view_state, whole_check,
kept_only, words.  How it stands in its file is told by `window/standing.py`.
"""
