"""
Renders every training, development and test clip of one language into out/<language>/tts (never committed).
`VOICE_LANGUAGE=en|es python3 audio/make/render.py [--small]`; seed 11. Needs the packages of manifest.json (GnuSpeech: see gnuspeech.mjs).
"""
import json
import os
import random
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import accents
from phrase_list import LANGUAGE, MINE, ROOT, read_phrases
from texts import ANNOUNCE_A, ANNOUNCE_B, AROUND, SOUND_ALIKE, TALK_A, TALK_B, near_misses

HERE, OUT = Path(__file__).resolve().parent, MINE / "tts"
HELD, VOICES = (json.loads((HERE / f).read_text()) for f in ("held-out.json", "manifest.json"))
RNG = random.Random(11)
ENGLISH = LANGUAGE == "en"
SPEEDS = {"slow": 1.18, "natural": 1., "quick": .85}
# How many training clips a phrase gets from each voice: (full, small).
COUNTS = {"espeak": (26, 2) if ENGLISH else (16, 2), "awb": (4, 1), "kal16": (3, 0), "kal_diphone": (2, 0), "male": (1, 0), "large_child": (1, 0),
          "upc_ca_ona_hts": (2, 0), "lp_diphone": (1, 0), "hy_fi_mv_diphone": (1, 0), "czech_dita": (1, 0), "czech_krb": (1, 0),
          "czech_machac": (1, 0), "msu_ru_nsh_clunits": (1, 0)}
FOREIGN = [v for v in COUNTS if v in VOICES["accents"]]
rows: list[dict] = []
commands: list[list[str]] = []
festival: dict[tuple[str, float], list[tuple[str, str]]] = {}
gnuspeech: list[dict] = []


def add(split: str, text: str, label: str, engine: str, voice: str, speed: float) -> str:
    path = str(OUT / f"{len(rows):06d}.wav")
    rows.append({"path": path, "split": split, "text": text, "label": label, "engine": engine, "voice": voice, "speed": round(speed, 2)})
    return path


def american(text: str) -> str:
    return text.replace("colour", "color").replace('"', "")


def espeak(split: str, text: str, label: str, variant: str, wpm: int | None = None) -> None:
    voice = f"{RNG.choice(VOICES['espeak-ng']['accents'][LANGUAGE])}+{variant}"
    wpm = wpm or max(120, min(235, round(RNG.gauss(168, 26))))
    path = add(split, text, label, "espeak-ng", voice, wpm / 170)
    commands.append(["espeak-ng", "-v", voice, "-s", str(wpm), "-p", str(RNG.randint(22, 78)), "-w", path, text])


def flite(split: str, text: str, label: str, voice: str, stretch: float, pitch: float = 1.0) -> None:
    path = add(split, text, label, "flite", voice, 1 / stretch)
    hertz = VOICES["flite"]["pitchHz"][voice] * pitch
    commands.append(["flite", "-voice", voice, "--setf", f"duration_stretch={stretch}", "--setf",
                     f"int_f0_target_mean={hertz:.0f}", "-t", american(text), "-o", path])


def fest(split: str, text: str, label: str, voice: str, stretch: float) -> None:
    path = add(split, text, label, "festival", voice, 1 / stretch)
    festival.setdefault((voice, stretch), []).append((path, american(text)))


def foreign(split: str, text: str, label: str, voice: str, stretch: float) -> None:
    path = add(split, text, label, "accent", voice, 1 / stretch)
    said = accents.spelled(text, VOICES["accents"][voice]["language"], "en-us" if ENGLISH else "es")
    festival.setdefault((voice, stretch), []).append((path, said))


def gnu(split: str, text: str, label: str, voice: str, stretch: float) -> None:
    path = add(split, text, label, "gnuspeech", voice, 1 / stretch)
    gnuspeech.append({"path": path, "text": american(text), "voice": voice, "tempo": round(1.1 / stretch, 2)})


def say(split: str, text: str, label: str, engine: str, voice: str, stretch: float) -> None:
    """One clip by a named voice; espeak-ng speaks 170 words a minute at stretch 1."""
    if engine == "espeak-ng":
        espeak(split, text, label, voice, round(170 / stretch))
    else:
        {"flite": flite, "festival": fest, "gnuspeech": gnu, "accents": foreign}[engine](split, text, label, voice, stretch)


def spoken(address: str, words: str) -> str:
    return RNG.choice([f"{address} {words}", f"{address} {words}", f"{address}, {words}", f"{address}, {words}.", f"{address} {words}!"])


def training_variants() -> list[str]:
    held = set(HELD["test"]["espeak-ng"]) | set(HELD["development"]["espeak-ng"])
    return [v for v in VOICES["espeak-ng"]["variants"] if v not in held]


def set_aside(split: str) -> list[tuple[str, str]]:
    engines = [e for e in ("flite", "festival", "gnuspeech", "espeak-ng", "accents") if ENGLISH or e in ("espeak-ng", "accents")]
    return [(e, v) for e in engines for v in HELD[split].get(e, [])]


