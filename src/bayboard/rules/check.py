"""All that the rules say of a layout."""
