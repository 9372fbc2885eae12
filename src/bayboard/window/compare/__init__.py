"""Kept: the revisions of a vehicle on a line, any two of them compared, and the way back to one.

What was stands in chalk, what is in matter.
"""
