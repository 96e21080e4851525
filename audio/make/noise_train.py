"""
Endless augmentation on the GPU: machine buzz by additive synthesis, babble, music, coloured noise, rooms, equalisation.
The test noises come from noise_test.py, which makes buzz in another way.
"""
import math

import torch
from torch.nn import functional as F


class Clips:
    """Many clips of different lengths in one tensor, read at any start and rate (linear interpolation)."""

    def __init__(self, clips: list, device: str) -> None:
        import numpy as np
        clips = [c / (np.sqrt(np.mean(c * c)) + 1e-6) * 0.05 for c in clips]
        self.count, self.device = len(clips), device
        self.length = torch.tensor([len(c) for c in clips], device=device)
        self.first = torch.cumsum(self.length, 0) - self.length
        self.data = torch.tensor(np.concatenate([*clips, np.zeros(8, np.float32)]).astype(np.float32), device=device)

    def _read(self, which, t):
        i = t.floor().long()
        a = self.data[self.first[which][:, None] + i]
        return a + (self.data[self.first[which][:, None] + i + 1] - a) * (t - i)

    def once(self, which, start, rate, n):
        """Clip `which` beginning at output sample `start` (may be negative), silence around it."""
        t = (torch.arange(n, device=self.device)[None] - start[:, None]) * rate[:, None]
        last = (self.length[which] - 2).float()[:, None]
        inside = (t >= 0) & (t <= last)
        return self._read(which, torch.minimum(t.clamp(min=0), last)) * inside

    def loop(self, which, start, rate, n):
        t = torch.arange(n, device=self.device)[None] * rate[:, None] + start[:, None]
        return self._read(which, t % (self.length[which] - 2).float()[:, None])


def uniform(n, low, high, device):
    return low + (high - low) * torch.rand(n, device=device)


def unit(x):
    return x / (x.pow(2).mean(1, keepdim=True).sqrt() + 1e-6)


def equalise(x, depth_db, knots=10):
    """A random smooth spectral curve of about ±depth_db, another for each clip."""
    spectrum = torch.fft.rfft(x)
    curve = torch.randn(x.shape[0], knots, device=x.device) * depth_db
    at = torch.linspace(0, 1, spectrum.shape[1], device=x.device) ** 0.5 * (knots - 1)
    i = at.floor().long().clamp(max=knots - 2)
    gain = curve[:, i] + (curve[:, i + 1] - curve[:, i]) * (at - i)
    return torch.fft.irfft(spectrum * 10 ** (gain / 20), n=x.shape[1])


def rooms(x, share):
    b, n, dev = *x.shape, x.device
    tail = 8000
    fade = torch.arange(tail, device=dev) / (uniform(b, .08, .6, dev)[:, None] * 16000)
    h = torch.randn(b, tail, device=dev) * 10 ** (-3 * fade) * uniform(b, .01, .12, dev)[:, None]
    h = h * (torch.arange(tail, device=dev)[None] > uniform(b, 20, 160, dev)[:, None])
    h[:, 0] = 1
    size = 1 << math.ceil(math.log2(n + tail))
    y = torch.fft.irfft(torch.fft.rfft(x, size) * torch.fft.rfft(h, size), size)[:, :n]
    return torch.where((torch.rand(b, device=dev) < share)[:, None], y, x)


def machine(b, n, dev):
    """Rotary and coil machines: 30 harmonics of a wandering 45-190 Hz, hiss, beating, resonances, sometimes switched on or off."""
    wander = F.interpolate(torch.cumsum(torch.randn(b, 1, n // 400 + 2, device=dev) * .004, 2), size=n, mode="linear")[:, 0]
    phase = torch.cumsum(uniform(b, 45, 190, dev)[:, None] * (1 + wander) / 16000, 1) * 2 * math.pi
    roll, y = uniform(b, .1, 1.6, dev), torch.zeros(b, n, device=dev)
    for k in range(1, 31):
        y += torch.sin(phase * k + uniform(b, 0, 6.28, dev)[:, None]) * (torch.rand(b, device=dev) ** 2 * k ** (-roll))[:, None]
    y = unit(y) + torch.randn(b, n, device=dev) * (10 ** uniform(b, -2, -.1, dev))[:, None]
    slow = torch.sin(2 * math.pi * uniform(b, .2, 14, dev)[:, None] * torch.arange(n, device=dev) / 16000)
    y = equalise(y * (1 + uniform(b, 0, .5, dev)[:, None] * slow), 8, 24)
    after = torch.arange(n, device=dev)[None] > uniform(b, 0, n, dev)[:, None]
    gate = torch.where((torch.rand(b, device=dev) < .5)[:, None], after, ~after).float() * .97 + .03
    return unit(torch.where((torch.rand(b, device=dev) < .3)[:, None], y * gate, y))


class NoisePool:
    """A store of ready noises, a slice of it renewed at every step, so that a step need not make all its own."""

    def __init__(self, people: Clips, others: Clips, music: Clips, n: int, dev: str, size: int = 3072) -> None:
        self.people, self.others, self.music, self.n, self.dev = people, others, music, n, dev
        self.store = torch.cat([self.fresh(128) for _ in range(size // 128)])
        self.next = 0

    def talk(self, b, bank):
        which = torch.randint(0, bank.count, (b,), device=self.dev)
        return unit(bank.loop(which, uniform(b, 0, 50000, self.dev), uniform(b, .8, 1.25, self.dev), self.n))

    def fresh(self, b):
        dev, n = self.dev, self.n
        song = self.music.loop(torch.randint(0, self.music.count, (b,), device=dev), uniform(b, 0, 60000, dev), uniform(b, .85, 1.2, dev), n)
        crowd = sum(self.talk(b, k) * 10 ** (uniform(b, -6, 0, dev) / 20)[:, None] for k in (self.people, self.others, self.people))
        one = torch.where(torch.rand(b, 1, device=dev) < .5, self.talk(b, self.people), self.talk(b, self.others))
        kinds = [machine(b, n, dev), unit(rooms(crowd, 1.)), unit(rooms(one, .5)), unit(equalise(song, 5)),
                 unit(equalise(torch.randn(b, n, device=dev), 12, 6))]
        weight = torch.tensor([.36, .2, .15, .18, .11], device=dev).expand(b, 5)
        pick = F.one_hot(torch.multinomial(weight, 1)[:, 0], 5).float()
        second = F.one_hot(torch.multinomial(weight, 1)[:, 0], 5).float()
        pick = pick + second * ((torch.rand(b, device=dev) < .35) * uniform(b, .2, 1, dev))[:, None]
        return unit(sum(pick[:, i:i + 1] * k for i, k in enumerate(kinds)))

    def take(self, b, renew=64):
        i = self.next % len(self.store)
        self.store[i:i + renew] = self.fresh(renew)
        self.next += renew
        x = self.store[torch.randint(0, len(self.store), (b,), device=self.dev)]
        return torch.roll(x, int(torch.randint(0, self.n, (1,))), 1) * torch.sign(torch.randn(b, 1, device=self.dev))
