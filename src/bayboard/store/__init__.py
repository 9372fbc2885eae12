"""Layouts on disk.

Reading order: `files` (one layout in a .json file).
"""
