"""Reads the address words and commands out of src/intent/phrases.ts, so that training and the app share one list."""
import os
import re
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
WORK = ROOT / os.environ.get("VOICE_WORK", "out")
SOURCE = ROOT / "src/intent/phrases.ts"


def read_phrases(path: Path = SOURCE) -> tuple[list[str], dict[str, str]]:
    """Returns (address words, {command id: words}) in the order of the file, which is the order of the outputs."""
    text = path.read_text(encoding="utf-8")
    address = re.search(r"addressWords = \[([^\]]*)\]", text)
    block = re.search(r"export const commands = \{(.*?)\} as const", text, re.S)
    if not address or not block:
        raise ValueError(f"no phrases found in {path}")
    words = re.findall(r'"([^"]+)"', address.group(1))
    commands = dict(re.findall(r'^\s*(\w+): "([^"]+)",', block.group(1), re.M))
    return words, commands


if __name__ == "__main__":
    address_words, command_words = read_phrases()
    print(len(address_words), "address words,", len(command_words), "commands")
