"""Cases about which channel is taken and whether it can be believed."""
import sys

import numpy as np

packages = sys.modules.get("packages") or sys.modules["__main__"]
Case, Style, case, SI = packages.Case, packages.Style, packages.case, packages.SI


def standard_letters(c):
    for part, letter in (("HEAD", "A"), ("NECKUP00H3FO", "A"), ("NECKUP00H3MO", "B"), ("CHST", "C"), ("PELV", "A"), ("FEMR", "B"), ("KNSL", "C"), ("TIBI", "B"), ("FOOT", "A")):
        c.letter(part, letter)


@case
def filtered_at_their_class(n):
    c = Case(n, level=1)
    standard_letters(c)
    c.letter("10VEHC", "C")
    return c


@case
def filtered_too_low(n):
    c = Case(n, level=1)
    c.letter("HEAD0000H3ACX", "C")
    c.letter("NECKUP00H3FOZ", "B")
    c.letter("CHST0000H3ACX", "D")
    c.letter("FEMRLE", "D")
    c.letter("KNSLRI", "D")
    c.letter("FOOTLE00H3ACY", "B")
    c.letter("10VEHC", "D")
    return c


@case
def letters_against_headers(n):
    c = Case(n, level=2)
    c.letter("HEAD0000H3ACX", "A", "600")
    c.letter("FEMRLE", "B", "1000")
    c.letter("FEMRRI", "0", "180")
    c.letter("CHST0003", "S", "180")
    c.letter("PELV0000H3ACX", "S", "NOVALUE")
    c.letter("NECKUP00H3FOZ", "P", "NOVALUE")
    c.letter("NECKUP00H3FOX", "P", "1000")
    c.letter("NECKUP00H3MOY", "X", "600")
    c.letter("TIBILEUPH3FOZ", "X", "NOVALUE")
    c.letter("FOOTLE00H3ACX", "A", "1000")
    return c


@case
def same_channel_in_several_classes(n):
    c = Case(n, level=1)
    c.copy("HEAD0000H3ACX0", "11HEAD0000H3ACXA", 1.31)
    c.copy("HEAD0000H3ACX0", "11HEAD0000H3ACXC", 1.53)
    c.letter("FEMRLE", "D")
    c.copy("FEMRLE", "11FEMRLE00H3FOZB", 1.27)
    c.letter("CHST0003", "D")
    c.copy("CHST0003", "11CHST0003H3DSXA", 1.11)
    c.copy("CHST0003H3DSXD", "11CHST0003H3DSXC", 0.83)
    c.letter("FEMRRI", "P")
    c.copy("FEMRRI", "11FEMRRI00H3FOZ0", 1.4)
    c.copy("10VEHC", "10VEHC000000ACXD", 1.2)
    return c


@case
def chosen_channel_is_dead(n):
    c = Case(n, level=1)
    c.copy("HEAD0000H3ACX0", "11HEAD0000H3ACXA", 1.0)
    c.sensor("HEAD0000H3ACX0").samples[:] = 0.0
    c.copy("CHST0003", "11CHST0000H3DSX0", 1.2)
    c.sensor("CHST0003").samples[:] = -0.25
    return c


@case
def two_chest_transducers(n):
    c = Case(n, level=1)
    c.copy("CHST0003", "11CHST0000H3DSX0", 1.35)
    return c


@case
def chest_transducer_at_zero_only_small(n):
    c = Case(n, level=1, fs=2e4, people=[(1, "driver", "HF", None)])
    s = c.sensor("CHST0003")
    s.code = "11CHST0000HFDSX0"
    return c


@case
def missing_axes(n):
    c = Case(n, level=1)
    c.drop("HEAD0000H3ACY", "FOOTRI00H3ACY", "FOOTLE00H3ACX", "NECKUP00H3FOX", "TIBILEUPH3FOZ", "TIBIRILOH3MOX", "KNSLLE")
    return c


