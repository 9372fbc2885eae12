"""Full-size sheets: pages as values first, then a PDF and a map of them.

Reading order: `book`, `marks` (what a page is), `template` and `cards` (the kinds of sheet), `press` (the
PDF). A template: `face`, `form`, `seams`, `grid`, `tiles`, `stations`, `sheet`, `sheet_words`.  Stand-ins:
`stand_in`, `parts`, `pieces`, `nest`.  Words find their place on the `ground`.
"""
