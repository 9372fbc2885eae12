"""What was made already: holes that were drilled, sheets that were printed."""
