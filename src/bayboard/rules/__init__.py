"""The rules: one file each, named for the fault, judged on one scene.

Reading order: `finding`, `scene`, one rule of `arrange`, then `check`, which holds the list of them all.
"""
