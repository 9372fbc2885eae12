"""What is wrong with where the gear and the board stand: gaps, depth, sight, reach."""
