"""Students' games against a lesson."""
