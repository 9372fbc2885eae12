"""Every way a layout changes, one file each, and the history that takes them back.

An edit is a frozen value: `apply` gives the layout after it, `label` says what it does.  What an edit
does not touch stays the same object.  Reading order: `edit`, `gear`, one edit, `history`.
"""
