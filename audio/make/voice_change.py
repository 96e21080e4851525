"""
Gives a clip another voice on the GPU: the spectral envelope is kept (and stretched, for another vocal tract), the excitation is
replaced by a new one (other pitch, melody, breathiness). Words and timing stay. A source-filter vocoder, from memory.
"""
import math

import torch
from torch.nn import functional as F

from noise_train import uniform

SIZE, HOP = 512, 128


def envelope(magnitude: torch.Tensor, order: int = 28) -> torch.Tensor:
    """Log magnitude smoothed over frequency by keeping the first `order` cepstral coefficients: [b, 257, t]."""
    cepstrum = torch.fft.irfft((magnitude + 1e-5).log(), n=SIZE, dim=1)
    keep = torch.zeros(SIZE, device=magnitude.device)
    keep[:order] = 1
    keep[SIZE - order + 1:] = 1
    return torch.fft.rfft(cepstrum * keep[None, :, None], dim=1).real


def voicing(magnitude: torch.Tensor, window: torch.Tensor) -> torch.Tensor:
    """How periodic each frame is, 0..1: the largest autocorrelation between 70 and 400 Hz, made good for the window: [b, t]."""
    padded = torch.fft.irfft(magnitude.square(), n=SIZE, dim=1)
    shape = torch.fft.irfft(torch.fft.rfft(window).abs().square(), n=SIZE)
    peak = (padded[:, 40:228] / (shape[40:228] / shape[0]).clamp(min=.1)[None, :, None]).amax(1)
    return ((peak / (padded[:, 0] + 1e-9) - .35) / .35).clamp(0, 1)


def pulses(b: int, n: int, dev: str) -> torch.Tensor:
    """Pulse trains of unit power with a falling, wandering pitch between about 75 and 330 Hz: [b, n]."""
    melody = F.interpolate(torch.randn(b, 1, 14, device=dev) * .09, size=n, mode="linear", align_corners=True)[:, 0]
    hertz = (75 * 4.2 ** torch.rand(b, device=dev))[:, None] * (1 + melody).clamp(.6, 1.6)
    phase = torch.cumsum(hertz / 16000, 1)
    return F.pad((phase[:, 1:].floor() > phase[:, :-1].floor()).float(), (1, 0)) * (16000 / hertz).sqrt()


def other_voice(x: torch.Tensor) -> torch.Tensor:
    """x [b, n] to the same words in another voice, at the same level frame by frame."""
    b, n, dev = *x.shape, x.device
    window = torch.hann_window(SIZE, device=dev)
    stft = lambda y: torch.stft(y, SIZE, HOP, window=window, return_complex=True)
    magnitude = stft(x).abs()
    log_shape, periodic = envelope(magnitude), voicing(magnitude, window)[:, None]
    at = (torch.arange(257, device=dev)[None] * uniform(b, .76, 1.3, dev)[:, None]).clamp(max=255.9)
    i = at.floor().long()[:, :, None].expand(-1, -1, log_shape.shape[2])
    log_shape = log_shape.gather(1, i) + (log_shape.gather(1, i + 1) - log_shape.gather(1, i)) * (at - at.floor())[:, :, None]
    breath = uniform(b, .02, .4, dev)[:, None, None] * torch.linspace(.3, 1.5, 257, device=dev)[None, :, None]
    periodic = periodic * (1 - breath.clamp(max=.9))
    source = periodic * stft(pulses(b, n, dev)) + (1 - periodic.square()).sqrt() * stft(torch.randn(b, n, device=dev))
    made = source * log_shape.exp() / math.sqrt(SIZE * .375)
    level = (magnitude.square().sum(1, keepdim=True) / (made.abs().square().sum(1, keepdim=True) + 1e-9)).sqrt()
    return torch.istft(made * level, SIZE, HOP, window=window, length=n)
