"""Lengths, angles, masses and figures between what is typed or shown and the program's mm, degrees, kg.

Reading order: `length` (what callers use), `typed` (the grammar of a typed length), `figure` (the rest).
"""
