"""The desk: a lesson written in the browser, on this machine only, and checked while it is written.

`serve` runs it; `app` answers the page; `lessons` holds what is open. See docs/desk.md.
"""
