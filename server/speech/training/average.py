"""Averages the weights of two trainings. The second started from the result of the first.

    python3 average.py FIRST SECOND SHARE OUT

OUT receives (1 - SHARE) of FIRST and SHARE of SECOND, as float16. One training heard words as they were recorded, the
other heard them cut, hurried and in other voices. The average hears both kinds better than either training.
"""

import sys
from pathlib import Path

import torch


def main(first: Path, second: Path, share: float, out: Path) -> None:
    a, b = (torch.load(file, map_location="cpu") for file in (first, second))
    torch.save({name: a[name] if name == "words" else ((1 - share) * a[name].float() + share * b[name].float()).half() for name in a}, out)


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]), float(sys.argv[3]), Path(sys.argv[4]))
