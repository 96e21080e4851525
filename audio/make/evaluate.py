"""
Turns score.py's probabilities into figures: correct / wrong / missed per condition with 95 % intervals bootstrapped by speaker, and
false actions per hour with the 95 % upper bound. `python3 audio/make/evaluate.py choose DIR` picks thresholds on the development
voices; `report DIR` applies them to the test voices. What is listened for is what a whole session listens for: allowed-now.json.
"""
import json
import sys
from pathlib import Path

import numpy as np
from scipy.stats import beta, chi2

import layout as L
from phrase_list import read_phrases

HERE = Path(__file__).resolve().parent
WORDS, COMMANDS = read_phrases()
IDS = list(COMMANDS)
ALLOWED = json.loads((HERE / "allowed-now.json").read_text())
"""[{share of the session's time, commands}]"""
LEAST, MOST = .5, .8


def smooth(p: np.ndarray) -> np.ndarray:
    """Mean of the last two hops, as float32; the first hop has no predecessor and is dropped."""
    p = p.astype(np.float32)
    return (p[1:] + p[:-1]) / 2


def events(s: np.ndarray, thresholds: np.ndarray) -> list[tuple[int, int]]:
    """(hop, column) of everything heard in s [hops, columns], with the pause after each."""
    best = s.argmax(1)
    over = np.where(s.max(1) >= thresholds[best])[0]
    out, free = [], 0
    for hop in over:
        if hop >= free:
            out.append((int(hop), int(best[hop])))
            free = hop + L.REFRACTORY_HOPS + 1
    return out


def upper_rate(count: float, hours: float) -> float:
    """One-sided 95 % upper bound of a Poisson rate per hour (exact)."""
    return float(chi2.ppf(.95, 2 * (count + 1)) / 2 / hours)


def upper_share(count: int, n: int) -> float:
    """One-sided 95 % upper bound of a proportion (Clopper-Pearson)."""
    return 1.0 if count >= n else float(beta.ppf(.95, count + 1, n - count))


def by_speaker(right: np.ndarray, voices: np.ndarray, draws: int = 2000) -> tuple[float, float]:
    """95 % interval of the mean, drawing speakers with replacement. flite slt and festival slt are one speaker."""
    rng = np.random.default_rng(23)
    who = np.array(["slt" if "slt" in v else v for v in voices])
    groups = [right[who == w] for w in np.unique(who)]
    means = [np.concatenate([groups[k] for k in rng.integers(0, len(groups), len(groups))]).mean() for _ in range(draws)]
    return tuple(np.percentile(means, [2.5, 97.5]))


def sets_with(target: int, rng: np.random.Generator) -> np.ndarray:
    """Columns listened for at a moment of a session at which the target is; where none is known, with the answers to "why?"."""
    fitting = [a for a in ALLOWED if IDS[target] in a["commands"]]
    if not fitting:
        names = {IDS[target], "accident", "again", "louder", "quieter", "reasonNotForClient", "reasonNoStock", "reasonOwnDecision", "no"}
        return np.array([k for k, id in enumerate(IDS) if id in names])
    share = np.array([a["share"] for a in fitting])
    return np.array([IDS.index(c) for c in fitting[rng.choice(len(fitting), p=share / share.sum())]["commands"]])


def clip_outcomes(z: dict, condition: str, thresholds: np.ndarray, everything: bool, use: np.ndarray) -> np.ndarray:
    """For each clip in `use`: 1 heard right and nothing else, -1 anything wrong heard, 0 missed. Listens with the clip's own address word."""
    rng, p, out = np.random.default_rng(17), z[f"clips {condition}"], []
    for i in use:
        address, command = z["label"][i].split("|")
        target = IDS.index(command)
        chosen = sets_with(target, rng)
        open_now = np.arange(len(IDS)) if everything else chosen
        heard = events(smooth(p[i][:, WORDS.index(address)])[:, open_now], thresholds[open_now])
        wrong = any(open_now[c] != target for _, c in heard)
        out.append(-1 if wrong else int(bool(heard)))
    return np.array(out)


def streams(z: dict) -> list[str]:
    return sorted({k[7:].split("|")[0] for k in z if k.startswith("stream ")})


