"""Preparation and evaluation of time histories by methods edition 1: bias, class, scipy's filtfilt, windows on sample counts."""
import math
from dataclasses import dataclass

import numpy as np
from scipy.signal import filtfilt

LETTER_CLASS = {"A": 1000.0, "B": 600.0, "C": 180.0, "D": 60.0, "P": math.inf, "0": math.inf}
TOLERANCE = 1e-6        # of an interval
END_S = 0.300


class Unfit(Exception):
    """The reason a channel, and with it a measure, is absent."""


def first_index_at_or_after(time, t0, dt):
    return math.ceil((time - t0) / dt - TOLERANCE)


def last_index_at_or_before(time, t0, dt):
    return math.floor((time - t0) / dt + TOLERANCE)


def effective_class(channel):
    """The class a channel has already; inf = unfiltered. Letter and header disagree: the lower."""
    letter = LETTER_CLASS.get(channel.code[15:16])
    header = channel.header_class
    if letter is None:
        return header if header else math.inf
    return min(letter, header) if header else letter


def choose(channels):
    """Of channels that differ only in filter letter: unfiltered, else highest class, else lowest number."""
    return min(channels, key=lambda c: (-effective_class(c), c.number))


def section(cfc, fs):
    """b, a of the two-pole section, SAE J211-1 appendix C, constant 2.0775."""
    wa = math.tan(2 * math.pi * cfc * 2.0775 / (2 * fs))
    d = 1 + math.sqrt(2) * wa + wa * wa
    a0 = wa * wa / d
    b1 = -2 * (wa * wa - 1) / d
    b2 = (-1 + math.sqrt(2) * wa - wa * wa) / d
    return [a0, 2 * a0, a0], [1.0, -b1, -b2]


def phaseless(x, cfc, fs):
    b, a = section(cfc, fs)
    pad = min(len(x) - 1, int(math.floor(0.010 * fs + 0.5)))
    return filtfilt(b, a, x, padtype="odd", padlen=pad)


def check_fit(channel):
    if channel.defect:
        raise Unfit(channel.defect)
    if channel.t0 is None:
        raise Unfit(f"{channel.code}: no time of first sample")
    if not channel.dt or channel.dt <= 0:
        raise Unfit(f"{channel.code}: no sampling interval")
    if len(channel.samples) < 1 or not np.all(np.isfinite(channel.samples)):
        raise Unfit(f"{channel.code}: missing or non-numeric samples")
    if np.all(channel.samples == channel.samples[0]):
        raise Unfit(f"{channel.code}: flat")


def bias(channel):
    first = max(0, first_index_at_or_after(-0.050, channel.t0, channel.dt))
    last = min(len(channel.samples) - 1, last_index_at_or_before(-0.005, channel.t0, channel.dt))
    count = last - first + 1
    if count < 1 or count * channel.dt < 0.010 - TOLERANCE * channel.dt:
        return 0.0
    return float(np.mean(channel.samples[first: last + 1]))


def at_class(channel, cfc):
    """The whole record without bias at the wanted class; Unfit with a reason otherwise."""
    check_fit(channel)
    has = effective_class(channel)
    x = channel.samples - bias(channel)
    if has == cfc:
        return x
    if has < cfc:
        raise Unfit(f"{channel.code}: filtered at {has:g}, {cfc:g} wanted")
    fs = 1 / channel.dt
    if fs < 10 * cfc * (1 - TOLERANCE):
        raise Unfit(f"{channel.code}: {fs:g} Hz is too slow for class {cfc:g}")
    if len(x) < 4:
        raise Unfit(f"{channel.code}: fewer than 4 samples")
    return phaseless(x, cfc, fs)


@dataclass
class Window:
    """Common samples of several channels; `start`..`stop` (exclusive) is 0 <= t <= 0.300 s of `full`."""
    full: list
    dt: float
    t0: float
    start: int
    stop: int

    @property
    def cut(self):
        return [x[self.start: self.stop] for x in self.full]

    def time(self, index_in_cut):
        return self.t0 + (self.start + index_in_cut) * self.dt


def together(channels, cfc):
    """Channels prepared at one class over their common samples. Differing interval or start: Unfit."""
    signals = [at_class(c, cfc) for c in channels]
    dt, t0 = channels[0].dt, channels[0].t0
    for c in channels[1:]:
        if abs(c.dt - dt) > TOLERANCE * dt or abs(c.t0 - t0) > TOLERANCE * dt:
            raise Unfit("components do not share interval and start")
    count = min(len(x) for x in signals)
    start = max(0, first_index_at_or_after(0.0, t0, dt))
    stop = min(count - 1, last_index_at_or_before(END_S, t0, dt)) + 1
    if stop <= start:
        raise Unfit("no samples between 0 and 0.300 s")
    return Window([x[:count] for x in signals], dt, t0, start, stop)


def resultant(components):
    return np.sqrt(sum(x * x for x in components))


def cumulative_integral(x, dt):
    return np.concatenate([[0.0], np.cumsum((x[1:] + x[:-1]) / 2 * dt)])


def hic(a, dt, window_s):
    """max over pairs with t2 - t1 <= W of (t2-t1) mean^2.5; (value, i1, i2), the earliest pair on a tie."""
    area = cumulative_integral(a, dt)
    longest = min(math.floor(window_s / dt + TOLERANCE), len(a) - 1)
    best = (0.0, 0, 0)
    for m in range(1, longest + 1):
        mean = (area[m:] - area[:-m]) / (m * dt)
        i = int(np.argmax(mean))
        value = m * dt * max(mean[i], 0.0) ** 2.5
        if value > best[0] or (value == best[0] and (i, i + m) < best[1:]):
            best = (value, i, i + m)
    return best


def time_above(a, dt, level):
    lo, hi = np.minimum(a[1:], a[:-1]), np.maximum(a[1:], a[:-1])
    span = hi - lo
    with np.errstate(divide="ignore", invalid="ignore"):
        part = np.where(span > 0, (hi - level) / span, np.where(hi > level, 1.0, 0.0))
    return dt * float(np.sum(np.clip(part, 0.0, 1.0)))


def exceeded_for(a, dt, duration=0.003):
    """sup{L : total time above L >= duration}, the signal piecewise linear."""
    if (len(a) - 1) * dt < duration - TOLERANCE * dt:
        raise Unfit("record shorter than 3 ms")
    lo, hi = float(np.min(a)), float(np.max(a))
    for _ in range(200):
        mid = (lo + hi) / 2
        if mid <= lo or mid >= hi:
            break
        if time_above(a, dt, mid) >= duration:
            lo = mid
        else:
            hi = mid
    return lo


def digits(x):
    """12 significant digits."""
    return float(f"{x:.11e}")
