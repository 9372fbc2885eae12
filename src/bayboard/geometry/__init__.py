"""Shapes in mm: outlines, solids, what stands in the way of an eye, a hand or a lead."""
