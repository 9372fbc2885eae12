"""Bayboard: arrange gear on a vehicle board, be told what is wrong, print it full size."""

__version__ = "0.3.0"
