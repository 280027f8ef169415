"""The products, one a module; each ends in one `PRODUCT = Product(...)`."""
