"""The kinds of claim, one file each: phrases, definition, check."""
