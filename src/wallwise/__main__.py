"""`python -m wallwise`: the same as the command `wallwise`."""

import sys

from wallwise.cli import main

sys.exit(main())
