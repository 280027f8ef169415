"""What the opponent will really play: the model of natural moves, and what a study finds."""
