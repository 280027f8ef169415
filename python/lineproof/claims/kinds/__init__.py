"""The kinds of claim, one file each: frames, definition, check."""
