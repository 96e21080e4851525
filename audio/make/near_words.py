"""
Writes near-words.json: for each word of the English phrases, others that are said nearly alike, the nearest first. Needs Debian's
pocketsphinx-en-us (the Carnegie Mellon Pronouncing Dictionary) and wamerican-small. `python3 audio/make/near_words.py`
"""
import json
import re
from pathlib import Path

from phrase_list import read_phrases

DICTIONARY = Path("/usr/share/pocketsphinx/model/en-us/cmudict-en-us.dict")
LIST = Path("/usr/share/dict/american-english-small")
SHORT = "a i we it is to on of in at up no so my an he me by go do us or if".split()
LITTLE = "the a of is it in on to are and i we be my at".split()
"""Words that are slurred by everybody: they are not changed."""
RUDE = "whore cumming anus nipple retard asses slut cunt piss shit fuck".split()
VOWELS = set("AA AE AH AO AW AY EH ER EY IH IY OW OY UH UW".split())
ALIKE = [set(g.split()) for g in ("P B T D K G", "F V TH DH S Z SH ZH HH", "M N NG", "L R W Y", "CH JH SH ZH")]
LEAST, LEAST_ADDRESS, KEEP = 1.15, 2., 24
"""How far apart two words have to be, that a listener can be asked to tell them apart; of a station's own word further, since noise eats beginnings."""


def changed(a: str, b: str) -> float:
    """What it costs to say one phone for another: less within a kind."""
    if a == b:
        return 0
    return .7 if {a, b} <= VOWELS or any({a, b} <= g for g in ALIKE) else 1.2


def distance(a: list[str], b: list[str]) -> float:
    """Edit distance of two pronunciations; a phone too few or too many costs 1."""
    before = [float(j) for j in range(len(b) + 1)]
    for i, x in enumerate(a):
        now = [i + 1.]
        for j, y in enumerate(b):
            now.append(min(before[j] + changed(x, y), before[j + 1] + 1, now[j] + 1))
        before = now
    return before[-1]


def dictionary() -> dict[str, list[list[str]]]:
    out: dict[str, list[list[str]]] = {}
    for line in DICTIONARY.read_text(encoding="utf-8", errors="ignore").splitlines():
        word, *phones = line.split()
        out.setdefault(re.sub(r"\(\d\)$", "", word), []).append([re.sub(r"\d", "", p) for p in phones])
    return out


def is_inflected(a: str, b: str) -> bool:
    """b is a with an ending, or a is b with one letter more."""
    return b.startswith(a) or a.startswith(b) and len(b) >= len(a) - 1


def main() -> None:
    said, (words, commands) = dictionary(), read_phrases("en")
    known = {w.strip() for w in LIST.read_text(encoding="utf-8").splitlines() if re.fullmatch("[a-z]{2,}", w.strip())} | set(SHORT)
    known = sorted(w for w in known if w in said and w not in RUDE)
    near = {}
    for word in sorted({w for text in (*words, *commands.values()) for w in re.findall("[a-z']+", text.lower())}):
        if word not in said or word in LITTLE:
            continue
        least = LEAST_ADDRESS if word in words else LEAST
        others = [w for w in known if not is_inflected(word, w) and abs(len(said[w][0]) - len(said[word][0])) <= 3]
        far = sorted((min(distance(p, q) for p in said[word] for q in said[w]), w) for w in others)
        near[word] = [w for d, w in far if d >= least][:KEEP]
    source = ("edit distance over the Carnegie Mellon Pronouncing Dictionary (Debian pocketsphinx-en-us 0.8+5prealpha+1-15) "
              "of the small word list of SCOWL (Debian wamerican-small 2020.12.07-2); licences in NOTICE")
    rows = ",\n".join(f"  {json.dumps(word)}: {json.dumps(of)}" for word, of in near.items())
    made = f'{{\n "source": {json.dumps(source)},\n "near": {{\n{rows}\n }}\n}}\n'
    Path(__file__).with_name("near-words.json").write_text(made, encoding="utf-8")


if __name__ == "__main__":
    main()
