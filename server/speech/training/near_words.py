"""Words of a dictionary that sound nearly like one of ours, or begin or end like one: "forward", "learn", "fork".

    python3 near_words.py DICTIONARY > words.txt

Writes the words of DICTIONARY and, after them, those that are near, as often as it takes to be half of all: `synthesise.py` draws from
that list. A word that is not ours must be spelled as it sounds, and the nearest are the hardest. Sounds are espeak-ng's.
"""

import re
import subprocess
import sys
from pathlib import Path

from distance import distance
from single_sounds import WORDS

VOWELS = "aeiouyæɑɒɔəɚɛɜɝɪʊʌɐᵻøœɵɘɨʉɯɤ"
MOST_MORE = 4  # sounds that a word may have before or after one of ours


def sounds(words: list[str]) -> dict[str, str]:
    """The sounds of each word in the International Phonetic Alphabet, without stress and length; all vowels are one."""
    said = subprocess.run(["espeak-ng", "-q", "--ipa", "-v", "en-us"], input="".join(f"{w}.\n\n" for w in words), text=True, check=True, capture_output=True).stdout
    lines = [line for line in said.splitlines() if line.strip()]
    assert len(lines) == len(words), f"{len(lines)} lines of sounds for {len(words)} words"
    letters = ("".join("V" if c in VOWELS else c for c in line if c.isalpha() and c not in "ˈˌː") for line in lines)
    return {w: re.sub("V+", "V", line) for w, line in zip(words, letters)}


def near(word: str, ours: list[str]) -> bool:
    for one in ours:
        if abs(len(word) - len(one)) <= 1 and 0 < distance(word, one) <= 1:
            return True
        if len(one) >= 2 and len(one) < len(word) <= len(one) + MOST_MORE and (word.startswith(one) or word.endswith(one)):
            return True
    return False


def main(dictionary: Path) -> None:
    words = sorted({w for w in dictionary.read_text().split() if w.isascii() and w.isalpha() and w.islower() and 3 <= len(w) <= 10})
    said, ours = sounds(words), list(sounds(WORDS).values())
    close = [w for w in words if w not in WORDS and said[w] not in ours and near(said[w], ours)]
    print(f"{len(close)} of {len(words)} are near", file=sys.stderr)
    print("\n".join(words + close * (len(words) // max(1, len(close)))))


if __name__ == "__main__":
    main(Path(sys.argv[1]))
