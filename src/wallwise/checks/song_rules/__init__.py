"""The rules that need a song, a file each."""
