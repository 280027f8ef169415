"""What the handout is made of: its lines, its blocks, its indexes and its page."""
