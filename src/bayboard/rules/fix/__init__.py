"""What is wrong with the holes: fixings, edges, what lies behind."""
