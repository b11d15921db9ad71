"""Whisper's network in the names of the engine's files, and the spectrum it takes (Radford et al. 2022)."""
import torch
import torch.nn as nn
import torch.nn.functional as F


def attend(query, key, value, causal):
    if hasattr(F, "scaled_dot_product_attention"):
        return F.scaled_dot_product_attention(query, key, value, is_causal=causal)
    scores = query @ key.transpose(-1, -2) / query.shape[-1] ** 0.5  # PyTorch before 2.0
    if causal:
        scores = scores.masked_fill(torch.ones(scores.shape[-2:], dtype=torch.bool, device=scores.device).triu(1), float("-inf"))
    return scores.softmax(-1) @ value


class Attention(nn.Module):
    def __init__(self, width, heads):
        super().__init__()
        self.heads = heads
        self.query = nn.Linear(width, width)
        self.key = nn.Linear(width, width, bias=False)
        self.value = nn.Linear(width, width)
        self.out = nn.Linear(width, width)

    def forward(self, x, other=None, causal=False):
        other = x if other is None else other
        batch, length, width = x.shape

        def split(t):
            return t.view(batch, -1, self.heads, width // self.heads).transpose(1, 2)

        mixed = attend(split(self.query(x)), split(self.key(other)), split(self.value(other)), causal)
        return self.out(mixed.transpose(1, 2).reshape(batch, length, width))


class Block(nn.Module):
    def __init__(self, width, heads, crosses):
        super().__init__()
        self.attn, self.attn_ln, self.crosses = Attention(width, heads), nn.LayerNorm(width), crosses
        if crosses:
            self.cross_attn, self.cross_attn_ln = Attention(width, heads), nn.LayerNorm(width)
        self.mlp = nn.Sequential(nn.Linear(width, 4 * width), nn.GELU(), nn.Linear(4 * width, width))
        self.mlp_ln = nn.LayerNorm(width)

    def forward(self, x, sound=None):
        x = x + self.attn(self.attn_ln(x), causal=self.crosses)
        if self.crosses:
            x = x + self.cross_attn(self.cross_attn_ln(x), sound)
        return x + self.mlp(self.mlp_ln(x))


class Encoder(nn.Module):
    def __init__(self, width, heads, layers, bands):
        super().__init__()
        self.conv1, self.conv2 = nn.Conv1d(bands, width, 3, padding=1), nn.Conv1d(width, width, 3, 2, 1)
        self.positional_embedding = nn.Parameter(torch.zeros(1500, width))
        self.blocks = nn.ModuleList(Block(width, heads, False) for _ in range(layers))
        self.ln_post = nn.LayerNorm(width)

    def forward(self, x):
        x = F.gelu(self.conv2(F.gelu(self.conv1(x)))).transpose(1, 2)
        x = x + self.positional_embedding[: x.shape[1]].to(x.dtype)
        for block in self.blocks:
            x = block(x)
        return self.ln_post(x)


class Decoder(nn.Module):
    def __init__(self, words, width, heads, layers):
        super().__init__()
        self.token_embedding = nn.Embedding(words, width)
        self.positional_embedding = nn.Parameter(torch.zeros(448, width))
        self.blocks = nn.ModuleList(Block(width, heads, True) for _ in range(layers))
        self.ln = nn.LayerNorm(width)

    def forward(self, tokens, sound):
        x = self.token_embedding(tokens) + self.positional_embedding[: tokens.shape[1]]
        for block in self.blocks:
            x = block(x, sound)
        return self.ln(x) @ self.token_embedding.weight.T


class Whisper(nn.Module):
    def __init__(self, dimensions):
        super().__init__()
        words, _, width, heads, layers, _, text_width, text_heads, text_layers, bands, _ = dimensions
        self.encoder = Encoder(width, heads, layers, bands)
        self.decoder = Decoder(words, text_width, text_heads, text_layers)

    def forward(self, spectrum, tokens):
        return self.decoder(tokens, self.encoder(spectrum))

    @staticmethod
    def of(file, device):
        model = Whisper(file.dimensions).to(device)
        model.load_state_dict({name: torch.tensor(value).reshape(model.state_dict()[name].shape) for name, value in file.tensors.items()})
        return model


def spectrum(samples, filters):
    """Log-mel spectrum as the engine makes it: window 400, step 160, floor 8 below the loudest."""
    window = torch.hann_window(400, device=samples.device)
    power = torch.stft(samples, 400, 160, window=window, return_complex=True)[..., :-1].abs() ** 2
    mel = torch.log10((filters @ power).clamp(min=1e-10))
    return (torch.maximum(mel, mel.amax((1, 2), keepdim=True) - 8) + 4) / 4
