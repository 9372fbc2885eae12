"""What is wrong between the bay as measured and the boards in it, whatever stands on them."""
