"""The phrase model in PyTorch: fixed mel front end, the pretrained embedding (trainable), two GRUs, three groups of logits."""
import numpy as np
import torch
from torch import nn
from torch.nn import functional as F

import layout as L
from base_net import ACTIVATION_FLOOR, LEAKY_SLOPE, embedding_layers, mel_matrix


class Mel(nn.Module):
    """Samples [batch, n] in int16 scale to features [batch, frames, 32]; without a matrix, that of the pretrained net."""

    def __init__(self, matrix: np.ndarray | None = None) -> None:
        super().__init__()
        self.register_buffer("window", torch.tensor(L.hann(), dtype=torch.float32))
        self.register_buffer("matrix", torch.tensor(mel_matrix() if matrix is None else matrix))

    def forward(self, x: torch.Tensor) -> torch.Tensor:
        spectrum = torch.fft.rfft(x.unfold(1, L.FFT_SIZE, L.FRAME_HOP) * self.window)
        power = (spectrum.real.square() + spectrum.imag.square()) @ self.matrix
        return torch.log10(power.clamp(min=L.POWER_FLOOR)) + L.LOG_OFFSET


class Embedding(nn.Module):
    """Features [batch, 76 + 8 k, 32] to [batch, k + 1, size]: one convolution over time; without layers, the pretrained ones."""

    def __init__(self, layers: list[dict] | None = None) -> None:
        super().__init__()
        self.plan, self.weights, self.biases = [], nn.ParameterList(), nn.ParameterList()
        for layer in embedding_layers() if layers is None else layers:
            if layer["kind"] == "maxPool":
                self.plan.append(("pool", layer["kernel"], layer["stride"]))
                continue
            self.weights.append(nn.Parameter(torch.tensor(layer["weight"])))
            self.biases.append(nn.Parameter(torch.tensor(layer["bias"]) if layer["bias"] is not None else torch.zeros(0)))
            self.plan.append(("conv", len(self.weights) - 1, layer["padFrequency"], layer["activation"]))

    @property
    def size(self) -> int:
        return len(self.weights[-1])

    def forward(self, features: torch.Tensor) -> torch.Tensor:
        x = features[:, None]
        for step in self.plan:
            if step[0] == "pool":
                x = F.max_pool2d(x, step[1], step[2])
                continue
            _, i, pad, active = step
            x = F.conv2d(x, self.weights[i], self.biases[i] if active else None, padding=(0, pad))
            if active:
                x = F.leaky_relu(x, LEAKY_SLOPE).clamp(min=ACTIVATION_FLOOR)
        return x.flatten(2).transpose(1, 2)


class Head(nn.Module):
    """Windows of 26 embeddings [n, 26, size] to logits [n, 1 + addresses + commands]."""

    def __init__(self, outputs: int, size: int, hidden: int = L.HIDDEN) -> None:
        super().__init__()
        self.norm = nn.BatchNorm1d(size)
        self.gru = nn.GRU(size, hidden, num_layers=2, batch_first=True, dropout=0.1)
        self.drop, self.dense = nn.Dropout(0.2), nn.Linear(hidden, outputs)

    @classmethod
    def like(cls, z: dict[str, np.ndarray], outputs: int) -> "Head":
        """A new head of the sizes that these weights have."""
        _, inputs = z["gru0.wi"].shape
        return cls(outputs, inputs, z["dense.weight"].shape[1])

    def forward(self, windows: torch.Tensor) -> torch.Tensor:
        x = self.norm(windows.flatten(0, 1)).reshape(windows.shape)
        return self.dense(self.drop(self.gru(x)[0][:, -1]))


def log_probabilities(z: torch.Tensor, addresses: int) -> tuple[torch.Tensor, torch.Tensor]:
    """Logits to (log P(none) [n], log P(address, command) [n, addresses, commands])."""
    none, a, c = z[:, 0], z[:, 1:1 + addresses], z[:, 1 + addresses:]
    total = torch.logaddexp(none, a.logsumexp(1) + c.logsumexp(1))
    return none - total, a[:, :, None] + c[:, None, :] - total[:, None, None]


def to_arrays(embedding: Embedding, head: Head) -> dict[str, np.ndarray]:
    """Weights under the names export.py expects; the batch norm becomes scale and shift."""
    out = {}
    for i, (w, b) in enumerate(zip(embedding.weights, embedding.biases)):
        out[f"conv{i}.weight"], out[f"conv{i}.bias"] = w, b
    scale = head.norm.weight / torch.sqrt(head.norm.running_var + head.norm.eps)
    out["affine.scale"], out["affine.shift"] = scale, head.norm.bias - head.norm.running_mean * scale
    for n in (0, 1):
        for short, long in (("wi", "weight_ih"), ("wh", "weight_hh"), ("bi", "bias_ih"), ("bh", "bias_hh")):
            out[f"gru{n}.{short}"] = getattr(head.gru, f"{long}_l{n}")
    out["dense.weight"], out["dense.bias"] = head.dense.weight, head.dense.bias
    return {k: v.detach().float().cpu().numpy() for k, v in out.items()}


def from_arrays(z: dict[str, np.ndarray], embedding: Embedding, head: Head) -> None:
    """The inverse of to_arrays; the scale and shift return as the batch norm's weight and bias."""
    with torch.no_grad():
        for i, (w, b) in enumerate(zip(embedding.weights, embedding.biases)):
            w.copy_(torch.tensor(z[f"conv{i}.weight"]))
            b.copy_(torch.tensor(z[f"conv{i}.bias"]))
        head.norm.running_mean.zero_()
        head.norm.running_var.fill_(1 - head.norm.eps)
        head.norm.weight.copy_(torch.tensor(z["affine.scale"]))
        head.norm.bias.copy_(torch.tensor(z["affine.shift"]))
        for n in (0, 1):
            for short, long in (("wi", "weight_ih"), ("wh", "weight_hh"), ("bi", "bias_ih"), ("bh", "bias_hh")):
                getattr(head.gru, f"{long}_l{n}").copy_(torch.tensor(z[f"gru{n}.{short}"]))
        head.dense.weight.copy_(torch.tensor(z["dense.weight"]))
        head.dense.bias.copy_(torch.tensor(z["dense.bias"]))
