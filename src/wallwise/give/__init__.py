"""What leaves the house: the page and its pictures."""