def stretches(z: dict, name: str, address: int) -> tuple[list[np.ndarray], float]:
    """Smoothed scores wherever something was not near zero, in runs of neighbouring hops, and the hours of the whole stream."""
    at, p = z[f"stream {name}|at"], z[f"stream {name}|p"][:, address].astype(np.float32)
    runs = []
    for run in np.split(np.arange(len(at)), np.where(np.diff(at) > 1)[0] + 1):
        if len(run):
            padded = np.zeros((len(run) + 2, p.shape[1]), np.float32)
            padded[1:-1] = p[run]
            runs.append((padded[1:] + padded[:-1]) / 2)
    return runs, float(z[f"stream {name}|hops"]) * L.HOP_SAMPLES / L.SAMPLE_RATE_HZ / 3600


def false_actions(z: dict, thresholds: np.ndarray, everything: bool) -> dict[str, tuple[float, float]]:
    """{stream: (false actions, hours)}, all address words in turn; sets as in a session: mean over them, weighted by their time."""
    sets = [(1., np.arange(len(IDS)))] if everything else [(a["share"], np.array([IDS.index(c) for c in a["commands"]])) for a in ALLOWED]
    out = {}
    for name in streams(z):
        count = hours = 0.
        for address in range(len(WORDS)):
            runs, h = stretches(z, name, address)
            hours += h
            near = [s for s in runs if s.max() >= thresholds.min()]
            count += sum(share * len(events(s[:, d], thresholds[d])) for share, d in sets for s in near)
        out[name] = (count / len(WORDS), hours / len(WORDS))
    return out


def confirmed(z: dict, thresholds: np.ndarray) -> int:
    """Times that the confirmation was heard in the negatives, whatever else was: an upper bound of confirmed commands."""
    k = np.array([IDS.index("confirm")])
    return sum(len(events(s[:, k], thresholds[k])) for name in streams(z) for a in range(len(WORDS)) for s in stretches(z, name, a)[0])


def wrong_address(z: dict, thresholds: np.ndarray) -> tuple[int, int]:
    """(actions at a station of another word, clips x other words): the clip says one address word, the station listens for another."""
    count, n = 0, 0
    for condition in (k for k in z if k.startswith("clips ")):
        for i, label in enumerate(z["label"]):
            for other in range(len(WORDS)):
                if WORDS[other] != label.split("|")[0]:
                    count, n = count + bool(events(smooth(z[condition][i][:, other]), thresholds)), n + 1
    return count, n


def table(z: dict, thresholds: np.ndarray, use: np.ndarray, title: str, everything: tuple[bool, ...] = (False, True)) -> list[str]:
    if not len(use):
        return [f"### {title}: none", ""]
    conditions = [c[6:] for c in z if c.startswith("clips ")]
    lines = [f"### {title}: {len(use)} clips a condition, {len(set(z['voice'][use]))} voices", "", "| open | " + " | ".join(conditions) + " |",
             "|---" * (1 + len(conditions)) + "|"]
    for full in everything:
        cells = []
        for c in conditions:
            o = clip_outcomes(z, c, thresholds, full, use)
            wrong, (low, high) = int((o < 0).sum()), by_speaker(o > 0, z["voice"][use])
            cells.append(f"{100 * (o > 0).mean():.1f} ({100 * low:.1f}-{100 * high:.1f}) / {wrong} (≤ {100 * upper_share(wrong, len(o)):.1f} %)")
        lines.append(f"| {'all' if full else 'as in a session'} | " + " | ".join(cells) + " |")
    return lines + [""]


def rates(z: dict, thresholds: np.ndarray) -> list[str]:
    lines = []
    for full in (False, True):
        found = false_actions(z, thresholds, full)
        total, hours = sum(v for v, _ in found.values()), sum(h for _, h in found.values())
        kinds: dict[str, list[float]] = {}
        for k, (v, h) in found.items():
            kind = kinds.setdefault(k.split(", pass")[0], [0, 0])
            kind[0], kind[1] = kind[0] + v, kind[1] + h
        lines.append(f"- {'all open' if full else 'as in a session'}: {total:.2f} in {hours:.2f} h = {total / hours:.3f}/h, 95 % upper bound "
                     f"{upper_rate(total, hours):.3f}/h (" + "; ".join(f"{k} {v:.2f} in {h:.2f} h" for k, (v, h) in kinds.items()) + ")")
    return lines


