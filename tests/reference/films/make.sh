#!/usr/bin/env bash
# Makes the clips beside it with ffmpeg (Debian's). Every frame carries its own number: eight squares from the left, most significant first, white = 1.
# rates.txt is what ffprobe says of each, independently of this project's readers.
set -euo pipefail
cd "$(dirname "$0")"
frames() {
  /usr/bin/python3 - "$1" <<'PY'
import sys
for n in range(int(sys.argv[1])):
    row = b"".join((b"\xff" if n >> (7 - bit) & 1 else b"\x00") * 16 for bit in range(8))
    sys.stdout.buffer.write(row * 32)
PY
}
encode() { frames "$1" | ffmpeg -v error -y -f rawvideo -pix_fmt gray -s 128x32 -r "$2" -i - -pix_fmt yuv420p -fflags +bitexact -flags:v +bitexact "${@:4}" "$3"; }
encode 120 30 numbered-30.webm -c:v libvpx -b:v 200k -g 30
encode 50 25 numbered-25.mp4 -c:v libx264 -g 10 -movflags +faststart
encode 48 24000/1001 numbered-ntsc.mp4 -c:v libx264 -g 12
for film in *.webm *.mp4; do
  echo "$film $(ffprobe -v error -select_streams v:0 -show_entries stream=avg_frame_rate -of csv=p=0 "$film" | tr -d ',')"
done > rates.txt