@case
def lower_leg_without_one_cell(n):
    c = Case(n, level=1, people=[(1, "driver", "HF", 1), (3, "passenger", "H3", 1)])
    c.drop("11TIBILEUPHFMOX", "11TIBILEUPHFMOY", "11TIBILEUPHFFOZ", "11TIBIRILOHFFOZ", "13TIBILELOH3MOX", "13TIBILELOH3MOY")
    return c


@case
def dead_channels(n):
    c = Case(n, level=1)
    c.sensor("FEMRLE").samples[:] = 0.0
    c.sensor("TIBILELOH3FOZ").samples[:] = 1.5
    c.sensor("PELV0000H3ACY").samples[:] = -3.0
    c.sensor("10VEHC").samples[:] = 0.0
    return c


@case
def clipped_channels(n):
    c = Case(n, level=2)
    for part, share in (("HEAD0000H3ACX", 0.7), ("FEMRLE", 0.8), ("CHST0000H3ACX", 0.75)):
        s = c.sensor(part)
        top = share * float(np.max(np.abs(s.samples)))
        s.samples = np.clip(s.samples, -top, top)
        s.header["Channel amplitude class"] = f"{top:.7g}"
    return c


@case
def samples_that_are_no_numbers(n):
    c = Case(n, level=1)
    c.sensor("HEAD0000H3ACZ").lines[1200] = "NaN"
    c.sensor("FEMRRI").lines[10] = "NOVALUE"
    c.sensor("KNSLLE").lines[3790] = "overflow"
    c.sensor("CHST0000H3ACZ").lines[900] = "1.2.3"
    return c


@case
def no_time_of_first_sample(n):
    c = Case(n, level=1, people=[(1, "driver", "H3", 1), (3, "passenger", "HF", 0)])
    c.sensor("11FEMRRI").header["Time of first sample"] = None
    c.sensor("11PELV0000H3ACX").header["Time of first sample"] = "NOVALUE"
    c.sensor("13CHST0003").header["Time of first sample"] = None
    c.sensor("13FOOTLE00HFACX").header["Sampling interval"] = "-0.0001"
    return c


@case
def reversed_and_spiked_channels(n):
    c = Case(n, level=0)
    for part in ("CHST0003", "FEMRLE", "TIBIRILOH3FOZ"):
        c.sensor(part).samples *= -1
    c.sensor("HEAD0000H3ACX").samples[1500] = -150.0
    c.sensor("NECKUP00H3FOZ").samples[2000] = 6.0
    return c


@case
def vehicle_by_pillars(n):
    c = Case(n, level=0)
    c.drop("10VEHC")
    return c


@case
def vehicle_by_sills(n):
    c = Case(n, level=2)
    c.drop("10VEHC", "10BPILRI")
    c.letter("10SILL", "A")
    return c


@case
def vehicle_pillar_dead(n):
    c = Case(n, level=1)
    c.drop("10VEHC")
    c.sensor("10BPILLE").samples[:] = 0.1
    return c


@case
def vehicle_without_channels(n):
    c = Case(n, level=0)
    c.drop("10VEHC", "10BPILLE", "10SILLRI")
    return c


@case
def soft_pulse_never_restrains(n):
    c = Case(n, level=0)
    c.sensor("10VEHC").samples *= 0.05
    return c


@case
def dead_moment_in_one_cell(n):
    c = Case(n, level=1)
    c.sensor("TIBIRILOH3MOX").samples[:] = 0.0
    return c


@case
def one_constant_sample_then_alive(n):
    c = Case(n, level=1, fs=2e4)
    s = c.sensor("NECKUP00H3MOY")
    s.samples[: len(s.samples) // 4] = s.samples[0]
    c.sensor("KNSLRI").samples = c.sensor("KNSLRI").samples[:3]
    c.sensor("FEMRLE").samples = np.zeros(0)
    return c
