"""
Trains the phrase model end to end. GPU: `VOICE_LANGUAGE=en python3 audio/make/train.py --seconds 1100 --out DIR` (needs PyTorch,
pack.py's files, and takes what render.py left in out/<language>/tts as well). `--shipped` goes on from public/voice. CPU proof of the
pipeline, no quality: `--small`. Writes DIR/weights.npz (the running mean of the weights) and a log.
"""
import argparse
import copy
import json
import math
import sys
import time
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

import numpy as np
import torch
from scipy.signal import resample_poly
from torch.nn import functional as F

import adpcm
import layout as L
from noise_train import Clips, NoisePool, equalise, rooms, uniform, unit
from pack import LONGEST, narrow
from phrase_list import MINE, WORK, read_phrases
from shipped import layers_with, shipped_arrays, shipped_mel
from sound import change_tempo
from torch_net import Embedding, Head, Mel, from_arrays, log_probabilities, to_arrays
from voice_change import other_voice
from wide import widened

WINDOWS, STRIDE = 8, 2
EMBEDDINGS = L.WINDOW_EMBEDDINGS + (WINDOWS - 1) * STRIDE
SAMPLES = (L.RECEPTIVE_FRAMES + 8 * (EMBEDDINGS - 1) - 1) * L.FRAME_HOP + L.FFT_SIZE
WORDS, COMMANDS = read_phrases()
IGNORE = -1
PHRASES = .62
"""Share of a batch that is phrases, whole, cut or crossed."""
KINDS = {"beheaded": .06, "other head": .08, "cut short": .06, "crossed": .09, "joined": .07}
"""Of these, shares that are spoilt: begun late, begun by other words, cut short, ended by another phrase. "joined" are two takes of one
phrase put together, and remain the phrase, so that a joint is no sign of a spoilt one. All by one voice throughout."""


def tempo_variants(job: tuple[np.ndarray, int, int]) -> list[np.ndarray]:
    clip, seed, count = job
    rng = np.random.default_rng(seed)
    made = [clip] + [change_tempo(clip * 20000, rng.uniform(.78, 1.3), 320, rng.uniform(.75, 1.3, 7)) / 20000 for _ in range(count)]
    return [resample_poly(c, 2, 1).astype(np.float32) for c in made]


def doubled(clip: np.ndarray) -> np.ndarray:
    return resample_poly(clip, 2, 1).astype(np.float32)


def decode_job(job: tuple[np.ndarray, np.ndarray, np.ndarray]) -> list[np.ndarray]:
    return adpcm.decode(*job)


def manner(voice: str) -> str:
    """Voices made from recorded sentences, by rules, or neither: "natural", "espeak" or "other"."""
    engine, _, name = voice.partition(" ")
    return "natural" if engine in ("rhvoice", "pico") or name == "awb" else "espeak" if engine.startswith("espeak") else "other"


SHARE = {"natural": .42, "espeak": .36, "other": .22}
"""How often a phrase is drawn from each manner of voice."""


def rendered() -> list[dict]:
    """What render.py left on this machine for training."""
    listed = MINE / "tts/clips.json"
    return [r for r in json.loads(listed.read_text()) if r["split"] == "train"] if listed.exists() else []


class Groups:
    """Clips by voice (or by anything else they share), to draw another of the same."""

    def __init__(self, of: np.ndarray, among: np.ndarray, device: str) -> None:
        """`of`: the key of each clip that asks, `among`: the key of each that may be drawn, both as numbers."""
        order = np.argsort(among, kind="stable")
        first, last = np.searchsorted(among[order], of, "left"), np.searchsorted(among[order], of, "right")
        first, last = np.where(last > first, first, 0), np.where(last > first, last, len(among))
        self.order, self.first, self.count = (torch.tensor(x, device=device) for x in (order, first, last - first))

    def another(self, which: torch.Tensor) -> torch.Tensor:
        return self.order[self.first[which] + (torch.rand(len(which), device=which.device) * self.count[which]).long()]


