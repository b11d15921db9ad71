"""Train one ear further for readings in noise: train.py tiny.en|base MODEL.bin OUT.bin --speech SPEECH [--human DIR] [--noise recorded.ulaw] [--seconds 600]

SPEECH.pcm and .json come from speech.py. The two ears get other seeds and other recorded noises, so that they err apart. OUT is the average of the original weights and the trained ones:
that keeps what the original knew of people."""
import argparse
import copy
import json
import math
import random
import re
import time

import numpy as np
import torch
import torch.nn as nn
import torch.nn.functional as F

from ggml import ModelFile
from noise import LENGTH, Noises
from whisper import Whisper, spectrum

TRAINED_SHARE = 0.55
EARS = {"tiny.en": dict(rate=2e-4, seed=11, noises=("tap", "bike")), "base": dict(rate=1.2e-4, seed=23, noises=("cat", "bike"))}

# Seconds of recorded noise in the order of the file; the dishes are kept apart and only measured on.
RECORDED = {"dishes": (0, 95.2), "tap": (95.2, 156.4), "bike": (156.4, 217.7), "cat": (217.7, 279.4)}
HUMAN_SHARE, NOISE_SHARE = 0.10, 0.04


class Words:
    """Byte pairs of the model: from single bytes, the adjacent pair whose joined text has the smallest id is merged until none is left."""

    SPLIT = re.compile(r"'s|'t|'re|'ve|'m|'ll|'d| ?[A-Za-z]+| ?[0-9]+| ?[^\sA-Za-z0-9]+|\s+")

    def __init__(self, file):
        self.end = 50257 if file.is_multilingual else 50256
        offset = int(file.is_multilingual)
        start, self.no_speech = 50257 + offset, 50361 + offset
        self.opening = [start, start + 1, 50358 + offset, 50362 + offset] if file.is_multilingual else [start, 50362 + offset]
        self.vocabulary = file.vocabulary
        self.id_of = {text: i for i, text in enumerate(file.vocabulary[: self.end])}

    def encode(self, text):
        return [token for word in self.SPLIT.findall(" " + text) for token in self._merge(word.encode())]

    def decode(self, tokens):
        return b"".join(self.vocabulary[token] for token in tokens if token < self.end).decode(errors="replace").strip()

    def _merge(self, word):
        parts = [word[i : i + 1] for i in range(len(word))]
        while True:
            best = min(((self.id_of.get(parts[i] + parts[i + 1], 1 << 30), i) for i in range(len(parts) - 1)), default=(1 << 30, 0))
            if best[0] == 1 << 30:
                return [self.id_of[part] for part in parts]
            parts[best[1] : best[1] + 2] = [parts[best[1]] + parts[best[1] + 1]]


def plain(text):
    return re.sub(r"\s+", " ", re.sub(r"[^a-z0-9' ]", " ", text.lower())).strip()


def from_ulaw(path):
    y = np.fromfile(path, np.int8).astype(np.float32) / 127
    return np.sign(y) * (np.power(256.0, np.abs(y)) - 1) / 255


def padded(x):
    out = np.zeros(LENGTH, np.float32)
    out[: min(LENGTH, len(x))] = x[:LENGTH]
    return out


class Recordings:
    """Labeled recordings in one file of 8-bit mu-law and a list of offset, samples, speaker, words."""

    def __init__(self, path, device):
        self.rows = json.load(open(path + ".json"))
        sound = from_ulaw(path + ".ulaw")
        self.x = torch.tensor(np.stack([padded(sound[row[0] : row[0] + row[1]]) for row in self.rows]), device=device)
        self.lengths = torch.tensor([min(LENGTH, row[1]) for row in self.rows], device=device).float()
        self.words = [plain(row[3]) for row in self.rows]