def positives(small: bool) -> None:
    variants, (words, phrases) = training_variants(), read_phrases()
    number = lambda voice: COUNTS[voice][small]
    for address in words:
        for command, phrase in phrases.items():
            label = f"{address}|{command}"
            for _ in range(number("espeak")):
                espeak("train", spoken(address, phrase), label, RNG.choice(variants))
            for voice in FOREIGN:
                for _ in range(number(voice)):
                    foreign("train", spoken(address, phrase), label, voice, RNG.choice([.9, 1., 1.15]))
            for voice in ("awb", "kal16") if ENGLISH else ():
                for _ in range(number(voice)):
                    flite("train", spoken(address, phrase), label, voice, RNG.choice([.85, .92, 1., 1.1, 1.2]), RNG.choice([.8, 1., 1., 1.25]))
            for voice in ("kal_diphone", "male", "large_child") if ENGLISH else ():
                for _ in range(number(voice)):
                    (fest if voice == "kal_diphone" else gnu)("train", spoken(address, phrase), label, voice, RNG.choice([.85, 1., 1.18]))
    for split in ("development", "test"):
        for n, (engine, voice) in enumerate(set_aside(split)):
            for k, (command, phrase) in enumerate(phrases.items()):
                for s, stretch in enumerate(list(SPEEDS.values())[(n + k) % 3:][:1] if split == "development" or small else SPEEDS.values()):
                    address = words[(n + k + s) % 3]
                    say(split, f"{address} {phrase}", f"{address}|{command}", engine, voice, stretch)


def anyone(split: str, text: str, small: bool) -> None:
    draw, stretch = RNG.random(), RNG.choice([.85, 1., 1.15])
    if split != "train":
        say(split, text, "none", *RNG.choice(set_aside(split)), stretch)
    elif small or draw < (.58 if ENGLISH else .72):
        espeak(split, text, "none", RNG.choice(training_variants()))
    elif draw < .78 and ENGLISH:
        flite(split, text, "none", RNG.choice(["awb", "awb", "kal16"]), stretch, RNG.choice([.8, 1., 1.25]))
    elif draw < .84 and ENGLISH:
        fest(split, text, "none", "kal_diphone", stretch)
    elif draw < .88 and ENGLISH:
        gnu(split, text, "none", RNG.choice(["male", "large_child"]), stretch)
    else:
        foreign(split, text, "none", RNG.choice(FOREIGN), stretch)


def negatives(small: bool) -> None:
    words, phrases = read_phrases()
    many = 1 if ENGLISH else .5
    train = (AROUND * 4 + TALK_A * 4 + ANNOUNCE_A * 6 + words * 30 + SOUND_ALIKE * 4 + list(phrases.values()) * 7
             + near_misses(random.Random(1), round(2300 * many)))
    dev = AROUND + TALK_A + ANNOUNCE_A + list(phrases.values()) + near_misses(random.Random(2), 300)
    test = TALK_B * 6 + ANNOUNCE_B * 4 + words * 10 + list(phrases.values()) * 3 + SOUND_ALIKE * 2 + near_misses(random.Random(3), 600)
    for split, texts in (("train", train), ("development", dev), ("test", test)):
        for text in RNG.sample(texts, 40) if small else texts:
            anyone(split, text, small)


def festival_scripts() -> None:
    for (voice, stretch), items in festival.items():
        coding = accents.LETTERS[VOICES["accents"][voice]["language"]][1] if voice in VOICES["accents"] else "utf-8"
        for first in range(0, len(items), 80):
            script = OUT / f"{voice}_{stretch}_{first}.scm"
            lines = [f"(voice_{voice})", f"(Parameter.set 'Duration_Stretch {stretch})"]
            lines += [f'(set! u (Utterance Text "{t}"))(utt.synth u)(utt.save.wave u "{p}" \'riff)' for p, t in items[first:first + 80]]
            script.write_bytes(("\n".join(lines) + "\n").encode(coding, "replace"))
            commands.append(["festival", "-b", str(script)])


def gnuspeech_jobs() -> None:
    for first in range(0, len(gnuspeech), 60):
        path = OUT / f"gnuspeech_{first}.json"
        path.write_text(json.dumps(gnuspeech[first:first + 60]))
        commands.append(["node", str(HERE / "gnuspeech.mjs"), str(path)])


def run(command: list[str]) -> None:
    made = next((word for word in command if word.startswith(str(OUT)) and word.endswith(".wav")), None)
    if made and Path(made).exists() and Path(made).stat().st_size > 2000:
        return
    subprocess.run(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, timeout=600, check=False)


if __name__ == "__main__":
    small = "--small" in sys.argv
    os.environ.setdefault("GNUSPEECH", str(ROOT / "out/gnuspeech/package"))
    OUT.mkdir(parents=True, exist_ok=True)
    positives(small)
    negatives(small)
    festival_scripts()
    gnuspeech_jobs()
    RNG.shuffle(commands)
    first = {r["path"]: r["split"] != "train" for r in rows}
    commands.sort(key=lambda command: next((first[word] for word in command if word in first), False))
    print(len(rows), "clips", flush=True)
    with ThreadPoolExecutor(int(os.environ.get("RENDER_THREADS", "2"))) as pool:
        list(pool.map(run, commands))
    kept = [r for r in rows if Path(r["path"]).exists() and Path(r["path"]).stat().st_size > 2000]
    (OUT / "clips.json").write_text(json.dumps(kept))
    print(len(kept), "rendered,", len(rows) - len(kept), "failed")
