#!/usr/bin/env bash
# Makes onboard-left.webm beside it: an invented crash drawn by the script below, 200 frames as if recorded at 1000 a second (contact at frame 20), played
# at 25 a second. Needs ffmpeg and python3 with numpy (Debian's). The demo carries the file, so that its packages need neither.
set -euo pipefail
cd "$(dirname "$0")"
/usr/bin/python3 - <<'PY' | ffmpeg -v error -y -f rawvideo -pix_fmt gray -s 384x216 -r 25 -i - -pix_fmt yuv420p -c:v libvpx -b:v 160k -g 50 -fflags +bitexact -flags:v +bitexact onboard-left.webm
import sys
import numpy as np

W, H = 384, 216
Y, X = np.mgrid[0:H, 0:W].astype(float)
SEGMENTS = {"0": "abcdef", "1": "bc", "2": "abged", "3": "abgcd", "4": "fgbc", "5": "afgcd", "6": "afgedc", "7": "abc", "8": "abcdefg", "9": "abcdfg", "-": "g"}

def box(img, x0, y0, x1, y1, v):
    img[max(0, int(y0)):max(0, int(y1)), max(0, int(x0)):max(0, int(x1))] = v

def disc(img, x, y, r, v):
    img[(X - x) ** 2 + (Y - y) ** 2 <= r * r] = v

def digit(img, x, y, c):
    for s in SEGMENTS[c]:
        x0, y0, x1, y1 = {"a": (1, 0, 7, 2), "b": (6, 1, 8, 8), "c": (6, 8, 8, 15), "d": (1, 14, 7, 16), "e": (0, 8, 2, 15), "f": (0, 1, 2, 8), "g": (1, 7, 7, 9)}[s]
        box(img, x + x0, y + y0, x + x1, y + y1, 235)

for frame in range(200):
    t = (frame - 20) / 1000.0
    crush = 46 * (1 - np.exp(-max(t, 0) / 0.05))              # front of the vehicle shortens
    travel = 60 * t / 0.02 if t < 0 else 0
    img = np.full((H, W), 58.0)
    box(img, 0, 184, W, H, 40)                                 # floor of the hall
    box(img, 340, 60, 384, 184, 150)                           # barrier
    for i in range(6):
        box(img, 326 + min(crush * 0.25, 10), 66 + i * 20, 340, 82 + i * 20, 120)
    nose = 326 + travel + crush * 0.3
    back = nose - 250 + crush
    box(img, back, 128, nose, 166, 176)                        # body
    box(img, back + 8, 84, back + 150, 130, 176)               # cabin
    box(img, back + 20, 92, back + 84, 126, 92)                # window of the driver's door
    box(img, back + 92, 92, back + 142, 126, 92)
    for wheel in (back + 44, nose - 44):
        disc(img, wheel, 168, 19, 24)
        disc(img, wheel, 168, 9, 120)
    forward = 30 * (1 - np.exp(-max(t - 0.03, 0) / 0.03)) - 14 * max(t - 0.11, 0) / 0.05
    bag = 15 * min(max((t - 0.025) / 0.02, 0), 1) * (1 if t < 0.12 else max(0.5, 1 - (t - 0.12) / 0.1))
    if bag > 1:
        disc(img, back + 128, 112, bag, 225)
    disc(img, back + 58 + forward, 104, 11, 205)               # head
    disc(img, back + 58 + forward, 104, 3, 20)                 # its target
    box(img, back + 46 + forward * 0.6, 115, back + 66 + forward * 0.6, 127, 140)
    for n, c in enumerate(f"{frame - 20:d}"):
        digit(img, 12 + 12 * n, 12, c)
    sys.stdout.buffer.write(np.clip(img, 0, 255).astype(np.uint8).tobytes())
PY
