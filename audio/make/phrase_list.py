"""Reads address words and phrases out of src/intent, so that training and the app share one list. VOICE_LANGUAGE: en or es."""
import os
import re
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
LANGUAGE = os.environ.get("VOICE_LANGUAGE", "en")
WORK = ROOT / os.environ.get("VOICE_WORK", "out")
"""Everything that is made lies in WORK and is never committed; what belongs to a language in MINE."""
MINE = WORK / LANGUAGE
SOURCE, WORDING = ROOT / "src/intent/phrases.ts", ROOT / "src/intent/wording.ts"


def _table(text: str, name: str) -> dict[str, str]:
    block = re.search(name + r"[^{=:]*[=:] \{(.*?)\n *\}", text, re.S)
    if not block:
        raise ValueError(f"no {name} found")
    return dict(re.findall(r'^\s*(\w+): "([^"]+)",', block.group(1), re.M))


def read_phrases(language: str = LANGUAGE) -> tuple[list[str], dict[str, str]]:
    """Returns (address words, {id: words}) in the order of the model's outputs."""
    text = SOURCE.read_text(encoding="utf-8")
    words = re.findall(r'"([^"]+)"', re.search(r"addressWords = \[([^\]]*)\]", text).group(1))
    commands = _table(text, "export const commands")
    if language == "en":
        return words, commands
    other = WORDING.read_text(encoding="utf-8").split("const spanish", 1)[1]
    spoken = dict(re.findall(r'(\w+): "([^"]+)"', re.search(r"addresses: \{([^}]*)\}", other).group(1)))
    said = _table(other, "commands")
    if set(said) != set(commands):
        raise ValueError("the Spanish wording does not name the same phrases")
    return [spoken[w] for w in words], {id: said[id] for id in commands}


if __name__ == "__main__":
    for each in ("en", "es"):
        address_words, phrases = read_phrases(each)
        print(each, address_words, len(phrases), "phrases, last", list(phrases.items())[-1])
