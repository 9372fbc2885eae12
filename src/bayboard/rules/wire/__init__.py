"""What is wrong with the leads: where they run, and beside what."""
