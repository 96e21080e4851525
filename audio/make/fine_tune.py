"""
Trains the GRU head on embeddings of gather.py, starting from the shipped model; the convolutions stay as they are. CPU:
`python3 audio/make/fine_tune.py --minutes 10 --out DIR` (Debian's python3-torch). Writes DIR/weights.npz (running mean) and prints a log.
"""
import argparse
import copy
import json
import math
import time
from pathlib import Path

import numpy as np
import torch

import layout as L
from phrase_list import MINE, read_phrases
from shipped import layers_with, shipped_arrays
from torch_net import Embedding, Head, from_arrays, log_probabilities
from train import IGNORE, STRIDE, WINDOWS, RunningMean, save

WORDS, COMMANDS = read_phrases()


def scores(head: Head, windows: torch.Tensor) -> torch.Tensor:
    """Log probabilities [n, 1 + addresses * commands], 'none' first."""
    none, joint = log_probabilities(head(windows), len(WORDS))
    return torch.cat([none[:, None], joint.flatten(1)], 1)


class Windows:
    """All windows of the gathered clips whose label is known; a window is its clip and where it begins."""

    def __init__(self, files: list[Path]) -> None:
        parts = [np.load(f) for f in files]
        self.clips = torch.tensor(np.concatenate([z["embeddings"] for z in parts]))
        said = torch.tensor(np.concatenate([z["said"] for z in parts])).long()
        self.clip, self.at = torch.where(said != IGNORE)
        self.said = said[self.clip, self.at]

    def take(self, which: torch.Tensor) -> torch.Tensor:
        first = self.at[which] * STRIDE
        index = first[:, None] + torch.arange(L.WINDOW_EMBEDDINGS)
        return self.clips[self.clip[which][:, None], index].float()


@torch.no_grad()
def losses(head: Head, w: Windows) -> torch.Tensor:
    """What each window costs the head as it is."""
    head.eval()
    parts = [-scores(head, w.take(k)).gather(1, w.said[k][:, None])[:, 0] for k in torch.arange(len(w.said)).split(2048)]
    head.train()
    return torch.cat(parts)


def chances(loss: torch.Tensor, said: torch.Tensor, easy: float) -> torch.Tensor:
    """How likely each window is drawn: those that cost something often, the rest now and then; phrases and others half each."""
    weight = loss.clamp(0, 2) + easy
    yes = said > 0
    share = torch.where(yes, .5 / weight[yes].sum(), .5 / weight[~yes].sum())
    return weight * share


def main() -> None:
    p = argparse.ArgumentParser()
    p.add_argument("--minutes", type=float, default=10)
    p.add_argument("--steps", type=int, help="stop after so many steps instead of by the clock")
    p.add_argument("--batch", type=int, default=256)
    p.add_argument("--rate", type=float, default=4e-4)
    p.add_argument("--easy", type=float, default=.3)
    p.add_argument("--mean", type=float, default=.98)
    p.add_argument("--resume", type=Path)
    p.add_argument("--gathered", type=Path, default=MINE / "gathered")
    p.add_argument("--out", type=Path, default=MINE / "tuned")
    p.add_argument("--seed", type=int, default=0)
    p.add_argument("--untrained", action="store_true", help="begin with a random head, to prove that it learns")
    a = p.parse_args()
    torch.set_num_threads(1)
    torch.manual_seed(a.seed)
    a.out.mkdir(parents=True, exist_ok=True)
    known = dict(np.load(a.resume)) if a.resume else shipped_arrays()
    embedding, head = Embedding(layers_with(known)), Head.like(known, 1 + len(WORDS) + len(COMMANDS))
    fresh = copy.deepcopy(head.state_dict())
    from_arrays(known, embedding, head)
    if a.untrained:
        head.load_state_dict({k: v if k.startswith(("gru", "dense")) else head.state_dict()[k] for k, v in fresh.items()})
    for one in head.norm.parameters():
        one.requires_grad_(False)
    optimiser = torch.optim.AdamW([q for q in head.parameters() if q.requires_grad], lr=a.rate, weight_decay=1e-4)
    w = Windows(sorted(a.gathered.glob("train-*-???.npz")))
    loss = losses(head, w)
    before = loss.mean().item()
    chance = chances(loss, w.said, a.easy)
    head.norm.eval()
    print(f"{len(w.said)} windows of {len(w.clips)} clips; loss {before:.4f}, phrases {loss[w.said > 0].mean():.4f}", flush=True)
    mean, began, step, running = RunningMean([embedding, head], a.mean), time.time(), 0, 0.
    while (share := step / a.steps if a.steps else (time.time() - began) / 60 / a.minutes) < 1:
        for group in optimiser.param_groups:
            group["lr"] = a.rate * min(1, (step + 1) / 50) * (.5 + .5 * math.cos(math.pi * share)) + 1e-6
        which = torch.multinomial(chance, a.batch, replacement=True)
        guess = scores(head, w.take(which))
        loss = -guess.gather(1, w.said[which][:, None]).mean()
        optimiser.zero_grad()
        loss.backward()
        torch.nn.utils.clip_grad_norm_(head.parameters(), 1.)
        optimiser.step()
        step += 1
        mean.take(step)
        running = loss.item() if step == 1 else .95 * running + .05 * loss.item()
        if step % 25 == 0:
            print(f"step {step} {time.time() - began:.0f} s loss {running:.4f}", flush=True)
            save(a.out / "weights.npz", mean)
    save(a.out / "weights.npz", mean)
    after = losses(mean.mean[1], w)
    (a.out / "log.json").write_text(json.dumps({"steps": step, "windows": len(w.said), "lossBefore": before, "lossAfter": after.mean().item()}))
    print(f"finished: {step} steps of {a.batch} windows in {time.time() - began:.0f} s; loss {after.mean():.4f}, phrases {after[w.said > 0].mean():.4f}")


if __name__ == "__main__":
    main()
