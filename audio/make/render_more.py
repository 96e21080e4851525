"""
Renders what a fine-tuning needs beyond render.py: thousands of new near misses and more of the natural voices for training, and a
larger development set. Into out/<language>/more (never committed). `python3 audio/make/render_more.py [--small]`; seed 29.
"""
import json
import os
import random
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import render
from phrase_list import MINE, ROOT, read_phrases
from texts import ANNOUNCE_A, AROUND, SOUND_ALIKE, TALK_A, holds_phrase, near_misses

OUT = MINE / "more"
RNG = random.Random(29)
PLAN = render.VOICES["fineTune"]
"""How many clips of each phrase behind each address word, by voice; how many near misses. awb is the most natural of the training voices."""


def training(small: bool) -> set[str]:
    """Phrases, near misses, talk. @returns the texts that are no phrase."""
    words, phrases = read_phrases()
    voices = {"espeak": 1} if small else PLAN["phraseClips"]
    for address in words:
        for command, phrase in phrases.items():
            for voice, count in voices.items():
                for _ in range(count):
                    render.train(voice, render.spoken(address, phrase), f"{address}|{command}")
    near = near_misses(random.Random(101), 100 if small else PLAN["nearMisses"])
    talk = AROUND + TALK_A + ANNOUNCE_A + words * 12 + SOUND_ALIKE + list(phrases.values()) * 3
    texts = [t for t in near + talk if not holds_phrase(t)]
    names, weights = list(voices), [{"awb": 30, "espeak": 40, "kal16": 6, "kal_diphone": 6}.get(v, 2) for v in voices]
    for text in RNG.sample(texts, 120) if small else texts:
        render.train(RNG.choices(names, weights)[0], text, "none")
    return set(texts)


def development(small: bool, known: set[str]) -> None:
    """Every development voice says every phrase twice; new near misses, none of which training has seen as text."""
    words, phrases = read_phrases()
    voices = [v for v in render.set_aside("development") if not small or v[0] == "espeak-ng"][:1 if small else None]
    for n, (engine, voice) in enumerate(voices):
        for k, (command, phrase) in enumerate(phrases.items()):
            for s in range(1 if small else 2):
                stretch = list(render.SPEEDS.values())[(n + k + s) % 3]
                address = words[(n + k + 2 * s) % 3]
                render.say("development", f"{address} {phrase}", f"{address}|{command}", engine, voice, stretch)
    known = known | set(near_misses(random.Random(1), 2300))
    new = [t for t in dict.fromkeys(near_misses(random.Random(202), 60 if small else 3600)) if t not in known and not holds_phrase(t)]
    for text in new[:40] if small else new:
        render.say("development", text, "none", *RNG.choice(voices), RNG.choice([.85, 1., 1.15]))


def main() -> None:
    small = "--small" in sys.argv
    os.environ.setdefault("GNUSPEECH", str(ROOT / "out/gnuspeech/node_modules/@echogarden/gnuspeech-wasm"))
    render.OUT, render.RNG = OUT, RNG
    OUT.mkdir(parents=True, exist_ok=True)
    development(small, training(small))
    render.festival_scripts()
    render.gnuspeech_jobs()
    first = {r["path"]: r["split"] == "train" for r in render.rows}
    RNG.shuffle(render.commands)
    render.commands.sort(key=lambda command: next((first[word] for word in command if word in first), True))
    print(len(render.rows), "clips", flush=True)
    with ThreadPoolExecutor(int(os.environ.get("RENDER_JOBS", "2"))) as pool:
        list(pool.map(render.run, render.commands))
    kept = [r for r in render.rows if Path(r["path"]).exists() and Path(r["path"]).stat().st_size > 2000]
    (OUT / "clips.json").write_text(json.dumps(kept))
    print(len(kept), "rendered,", len(render.rows) - len(kept), "failed")


if __name__ == "__main__":
    main()