class Material:
    """The packed bank, decoded, and what was rendered here, with tempo variants of every phrase, on the device."""

    def __init__(self, files: list[Path], rows: list[dict], variants: int, device: str, limit: int | None, workers: int) -> None:
        with ProcessPoolExecutor(workers) as pool:
            self.read({k: v for f in files for k, v in np.load(f).items()}, rows, pool, variants, device, limit, workers)

    def read(self, z: dict, rows: list[dict], pool: ProcessPoolExecutor, variants: int, device: str, limit: int | None, workers: int) -> None:
        def raw(name):
            n = z[f"{name}.length"]
            keep = np.arange(len(n)) if limit is None else np.random.default_rng(0).permutation(len(n))[:limit]
            keep = keep[np.argsort(n[keep])]
            data, start = z[f"{name}.data"], np.cumsum((n + 1) // 2) - (n + 1) // 2
            parts = np.array_split(keep, max(1, min(workers, len(keep) // 20)))
            jobs = [(np.concatenate([data[start[i]:start[i] + (n[i] + 1) // 2] for i in k]), n[k], z[f"{name}.taps"][k]) for k in parts]
            return [c for done in pool.map(decode_job, jobs) for c in done], keep
        def wide(name):
            return [resample_poly(c, 2, 1).astype(np.float32) for c in raw(name)[0]]
        here = list(pool.map(narrow, [r["path"] for r in rows], chunksize=32))
        here = [(c / 28000, r) for c, r in zip(here, rows) if 1600 < len(c) < LONGEST]
        said = [(c, r["label"], f"{r['engine']} {r['voice']}") for c, r in here if r["label"] != "none"]
        clips, keep = raw("positive")
        said += [(c, str(z["positive.label"][i]), str(z["positive.voice"][i])) for c, i in zip(clips, keep)]
        clips, keep = raw("negative")
        none = [(c, f"{r['engine']} {r['voice']}") for c, r in here if r["label"] == "none"]
        none += [(c, str(z["negative.voice"][i])) for c, i in zip(clips, keep)]
        groups = list(pool.map(tempo_variants, [(c, i, variants) for i, (c, _, _) in enumerate(said)], chunksize=20))
        labels, manners = [label.split("|") for _, label, _ in said], np.array([manner(voice) for _, _, voice in said])
        repeat = [len(g) for g in groups]
        self.positive = Clips([c for g in groups for c in g], device)
        self.address = torch.tensor(np.repeat([WORDS.index(a) for a, _ in labels], repeat), device=device)
        self.command = torch.tensor(np.repeat([list(COMMANDS).index(c) for _, c in labels], repeat), device=device)
        weight = np.array([SHARE[m] / max(1, (manners == m).sum()) for m in manners])
        weight = np.repeat(weight * np.array([2. if c == "accident" else 1. for _, c in labels]), repeat)
        self.weight = torch.tensor(weight, device=device).double()
        self.negative = Clips(list(pool.map(doubled, [c for c, _ in none], chunksize=200)), device)
        self.human, self.music = Clips(wide("human"), device), Clips(wide("music"), device)
        voices = {v: i for i, v in enumerate(sorted({x[-1] for x in said + none}))}
        speaker = np.repeat([voices[v] for _, _, v in said], repeat)
        phrase = np.repeat([voices[v] * 1000 + WORDS.index(a) * 100 + list(COMMANDS).index(c) for (_, _, v), (a, c) in zip(said, labels)], repeat)
        self.same_voice, self.same_phrase = Groups(speaker, speaker, device), Groups(phrase, phrase, device)
        self.talk_of = Groups(speaker, np.array([voices[v] for _, v in none]), device)
        self.hardness = torch.ones(self.negative.count, device=device)
        print("material", self.positive.count, self.negative.count, self.human.count, {m: int((manners == m).sum()) for m in SHARE}, flush=True)


class Batches:
    """Draws mixed clips and, for each of 8 windows of a clip, what was said: address, command, none or 'too close to call'."""

    def __init__(self, m: Material, device: str, pool: int) -> None:
        self.m, self.dev = m, device
        self.noise = NoisePool(m.human, m.negative, m.music, SAMPLES, device, pool)
        self.ends = SAMPLES - torch.arange(WINDOWS - 1, -1, -1, device=device) * STRIDE * L.HOP_SAMPLES

    def phrases(self, b):
        dev, m = self.dev, self.m
        u = lambda low, high: uniform(b, low, high, dev)
        which = torch.multinomial(m.weight, b, replacement=True)
        rate = u(.8, 1.27)
        edges = np.cumsum([round(b * share) for share in KINDS.values()])
        row = {name: slice(int(last) - round(b * share), int(last)) for (name, share), last in zip(KINDS.items(), edges)}
        length = m.positive.length[which] / rate
        joint, partner = slice(row["crossed"].start, row["joined"].stop), which.clone()
        partner[row["crossed"]], partner[row["joined"]] = m.same_voice.another(which[row["crossed"]]), m.same_phrase.another(which[row["joined"]])
        keep, skip = torch.ones(b, device=dev), torch.ones(b, device=dev)
        keep[joint] = u(.52, .8)[joint]
        skip[joint] = torch.where(m.command[partner] == m.command[which], keep, u(.52, .8))[joint]
        second = m.positive.length[partner] / rate
        total = length * keep + second * (1 - skip)
        end = SAMPLES - u(.03, (WINDOWS - 1) * STRIDE * .08 + .3) * 16000
        start = end - total
        x = m.positive.once(which, start, rate, SAMPLES)
        t = torch.arange(SAMPLES, device=dev)[None]
        fade = lambda rows, at: ((t - at[rows][:, None]) / 160 + .5).clamp(0, 1)
        cut = start + length * keep
        tail = m.positive.once(partner[joint], (cut - second * skip)[joint], rate[joint], SAMPLES)
        x[joint] += fade(joint, cut) * (tail - x[joint])
        late, early = start + length * u(.34, .6), end - length * u(.22, .5)
        x[row["beheaded"]] *= fade(row["beheaded"], late)
        x[row["cut short"]] *= 1 - fade(row["cut short"], early)
        other, begun = row["other head"], start + length * u(.32, .54)
        talk = m.talk_of.another(which[other])
        head = m.negative.once(talk, begun[other] - m.negative.length[talk] / rate[other], rate[other], SAMPLES)
        x[other] = head + fade(other, begun) * (x[other] - head)
        since = (self.ends[None] - end[:, None]) / 16000
        label = m.address[which] * len(COMMANDS) + m.command[which] + 1
        whole = start[:, None] > self.ends[None] - L.WINDOW_SAMPLES - 1600
        said = torch.full((b, WINDOWS), IGNORE, device=dev)
        said = torch.where((since >= .02) & (since <= .50) & whole, label[:, None], said)
        said = torch.where((since < -.14) | (since > 1.2), 0, said)
        said[:row["crossed"].start] = 0
        crossed = torch.zeros(b, dtype=torch.bool, device=dev)
        crossed[row["crossed"]] = True
        crossed &= (m.command[partner] != m.command[which]) | (m.address[partner] != m.address[which])
        same = (torch.arange(b, device=dev) >= row["crossed"].start) & (m.command[partner] == m.command[which])
        said = torch.where((crossed & ~same)[:, None], 0, said)
        before, after = torch.rand(b, device=dev) < .3, torch.rand(b, device=dev) < .2
        talk = unit(self.noise.talk(b, m.human)) * .05 * 10 ** (u(-8, 2) / 20)[:, None]
        x = x + talk * (t < (start - u(.08, .4) * 16000)[:, None]) * before[:, None]
        talk = unit(self.noise.talk(b, m.human)) * .05 * 10 ** (u(-10, 0) / 20)[:, None]
        x = x + talk * (t > (end + u(.3, .8) * 16000)[:, None]) * after[:, None]
        return x, said

    def others(self, b):
        dev, m = self.dev, self.m
        which, rate = torch.multinomial(m.hardness, b, replacement=True), uniform(b, .8, 1.27, dev)
        end = SAMPLES - uniform(b, -.2, 1.4, dev) * 16000
        start = end - m.negative.length[which] / rate
        x = m.negative.once(which, start, rate, SAMPLES)
        people = m.human.loop(torch.randint(0, m.human.count, (b,), device=dev), uniform(b, 0, 90000, dev), uniform(b, .8, 1.27, dev), SAMPLES)
        people = people * (torch.rand(b, device=dev) > .2)[:, None]
        spoken = torch.rand(b, device=dev) < .7
        self.drawn = torch.where(spoken, which, -1)
        return torch.where(spoken[:, None], x, people)

    def harder(self, none: torch.Tensor) -> None:
        """What was taken for a phrase is drawn more often from now on; `none`: log P(no phrase) of the last draw's others, [b, windows]."""
        use = self.drawn >= 0
        which, taken = self.drawn[use], 1 - none[use].exp().amin(1)
        self.m.hardness[which] = .6 * self.m.hardness[which] + .4 * (.12 + .7 * taken)

    def draw(self, b):
        dev, n = self.dev, int(b * PHRASES)
        x, said = self.phrases(n)
        x = torch.cat([x, self.others(b - n)])
        voices = torch.randperm(b, device=dev)[:int(b * .45)]
        x[voices] = other_voice(x[voices])
        said = torch.cat([said, torch.zeros(b - n, WINDOWS, dtype=said.dtype, device=dev)])
        x = rooms(equalise(x, 4.5, 8), .55)
        steps = torch.tensor([40, 30, 25, 20, 17, 15, 12, 10, 7, 5, 2, -1.], device=dev)
        chance = torch.tensor([.08, .07, .08, .11, .12, .13, .12, .1, .08, .06, .04, .01], device=dev)
        snr = steps[torch.multinomial(chance, b, replacement=True)]
        x = x + self.noise.take(b) * .05 * 10 ** (-snr / 20)[:, None] * (torch.rand(b, 1, device=dev) < .92)
        peak = x.abs().amax(1, keepdim=True) + 1e-6
        x = x / peak * 32767 * 10 ** (uniform(b, -34, -1, dev) / 20)[:, None]
        x = x + torch.randn(b, SAMPLES, device=dev) * 10 ** uniform(b, -1, 1.2, dev)[:, None]
        return x.round().clamp(-32768, 32767), said


def warp(f: torch.Tensor) -> torch.Tensor:
    """Other vocal tracts (frequency axis x 0.75-1.3, bent), level tilt per band, a masked band, a masked moment: on features [b, t, 32]."""
    b, n, dev = len(f), f.shape[1], f.device
    band = torch.arange(32, device=dev)[None]
    bend = F.interpolate(torch.randn(b, 1, 6, device=dev), size=32, mode="linear", align_corners=True)[:, 0] * uniform(b, 0, .9, dev)[:, None]
    at = (band * uniform(b, .75, 1.3, dev)[:, None] + bend).clamp(0, 31)
    i = at.floor().long()
    g = lambda k: f.gather(2, k[:, None].expand(-1, n, -1))
    moved = g(i) + (g((i + 1).clamp(max=31)) - g(i)) * (at - i)[:, None]
    f = torch.where((torch.rand(b, device=dev) < .65)[:, None, None], moved, f)
    f = f + torch.randn(b, 1, 32, device=dev) * .15 * (torch.rand(b, 1, 1, device=dev) < .5)
    level = f.mean((1, 2), keepdim=True)
    low, width = torch.randint(0, 29, (b, 1, 1), device=dev), torch.randint(0, 6, (b, 1, 1), device=dev)
    f = torch.where((band[None] >= low) & (band[None] < low + width) & (torch.rand(b, 1, 1, device=dev) < .35), level, f)
    start, length = torch.randint(0, n, (b, 1, 1), device=dev), torch.randint(2, 9, (b, 1, 1), device=dev)
    t = torch.arange(n, device=dev)[None, :, None]
    return torch.where((t >= start) & (t < start + length) & (torch.rand(b, 1, 1, device=dev) < .25), level, f)


class RunningMean:
    """Weights averaged over the last steps; better than the last ones, and free."""

    def __init__(self, parts: list[torch.nn.Module], keep: float) -> None:
        self.keep, self.parts, self.mean = keep, parts, [copy.deepcopy(p) for p in parts]

    @torch.no_grad()
    def take(self, step: int) -> None:
        keep = min(self.keep, (1 + step) / (10 + step))
        for part, mean in zip(self.parts, self.mean):
            for now, old in zip([*part.parameters(), *part.buffers()], [*mean.parameters(), *mean.buffers()]):
                old.lerp_(now, 1 - keep) if now.is_floating_point() else old.copy_(now)


def save(path: Path, mean: RunningMean) -> None:
    """Whole or not at all: the machine may be taken away at any moment."""
    np.savez(path.with_suffix(".part.npz"), **to_arrays(*mean.mean))
    path.with_suffix(".part.npz").replace(path)


def main() -> None:
    p = argparse.ArgumentParser()
    p.add_argument("--seconds", type=float, default=500)
    p.add_argument("--out", type=Path, default=WORK / "run")
    p.add_argument("--batch", type=int, default=640)
    p.add_argument("--resume", type=Path)
    p.add_argument("--rate", type=float, default=2e-3)
    p.add_argument("--small", action="store_true")
    p.add_argument("--compile", action="store_true")
    p.add_argument("--steps", type=int, default=10 ** 9)
    p.add_argument("--shipped", action="store_true", help="go on from the model in public/voice")
    p.add_argument("--wide", type=int, nargs=5, metavar=("A", "B", "C", "D", "HIDDEN"), help="channels of the four blocks and size of the head, at least those of the model")
    a = p.parse_args()
    dev = "cuda" if torch.cuda.is_available() else "cpu"
    torch.manual_seed(0)
    torch.backends.cudnn.allow_tf32 = torch.backends.cuda.matmul.allow_tf32 = True
    torch.backends.cudnn.benchmark = dev == "cuda"
    a.out.mkdir(parents=True, exist_ok=True)
    if a.small:
        a.batch, a.seconds = 12, min(a.seconds, 30)
    files = [MINE / "carry/positive.npz", MINE / "carry/negative.npz", WORK / "shared/people.npz"]
    material = Material(files, [] if a.small else rendered(), 1 if a.small else 3, dev, 200 if a.small else None, 2 if a.small else 16)
    batches = Batches(material, dev, 128 if a.small else 3072)
    known = dict(np.load(a.resume)) if a.resume else shipped_arrays() if a.shipped else None
    if known and a.wide:
        known = widened(known, tuple(a.wide[:4]), a.wide[4])
    outputs = 1 + len(WORDS) + len(COMMANDS)
    mel, embedding = Mel(shipped_mel() if known else None).to(dev), Embedding(layers_with(known) if known else None).to(dev)
    head = (Head.like(known, outputs) if known else Head(outputs, embedding.size)).to(dev)
    if known:
        from_arrays(known, embedding, head)
        head.norm.eval()  # what it has learnt stands in its scale and shift: the means of a batch must not be put in their place
    embed = torch.compile(embedding) if dev == "cuda" and a.compile else embedding
    groups = [{"params": head.parameters(), "lr": a.rate}, {"params": embedding.parameters(), "lr": a.rate * .3}]
    optimiser = torch.optim.AdamW(groups, weight_decay=1e-3)
    mean = RunningMean([embedding, head], .999)
    began, step, running = time.time(), 0, np.zeros(3)
    while (share := (time.time() - began) / a.seconds) < 1 and step < a.steps:
        factor = min(1, (step + 1) / 300) * (.5 + .5 * math.cos(math.pi * share)) + .005
        thaw = 1 if known else min(1, max(0, (share - .05) / .05))
        for group, rate in zip(optimiser.param_groups, (a.rate, a.rate * .3 * thaw)):
            group["lr"] = rate * factor
        with torch.no_grad():
            x, said = batches.draw(a.batch)
            features = warp(mel(x))
        with torch.autocast(dev, torch.bfloat16, enabled=dev == "cuda"):
            e = embed(features)
        windows = e.float().unfold(1, L.WINDOW_EMBEDDINGS, STRIDE).permute(0, 1, 3, 2).flatten(0, 1)
        none, joint = log_probabilities(head(windows).float(), len(WORDS))
        scores, said = torch.cat([none[:, None], joint.flatten(1)], 1), said.reshape(-1)
        use = said != IGNORE
        batches.harder(none.detach().view(a.batch, WINDOWS)[int(a.batch * PHRASES):])
        chosen = scores[use].gather(1, said[use][:, None])[:, 0]
        loss = -chosen.mean()
        optimiser.zero_grad()
        loss.backward()
        torch.nn.utils.clip_grad_norm_([*head.parameters(), *embedding.parameters()], 2.)
        optimiser.step()
        step += 1
        mean.take(step)
        if step % 20 == 0:
            guess = scores.argmax(1)
            yes, no = said > 0, said == 0
            now = np.array([loss.item(), (guess[yes] == said[yes]).float().mean().item(), (guess[no] == 0).float().mean().item()])
            running = now if step == 20 else .9 * running + .1 * now
        if step % 200 == 0 or a.small and step % 5 == 0:
            print(f"step {step} {time.time() - began:.0f} s loss {running[0]:.3f} phrase {running[1]:.4f} none {running[2]:.4f}", flush=True)
        if step % 500 == 0:
            save(a.out / "weights.npz", mean)
    save(a.out / "weights.npz", mean)
    print(f"finished: {step} steps of {a.batch} clips in {time.time() - began:.0f} s on {dev}")


if __name__ == "__main__":
    sys.exit(main())