def choose(z: dict, per_hour: float = .02) -> np.ndarray:
    """
    Per phrase: the lowest at which, on the development material, it is heard falsely at most `per_hour` times an hour of negatives
    and never in place of another phrase at 10 dB or more; within 0.5 to 0.8 (what stays above is counted by the report).
    """
    peaks: list[list[float]] = [[] for _ in IDS]
    hours = 0.
    for name in streams(z):
        for address in range(len(WORDS)):
            runs, h = stretches(z, name, address)
            hours += h
            for s in runs:
                for k in np.where(s.max(0) >= .3)[0]:
                    peaks[k].append(float(s[:, k].max()))
    bar = np.zeros(len(IDS))
    for k, found in enumerate(peaks):
        spare = int(per_hour * hours)
        ordered = sorted(found, reverse=True)
        bar[k] = ordered[spare] if len(ordered) > spare else 0
    for name in (k for k in z if k.startswith("clips ") and not k.endswith(" 5")):
        for i, label in enumerate(z["label"]):
            address, command = label.split("|")
            s = smooth(z[name][i][:, WORDS.index(address)]).max(0)
            s[IDS.index(command)] = 0
            bar = np.maximum(bar, s)
    return np.clip(np.ceil((bar + .02) * 100) / 100, LEAST, MOST)


def confusions(z: dict, use: np.ndarray) -> list[str]:
    """For each phrase, over all conditions: its mean peak, and the phrase that came next with its mean peak."""
    sums = np.zeros((len(IDS), len(IDS)))
    for name in (k for k in z if k.startswith("clips ")):
        for i in use:
            address, command = z["label"][i].split("|")
            sums[IDS.index(command)] += smooth(z[name][i][:, WORDS.index(address)]).max(0)
    lines = ["| phrase | mean peak | runner-up | its mean peak |", "|---|---|---|---|"]
    for k, row in enumerate(sums):
        n = sum(z["label"][i].endswith(f"|{IDS[k]}") for i in use) * sum(k2.startswith("clips ") for k2 in z)
        others = row.copy()
        others[k] = 0
        lines.append(f"| {COMMANDS[IDS[k]]} | {row[k] / max(1, n):.3f} | {COMMANDS[IDS[int(others.argmax())]]} | {others.max() / max(1, n):.3f} |")
    return lines + [""]


def main() -> None:
    folder = Path(sys.argv[2])
    path = folder / "thresholds.json"
    if sys.argv[1] == "choose":
        z = dict(np.load(folder / "scores-development.npz"))
        t = choose(z)
        path.write_text(json.dumps(dict(zip(IDS, t.round(2).tolist()))))
        print(dict(zip(IDS, t.round(2).tolist())))
        print("\n".join(table(z, t, np.arange(len(z["label"])), "development") + rates(z, t)))
        return
    z, t = dict(np.load(folder / "scores-test.npz")), np.array([json.loads(path.read_text())[id] for id in IDS])
    voice = z["voice"]
    foreign = np.char.startswith(voice, "accent")
    native, everyone = np.where(~foreign)[0], np.arange(len(voice))
    print("\n".join(table(z, t, native, "test voices of the language")))
    print("\n".join(table(z, t, np.where(foreign)[0], "test voices with a foreign accent", (False,))))
    said = np.array([label.split("|")[1] for label in z["label"]])
    print("\n".join(table(z, t, np.where(~foreign & (said == "accident"))[0], "the accident phrase", (False,))))
    for n, word in enumerate(WORDS):
        mine = np.array([label.split("|")[0] == word for label in z["label"]])
        print("\n".join(table(z, t, np.where(~foreign & mine)[0], f"address word {word}", (False,))))
    for name in sorted(set(voice)):
        print("\n".join(table(z, t, np.where(voice == name)[0], name, (False,))))
    print("\n".join(rates(z, t)))
    print(f"- the confirmation heard in the negatives: {confirmed(z, t)} times, three address words together")
    count, n = wrong_address(z, t)
    print(f"- wrong address word: {count} of {n} (all open, all conditions)\n")
    print("\n".join(confusions(z, everyone)))


if __name__ == "__main__":
    main()
