"""Speak COUNT random texts with synthetic speakers, 16 kHz: speech.py OUT COUNT SEED WORKERS -> OUT.pcm, OUT.json (offset, samples, speaker, text).

Needs flite and espeak-ng, or a folder named by TTS_ROOT that holds bin/, lib/ and espeak-ng-data/ of both, and NumPy.
The speakers flite:slt and flite:awb and all of festival's are left out on purpose: they are the strangers of the measurements."""
import json
import os
import random
import subprocess
import sys
import tempfile
import wave
from multiprocessing import Pool

import numpy as np
from texts import Texts

ROOT = os.environ.get("TTS_ROOT", "")
BIN = f"{ROOT}/bin/" if ROOT else ""
ENVIRONMENT = dict(os.environ, LD_LIBRARY_PATH=f"{ROOT}/lib", ESPEAK_DATA_PATH=ROOT) if ROOT else None
TEMPORARY = tempfile.mkdtemp()
ACCENTS = "en-us en-us en-us en-gb en-gb-scotland en-gb-x-gbclan en-gb-x-rp en-gb-x-gbcwmd en-029 en-us-nyc".split()
VARIANTS = (
    "m1 m2 m3 m4 m5 m6 m7 m8 f1 f2 f3 f4 f5 Alex Alicia Andrea Andy Annie Denis Diogo Gene Gene2 Hugo Jacky Lee Marco Mario Michael Mike Nguyen RicishayMax Storm adam anika antonio aunty "
    "belinda benjamin boris caleb david ed edward edward2 grandma grandpa gustave iven iven2 iven3 john klatt klatt2 klatt3 klatt4 linda max michel miguel norbert pablo paul pedro quincy rob "
    "robert sandro shelby steph steph2 steph3 travis victor zac"
).split()


def voice(rnd):
    chance = rnd.random()
    if chance < 0.34:
        return "flite", "rms"
    if chance < 0.50:
        return "flite", "kal16"
    if chance < 0.55:
        return "flite", "kal"
    return "espeak", rnd.choice(ACCENTS) + (f"+{rnd.choice(VARIANTS)}" if rnd.random() < 0.9 else "")


def at_16_kHz(x, rate):
    if rate == 16000:
        return x
    n = int(len(x) * 16000 / rate)
    before = np.fft.rfft(x)
    after = np.zeros(n // 2 + 1, complex)
    kept = min(len(after), len(before))
    after[:kept] = before[:kept]
    return np.fft.irfft(after, n) * n / len(x)


def command(rnd, kind, name, text, path):
    if kind == "espeak":
        return [f"{BIN}espeak-ng", "-v", name, "-s", str(rnd.randint(120, 210)), "-p", str(rnd.randint(15, 85)), "-w", path, text]
    pitch = [] if name == "rms" else ["--setf", f"int_f0_target_mean={rnd.uniform(80, 180):.0f}"]
    return [f"{BIN}flite", "-voice", name, "--setf", f"duration_stretch={rnd.uniform(0.75, 1.25):.2f}", *pitch, "-t", text, "-o", path]


TEXTS = Texts()


def say(job):
    index, seed = job
    rnd = random.Random(seed * 1000003 + index)
    text, (kind, name), path = TEXTS.one(rnd), voice(rnd), f"{TEMPORARY}/{os.getpid()}.wav"
    try:
        subprocess.run(command(rnd, kind, name, text, path), check=True, capture_output=True, env=ENVIRONMENT, timeout=30)
        with wave.open(path) as file:
            x, rate = np.frombuffer(file.readframes(file.getnframes()), np.int16).astype(np.float32), file.getframerate()
    except (OSError, subprocess.SubprocessError, wave.Error) as problem:
        return str(problem)[:200]
    x = at_16_kHz(x, rate)
    loud = np.nonzero(np.abs(x) > 0.02 * np.abs(x).max())[0]
    if len(loud) == 0:
        return "silence"
    x = x[max(0, loud[0] - 400) : loud[-1] + 800]
    if not 1600 <= len(x) <= 74000:
        return "too short or too long"
    return text, f"{kind}:{name}", (x * (9000 / np.abs(x).max())).astype(np.int16)


def main():
    out, count, seed, workers = sys.argv[1], int(sys.argv[2]), int(sys.argv[3]), int(sys.argv[4])
    rows, sound, at, problems = [], [], 0, []
    with Pool(workers) as pool:
        for said in pool.imap_unordered(say, [(index, seed) for index in range(count)], chunksize=32):
            if isinstance(said, str):
                problems.append(said)
                continue
            text, speaker, x = said
            rows.append((at, len(x), speaker, text))
            sound.append(x)
            at += len(x)
    np.concatenate(sound).tofile(out + ".pcm")
    json.dump(rows, open(out + ".json", "w"))
    print(f"{len(rows)} clips, {at / 16000 / 3600:.1f} h; left out {len(problems)} {problems[:1]}", flush=True)


if __name__ == "__main__":
    main()
