"""Hostile archives: bombs, names, links, flags, truncation, forged sizes."""
import gzip
import io
import struct
import tarfile
import zipfile
import zlib

from hostile_base import add, files, hostile, pack, programme

CENTRAL, LOCAL, END = b"PK\x01\x02", b"PK\x03\x04", b"PK\x05\x06"
add("empty_body", "refused", lambda code: b"")
add("not_a_zip", "refused", lambda code: b"This is no archive at all.\n" * 50)
add("random_bytes", "refused", lambda code: zlib.compress(b"x" * 100000) * 40)
add("only_end_record", "refused", lambda code: END + b"\0" * 18)
add("half_of_a_package", "refused", lambda code: (lambda raw: raw[: len(raw) // 2])(pack(files(code))))
add("last_byte_missing", "refused", lambda code: pack(files(code))[:-1])
add("end_record_missing", "refused", lambda code: pack(files(code))[:-22])
add("tar_instead", "refused", lambda code: tarred(files(code)))
add("gzip_around_zip", "refused", lambda code: gzip.compress(pack(files(code)), mtime=0))
add("zip_in_zip", "refused", lambda code: pack({"package.zip": pack(files(code))}))
add("no_entries", "refused", lambda code: pack({}))
add("junk_before_zip", "either", lambda code: b"MZ junk\r\n" * 100 + pack(files(code)))


def tarred(entries):
    buffer = io.BytesIO()
    with tarfile.open(fileobj=buffer, mode="w") as archive:
        for name, raw in entries.items():
            info = tarfile.TarInfo(name)
            info.size = len(raw)
            archive.addfile(info, io.BytesIO(raw))
    return buffer.getvalue()


def also(*names, raw=b"x"):
    return lambda code: pack(list(files(code).items()) + [(n.replace("{code}", code), raw) for n in names])


for title, name in {"climbing": "../../evil.txt", "climbing_inside": "Document/../../../evil.txt", "climbing_backslash": "..\\..\\evil.txt", "absolute": "/tmp/evil.txt",
                    "drive_letter": "C:\\evil.txt", "drive_letter_slash": "C:/evil.txt", "network_path": "\\\\host\\share\\evil.txt", "dot_dot_only": "..",
                    "climbing_channel": "Channel/../../{code}.004"}.items():
    add(f"name_{title}", "refused", also(name))
add("name_case_equal", "refused", also("PROGRAMME.JSON"))
add("name_case_equal_channel", "refused", also("CHANNEL/{code}.001"))
add("name_twice", "refused", also("Channel/{code}.001"))
add("name_very_long", "either", also("Document/" + "n" * 60000))
add("name_control_characters", "either", also("Document/a\nb\x1b[31m.txt"))
add("name_with_nul", "either", lambda code: pack(list(files(code).items()) + [("Document/aaaaXbbbb.txt", b"x")]).replace(b"aaaaXbbbb", b"aaaa\0bbbb"))
add("two_top_folders", "refused", lambda code: pack([(f"{top}/{n}", raw) for top in "AB" for n, raw in files(code).items()]))
add("two_folders_deep", "refused", lambda code: pack({f"a/b/{n}": raw for n, raw in files(code).items()}))
add("entries_5001", "refused", lambda code: pack(list(files(code).items()) + [(f"Document/{i}", b"") for i in range(5001)]))
add("entries_100000", "refused", lambda code: pack(list(files(code).items()) + [(f"d/{i}", b"") for i in range(100_000)], zipfile.ZIP_STORED))


@hostile("refused")
def symbolic_link(code):
    link = zipfile.ZipInfo("Document/link")
    link.create_system, link.external_attr = 3, 0o120777 << 16
    return pack(list(files(code).items()) + [(link, b"/etc/passwd")])


@hostile("refused")
def symbolic_link_as_programme(code):
    f = files(code)
    del f["programme.json"]
    link = zipfile.ZipInfo("programme.json")
    link.create_system, link.external_attr = 3, 0o120777 << 16
    return pack([(link, b"Document/other.json"), ("Document/other.json", b"{}")] + list(f.items()))


def patched(raw, name, central=None, local=None):
    """Overwrites fields of one entry's headers: {offset: (format, value)}."""
    raw, key, at = bytearray(raw), name.encode(), 0
    for mark, name_at, fields in ((LOCAL, 30, local), (CENTRAL, 46, central)):
        at = raw.find(mark)
        while at >= 0:
            if raw[at + name_at: at + name_at + len(key)] == key:
                for offset, (form, value) in (fields or {}).items():
                    struct.pack_into(form, raw, at + offset, value)
            at = raw.find(mark, at + 4)
    return bytes(raw)


@hostile("refused")
def encrypted_bit(code):
    return patched(pack(files(code)), f"Channel/{code}.001", central={8: ("<H", 1)}, local={6: ("<H", 1)})


@hostile("refused")
def unknown_compression(code):
    return patched(pack(files(code)), f"Channel/{code}.001", central={10: ("<H", 99)}, local={8: ("<H", 99)})


@hostile("refused")
def wrong_checksum(code):
    return patched(pack(files(code)), f"Channel/{code}.001", central={16: ("<I", 1)}, local={14: ("<I", 1)})


@hostile("refused")
def offset_outside(code):
    return patched(pack(files(code)), f"Channel/{code}.001", central={42: ("<I", 0x7FFFFFFF)})


@hostile("refused")
def size_forged_small(code):
    return patched(pack({**files(code), "Document/zeros.bin": b"\0" * 50_000_000}), "Document/zeros.bin", central={24: ("<I", 10)}, local={22: ("<I", 10)})


@hostile("refused")
def size_forged_huge(code):
    return patched(pack(files(code)), f"Channel/{code}.001", central={24: ("<I", 0xFFFFFFF0)}, local={22: ("<I", 0xFFFFFFF0)})


@hostile("refused")
def channel_bytes_spoiled(code):
    raw = bytearray(pack(files(code)))
    at = raw.find(f"Channel/{code}.002".encode()) + 60
    raw[at: at + 400] = bytes(255 - b for b in raw[at: at + 400])
    return bytes(raw)


def zeros(size):
    """A raw deflate stream of `size` zero bytes, made in pieces."""
    squeeze, block, out = zlib.compressobj(9, zlib.DEFLATED, -15), b"\0" * (1 << 20), []
    for _ in range(size >> 20):
        out.append(squeeze.compress(block))
    return b"".join(out) + squeeze.flush(), size >> 20 << 20


def stored_entries(entries):
    """A zip by hand from (name, method, packed bytes, size, crc); the same packed bytes may be shared by `None`, an overlap."""
    body, central, offset = b"", b"", 0
    for name, method, packed, size, crc in entries:
        key = name.encode()
        if packed is not None:
            offset, length = len(body), len(packed)
            body += struct.pack("<4s5H3I2H", LOCAL, 20, 0, method, 0, 33, crc, length, size, len(key), 0) + key + packed
        central += struct.pack("<4s6H3I5H2I", CENTRAL, 20, 20, 0, method, 0, 33, crc, length, size, len(key), 0, 0, 0, 0, 0, offset) + key
    n = len(entries)
    return body + central + struct.pack("<4s4H2IH", END, 0, 0, n, n, len(central), len(body), 0)


def bomb(megabytes, name):
    def make(code):
        packed, size = zeros(megabytes << 20)
        sound = [(n, 0, raw, len(raw), zlib.crc32(raw)) for n, raw in files(code).items() if n != name]
        return stored_entries(sound + [(name.replace("{code}", code), 8, packed, size, crc_zeros(size))])
    return make


def crc_zeros(size):
    crc, block = 0, b"\0" * (1 << 20)
    for _ in range(size >> 20):
        crc = zlib.crc32(block, crc)
    return crc


add("bomb_600_megabytes", "refused", bomb(600, "Document/zeros.bin"))
add("bomb_600_megabytes_channel", "refused", bomb(600, "Channel/{code}.009"))
add("bomb_300_megabytes_programme", "refused", bomb(300, "programme.json"))


@hostile("refused")
def bomb_overlapping(code):
    packed, size = zeros(64 << 20)
    crc = crc_zeros(size)
    sound = [(n, 0, raw, len(raw), zlib.crc32(raw)) for n, raw in files(code).items()]
    return stored_entries(sound + [("Document/0.bin", 8, packed, size, crc)] + [(f"Document/{i}.bin", 8, None, size, crc) for i in range(1, 200)])


@hostile("refused")
def bomb_programme_white_space(code):
    import json
    return pack({**files(code), "programme.json": b" " * 200_000_000 + json.dumps(programme(code)).encode()})


@hostile("refused")
def directory_named_programme(code):
    f = files(code)
    del f["programme.json"]
    return pack(list(f.items()) + [("programme.json/", b"")])
