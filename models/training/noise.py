"""Rooms, colors, noise, other talkers, and clatter that covers whole words; all made on the device, anew for every batch."""
import math
import torch
import torch.nn.functional as F

LENGTH = 81920  # samples of a training clip: 5.12 s, 256 positions of the encoder


class Noises:
    """One ear's world of noise. Two ears with other seeds and other recordings learn to err apart."""

    def __init__(self, device, seed, recorded):
        """recorded: list of 1-D tensors of recorded noise (at least LENGTH samples each), may be empty."""
        self.device, self.recorded = device, recorded
        self.generator = torch.Generator(device=device)
        self.generator.manual_seed(seed)

    def uniform(self, *shape):
        return torch.rand(*shape, device=self.device, generator=self.generator)

    def normal(self, *shape):
        return torch.randn(*shape, device=self.device, generator=self.generator)

    def whole(self, low, high, *shape):
        return torch.randint(low, high, shape, device=self.device, generator=self.generator)

    def shuffled(self, x):
        return x[torch.randperm(len(x), device=self.device, generator=self.generator)]

    def machine(self, count):
        """Coloured noise with random tilt, humps, hum and beating: blowers, burners, pumps."""
        f = torch.fft.rfftfreq(LENGTH, 1 / 16000, device=self.device)[None].clamp(min=10.0)
        r = self.uniform
        gain = (f / (40 + r(count, 1) * 400)).clamp(min=1.0) ** (-r(count, 1) * 2.2 + 0.1)
        for _ in range(3):
            center = 80 * torch.exp(r(count, 1) * 4.3)
            gain = gain * (1 + (r(count, 1) < 0.6) * r(count, 1) * 6 * torch.exp(-(((f - center) / (center * (0.03 + 0.4 * r(count, 1)))) ** 2)))
        edge = 1500 + r(count, 1) * 6500
        gain = gain * torch.where(r(count, 1) < 0.3, 1 / (1 + (f / edge) ** 4), torch.ones_like(edge))
        noise = torch.fft.irfft((self.normal(count, f.shape[1]) + 1j * self.normal(count, f.shape[1])) * gain, LENGTH)
        noise = noise / noise.std(1, keepdim=True)
        t = torch.arange(LENGTH, device=self.device)[None] / 16000
        base = torch.where(r(count, 1) < 0.5, torch.where(r(count, 1) < 0.5, 50.0, 60.0), 25 * torch.exp(r(count, 1) * 3))
        tone = sum(r(count, 1) ** 2 * torch.sin(2 * math.pi * (base * k * (1 + 0.004 * (r(count, 1) - 0.5))) * t + 6.3 * r(count, 1)) for k in range(1, 9))
        noise = noise + (r(count, 1) < 0.7) * r(count, 1) * 1.2 * tone / tone.std(1, keepdim=True).clamp(min=1e-3)
        noise = noise * (1 + (r(count, 1) < 0.3) * r(count, 1) * torch.sin(2 * math.pi * (0.5 + r(count, 1) * 12) * t + 6 * r(count, 1)))
        return noise / noise.std(1, keepdim=True)

    def recording(self, count):
        """Stretches of recorded noise, every one at the same power."""
        pieces = []
        for which, place in zip(self.whole(0, len(self.recorded), count).tolist(), self.uniform(count).tolist()):
            source = self.recorded[which]
            at = int(place * (len(source) - LENGTH))
            pieces.append(source[at : at + LENGTH])
        x = torch.stack(pieces)
        return x / x.std(1, keepdim=True).clamp(min=1e-4)

    def strike(self, count):
        """One clatter, 0.5 s: dishes, tools, sheet metal, doors; damped tones and hiss, struck once or several times."""
        n = 8000
        t = torch.arange(n, device=self.device)[None] / 16000
        r = self.uniform
        sound = torch.zeros(count, n, device=self.device)
        for hit in range(4):
            start = r(count, 1) * 0.35 * (hit > 0)
            after = (t - start).clamp(min=0)
            shape = (t >= start) * torch.exp(-after * (8 + 120 * r(count, 1) ** 2)) * (r(count, 1) < (1.0 if hit == 0 else 0.45))
            tones = sum(torch.sin(2 * math.pi * 200 * torch.exp(r(count, 1) * 3.4) * after + 6.3 * r(count, 1)) * r(count, 1) for _ in range(6))
            sound = sound + shape * (tones * (r(count, 1) < 0.8) + self.normal(count, n) * r(count, 1) * 2)
        return sound / sound.abs().amax(1, keepdim=True).clamp(min=1e-4)

    def covering(self, start, length, power, share=0.35, most=3):
        """Strikes over the speech, loud enough to hide a word: the text behind them cannot be known, and the model learns to say so."""
        count = len(start)
        out = torch.zeros(count, LENGTH, device=self.device)
        covered = self.uniform(count, 1) < share
        for i in range(most):
            loud = 10 ** ((self.uniform(count, 1) * 18 - 2) / 20) * (2.5 * power.sqrt())
            at = (start + self.uniform(count, 1) * length - 1200).clamp(min=0, max=LENGTH - 8001).long()
            used = covered & (self.uniform(count, 1) < (1.0 if i == 0 else 0.4))
            out.scatter_add_(1, at + torch.arange(8000, device=self.device)[None], self.strike(count) * loud * used)
        return out

    def room(self, x):
        n = 8000
        t = torch.arange(n, device=self.device)[None] / 16000
        echo = self.normal(len(x), n) * torch.exp(-6.9 * t / (0.08 + self.uniform(len(x), 1) * 0.5)) * (self.uniform(len(x), 1) * 0.12)
        echo[:, 0] = 1
        size = 2 * x.shape[1]
        return torch.fft.irfft(torch.fft.rfft(x, size) * torch.fft.rfft(echo, size), size)[:, : x.shape[1]]

    def color(self, x):
        count, length = x.shape
        f = torch.fft.rfftfreq(length, 1 / 16000, device=self.device)
        curve = F.interpolate(self.normal(count, 1, 10) * 4, size=f.shape[0], mode="linear", align_corners=True)[:, 0]
        high = torch.where(self.uniform(count, 1) < 0.2, 3000 + 4000 * self.uniform(count, 1), torch.full((count, 1), 9000.0, device=self.device))
        low = 40 + 200 * self.uniform(count, 1) * (self.uniform(count, 1) < 0.4)
        gain = 10 ** (curve / 20) / (1 + (f[None] / high) ** 12).sqrt() * (f[None] / low) ** 2 / (1 + (f[None] / low) ** 4).sqrt()
        return torch.fft.irfft(torch.fft.rfft(x) * gain, length)

    def under(self, x, lengths, clean=0.12, low=-3, high=22):
        """Speech from sample 0 on, as a microphone hears it. After its end there is digital silence, as the program pads."""
        count = len(x)
        r = self.uniform
        index = torch.arange(LENGTH, device=self.device)[None]
        pace = 0.86 + 0.34 * r(count, 1)
        place = index * pace
        left = place.long().clamp(max=LENGTH - 2)
        part = (place - left).clamp(0, 1)
        y = torch.gather(x, 1, left) * (1 - part) + torch.gather(x, 1, left + 1) * part
        y = y * (place < LENGTH - 2)
        length = (lengths[:, None] / pace).clamp(max=LENGTH - 2000)
        y = torch.where(r(count, 1) < 0.45, self.room(y), y)
        y = torch.where(r(count, 1) < 0.6, self.color(y), y)
        start = ((LENGTH - length) * r(count, 1)).clamp(max=9600).clamp(min=0) * (r(count, 1) < 0.9)
        moved = index - start.long()
        y = torch.gather(y, 1, moved.clamp(min=0)) * (moved >= 0)
        inside = index < (start + length + (800 + 12000 * r(count, 1))).clamp(max=LENGTH)
        active = y.abs() > 0.03 * y.abs().amax(1, keepdim=True)
        power = (y**2 * active).sum(1, keepdim=True) / active.sum(1, keepdim=True).clamp(min=1)

        noise = self.machine(count)
        if self.recorded:
            noise = torch.where(r(count, 1) < 0.2, self.recording(count), noise)
        crowd = sum(torch.roll(self.shuffled(x), int(self.whole(0, LENGTH, 1)), 1) for _ in range(5))
        noise = torch.where(r(count, 1) < 0.08, 0.6 * noise + 0.8 * crowd / crowd.std(1, keepdim=True).clamp(min=1e-4), noise)
        other = self.color(self.room(torch.roll(self.shuffled(x), int(self.whole(0, LENGTH, 1)), 1)))
        faint = (power / ((other**2).mean(1, keepdim=True).clamp(min=1e-9) * 3) / 10 ** ((7 + 14 * r(count, 1)) / 10)).sqrt()
        y = y + torch.where(r(count, 1) < 0.13, other * faint, torch.zeros_like(other)) * inside
        loud = (power / 10 ** ((low + (high - low) * r(count, 1)) / 10)).sqrt() * (r(count, 1) > clean)
        y = (y + noise * loud + self.covering(start, length, power)) * inside
        y = y * 10 ** (-(r(count, 1) * 24) / 20)
        return torch.where(r(count, 1) < 0.06, (y * (1 + 6 * r(count, 1))).clamp(-0.6, 0.6), y)

    def alone(self, count):
        """Noise without speech; half of it with strikes."""
        end = 12000 + 60000 * self.uniform(count, 1)
        power = torch.full((count, 1), 0.02, device=self.device)
        struck = self.covering(torch.zeros(count, 1, device=self.device), end, power, share=0.5)
        level = 10 ** (-(15 + 35 * self.uniform(count, 1)) / 20)
        return (self.machine(count) + struck) * level * (torch.arange(LENGTH, device=self.device)[None] < end)
