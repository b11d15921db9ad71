"""Reads and writes models in the engine's file format (ggml), matrix weights quantised to q8_0. Only NumPy is needed."""
import struct
import numpy as np


class ModelFile:
    """A model: header (dimensions, mel filters, vocabulary), tensors by name, and how each is stored."""

    def __init__(self, path):
        data = open(path, "rb").read()
        at = 4
        self.dimensions = struct.unpack_from("<11i", data, at)
        at += 44
        bands, bins = struct.unpack_from("<2i", data, at)
        at += 8
        self.filters = np.frombuffer(data, np.float32, bands * bins, at).reshape(bands, bins)
        at += 4 * bands * bins
        (count,) = struct.unpack_from("<i", data, at)
        at += 4
        self.vocabulary = []
        for _ in range(count):
            (length,) = struct.unpack_from("<i", data, at)
            self.vocabulary.append(data[at + 4 : at + 4 + length])
            at += 4 + length
        self.header = data[:at]
        self.tensors, self.stored = {}, []
        while at < len(data):
            rank, length, kind = struct.unpack_from("<3i", data, at)
            at += 12
            sides = struct.unpack_from(f"<{rank}i", data, at)
            at += 4 * rank
            name = data[at : at + length].decode()
            at += length
            values, size = _read(data, at, kind, int(np.prod(sides)))
            at += size
            self.tensors[name] = values.reshape(sides[::-1]).copy()
            self.stored.append((name, rank, kind, sides[::-1]))

    @property
    def is_multilingual(self):
        return self.dimensions[0] >= 51865

    def write(self, path, tensors):
        with open(path, "wb") as file:
            file.write(self.header)
            for name, rank, kind, shape in self.stored:
                text = name.encode()
                file.write(struct.pack("<3i", rank, len(text), kind) + struct.pack(f"<{rank}i", *shape[::-1]) + text)
                file.write(_bytes(tensors[name].reshape(shape), kind))


def _read(data, at, kind, count):
    if kind == 0:
        return np.frombuffer(data, np.float32, count, at), 4 * count
    if kind == 1:
        return np.frombuffer(data, np.float16, count, at).astype(np.float32), 2 * count
    blocks = np.frombuffer(data, np.uint8, count // 32 * 34, at).reshape(-1, 34)
    scale = blocks[:, :2].copy().view(np.float16).astype(np.float32)
    return (blocks[:, 2:].view(np.int8).astype(np.float32) * scale).reshape(-1), count // 32 * 34


def _bytes(values, kind):
    if kind == 0:
        return values.astype(np.float32).tobytes()
    if kind == 1:
        return values.astype(np.float16).tobytes()
    rows = np.asarray(values, np.float32).reshape(-1, 32)
    scale = (np.abs(rows).max(1) / 127).astype(np.float32)
    steps = np.where(scale[:, None] > 0, np.rint(rows / np.where(scale == 0, 1, scale)[:, None]), 0).astype(np.int8)
    blocks = np.empty((len(rows), 34), np.uint8)
    blocks[:, :2] = scale.astype(np.float16)[:, None].view(np.uint8).reshape(-1, 2)
    blocks[:, 2:] = steps.view(np.uint8)
    return blocks.tobytes()