class Trainer:
    def __init__(self, options):
        self.options, self.device = options, options.device
        self.ear = EARS[options.ear]
        self.file = ModelFile(options.model)
        self.words = Words(self.file)
        self.filters = torch.tensor(self.file.filters, device=self.device)
        self.model = Whisper.of(self.file, self.device)
        self.original = {name: value.clone() for name, value in self.model.state_dict().items()}
        recorded = from_ulaw(options.noise) if options.noise else None
        self.kept_apart = None if recorded is None else torch.tensor(self.part(recorded, "dishes"), device=self.device)
        self.noises = Noises(self.device, self.ear["seed"], [] if recorded is None else [torch.tensor(self.part(recorded, name), device=self.device) for name in self.ear["noises"]])
        self.strangers = Recordings(options.strangers, self.device) if options.strangers else None
        self.people = Recordings(options.human, self.device) if options.human else None
        self.began = time.time()

    def part(self, recorded, name):
        start, end = RECORDED[name]
        if name == "bike":  # half for each ear
            start, end = (start, (start + end) / 2) if self.options.ear == "tiny.en" else ((start + end) / 2, end)
        return recorded[int(start * 16000) : int(end * 16000)].copy()

    def say(self, *words):
        print(*words, f"{time.time() - self.began:.0f} s", flush=True)

    def autocast(self):
        return torch.autocast(self.device, torch.bfloat16, enabled=self.device == "cuda")

    @torch.no_grad()
    def read(self, model, x, most=28):
        """The likeliest words without any grammar, and how sure of them the model is: mean log-probability per token."""
        out = []
        for at in range(0, len(x), 128):
            with self.autocast():
                sound = model.encoder(spectrum(x[at : at + 128], self.filters))
                tokens = torch.tensor([self.words.opening] * len(sound), device=self.device)
                done, total, count = (torch.zeros(len(sound), device=self.device) for _ in range(3))
                for step in range(most):
                    scores = model.decoder(tokens, sound)[:, -1].float()
                    scores[:, self.words.end + 1 :] = -1e9
                    if step == 0:
                        scores[:, self.words.end] = scores[:, 220] = -1e9
                    best, following = torch.log_softmax(scores, 1).max(1)
                    total, count = total + best * (1 - done), count + (1 - done)
                    following = torch.where(done > 0, self.words.end, following)
                    tokens = torch.cat([tokens, following[:, None]], 1)
                    done = torch.maximum(done, (following == self.words.end).float())
                    if done.all():
                        break
            out += [(self.words.decode(row), sure) for row, sure in zip(tokens[:, len(self.words.opening) :].tolist(), (total / count).tolist())]
        return out

    def noisy(self, recordings, decibels, noise):
        x = recordings.x
        active = x.abs() > 300 / 32768
        power = (x**2 * active).sum(1, keepdim=True) / active.sum(1, keepdim=True).clamp(min=1)
        inside = torch.arange(LENGTH, device=self.device)[None] < recordings.lengths[:, None]
        return (x + noise * (power / 10 ** (decibels / 10)).sqrt()) * inside

    def report(self, model, tag):
        """Words exactly as said by strangers; how many of them were wrong although the model was sure; words of people found."""
        model.eval()
        parts = []
        for name, recordings in (("strangers", self.strangers), ("people", self.people)):
            if recordings is None:
                continue
            judge = Noises(self.device, 7, [self.kept_apart])
            sounds = {"clean": recordings.x, "machine 5 dB": self.noisy(recordings, 5, judge.machine(len(recordings.x))), "dishes 5 dB": self.noisy(recordings, 5, judge.recording(len(recordings.x)))}
            for condition, x in sounds.items():
                heard = self.read(model, x)
                if name == "people":
                    chosen = self.measured
                    found = sum(word in plain(heard[i][0]).split() for i in chosen for word in recordings.words[i].split())
                    parts.append(f"people {condition} {100 * found / sum(len(recordings.words[i].split()) for i in chosen):.1f}")
                else:
                    right = sum(plain(text) == said for (text, _), said in zip(heard, recordings.words))
                    sure = [(plain(text) == said) for (text, mean), said in zip(heard, recordings.words) if mean > -0.1]
                    parts.append(f"{condition} {100 * right / len(heard):.1f}, sure {len(sure)} of which wrong {len(sure) - sum(sure)}")
        self.say(tag, "|", " | ".join(parts))
        model.train()

    def load_speech(self):
        rows = json.load(open(self.options.speech + ".json"))
        pcm = np.fromfile(self.options.speech + ".pcm", np.int16)
        self.x = torch.zeros(len(rows), LENGTH, dtype=torch.int16, device=self.device)
        for at in range(0, len(rows), 2000):
            block = np.zeros((len(rows[at : at + 2000]), LENGTH), np.int16)
            for i, row in enumerate(rows[at : at + 2000]):
                block[i, : min(LENGTH, row[1])] = pcm[row[0] : row[0] + min(LENGTH, row[1])]
            self.x[at : at + len(block)] = torch.tensor(block)
        self.lengths = torch.tensor([row[1] for row in rows], device=self.device).float()
        self.texts = [self.words.encode(row[3]) for row in rows]
        self.learned, self.measured = [], []
        if self.people:
            order = list(range(len(self.people.rows)))
            random.Random(5).shuffle(order)
            self.learned, self.measured = order[: len(order) // 2], order[len(order) // 2 :]
            # The original model's own reading of the clean recording is the text: nobody transcribed these.
            self.people_texts = [self.words.encode(plain(text)) for text, _ in self.read(self.model, self.people.x)]
        self.say(len(rows), "synthetic clips,", len(self.learned), "of people")

    def batch(self, size, generator):
        people = int(size * HUMAN_SHARE) if self.learned else 0
        silent = int(size * NOISE_SHARE)
        chosen = torch.randint(0, len(self.texts), (size - people - silent,), device=self.device, generator=generator)
        x, lengths = self.x[chosen].float() / 32768, self.lengths[chosen]
        texts = [self.texts[i] for i in chosen.tolist()]
        if people:
            some = torch.tensor(self.learned, device=self.device)[torch.randint(0, len(self.learned), (people,), device=self.device, generator=generator)]
            x, lengths = torch.cat([x, self.people.x[some]]), torch.cat([lengths, self.people.lengths[some]])
            texts += [self.people_texts[i] for i in some.tolist()]
        texts += [self.words.encode("[noise]")] * silent
        sound = torch.cat([self.noises.under(x, lengths), self.noises.alone(silent)])
        opening, end = self.words.opening, self.words.end
        texts = [text[:24] + [end] for text in texts]
        width = len(opening) + max(map(len, texts)) - 1
        given, wanted = torch.full((size, width), end), torch.full((size, width), -100)
        for row, text in enumerate(texts):
            given[row, : len(opening) + len(text) - 1] = torch.tensor(opening + text[:-1])
            wanted[row, len(opening) - 1 : len(opening) - 1 + len(text)] = torch.tensor(text)
            wanted[row, 0] = self.words.no_speech if row >= size - silent else opening[1]
        return sound, given.to(self.device), wanted.to(self.device)

    def train(self):
        self.load_speech()
        self.report(self.model, "before")
        options = self.options
        steady = copy.deepcopy(self.model)
        optimizer = torch.optim.AdamW(self.model.parameters(), lr=self.ear["rate"], betas=(0.9, 0.98), weight_decay=0.01)
        generator = torch.Generator(device=self.device)
        generator.manual_seed(self.ear["seed"] + 1)
        self.model.train()
        started = time.time()
        for step in range(options.steps):
            done = max(step / options.steps, (time.time() - started) / options.seconds)
            if done >= 1:
                break
            for group in optimizer.param_groups:
                group["lr"] = self.ear["rate"] * min(1, (step + 1) / 200) * (0.5 * (1 + math.cos(math.pi * done)) + 0.01)
            with torch.no_grad():
                sound, given, wanted = self.batch(options.batch, generator)
                heard = spectrum(sound, self.filters)
            with self.autocast():
                scores = self.model(heard, given)
            loss = F.cross_entropy(scores.float().flatten(0, 1), wanted.flatten(), ignore_index=-100)
            optimizer.zero_grad(set_to_none=True)
            loss.backward()
            nn.utils.clip_grad_norm_(self.model.parameters(), 1.0)
            optimizer.step()
            with torch.no_grad():
                kept = min(0.999, (step + 1) / (step + 20))
                for mean, now in zip(steady.parameters(), self.model.parameters()):
                    mean.lerp_(now, 1 - kept)
            if step % 200 == 0:
                self.say("step", step, "loss", round(loss.item(), 4))
        trained = {name: value.clone() for name, value in steady.state_dict().items()}
        self.report(steady, "trained alone")
        for share in (0.45, TRAINED_SHARE, 0.65, 0.75) if self.strangers else ():
            steady.load_state_dict(self.mixed(trained, share))
            self.report(steady, f"share {share}")
        self.file.write(options.out, {name: value.float().cpu().numpy() for name, value in self.mixed(trained, options.share).items()})
        self.say("written", options.out)

    def mixed(self, trained, share):
        return {name: self.original[name] * (1 - share) + value * share for name, value in trained.items()}


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("ear", choices=EARS)
    parser.add_argument("model")
    parser.add_argument("out")
    parser.add_argument("--speech", required=True)
    parser.add_argument("--human", help="recordings of people (NAME.ulaw, NAME.json); half is learned from, half reported on")
    parser.add_argument("--strangers", help="recordings of speakers that are not learned from, to report on")
    parser.add_argument("--noise", help="recorded noise, 8-bit mu-law")
    parser.add_argument("--seconds", type=float, default=600)
    parser.add_argument("--steps", type=int, default=8000)
    parser.add_argument("--batch", type=int, default=256)
    parser.add_argument("--share", type=float, default=TRAINED_SHARE)
    parser.add_argument("--device", default="cuda" if torch.cuda.is_available() else "cpu")
    torch.backends.cuda.matmul.allow_tf32 = torch.backends.cudnn.allow_tf32 = True
    Trainer(parser.parse_args()).train()


if __name__ == "__main__":
    main()
