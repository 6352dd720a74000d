// The film player: time from contact, frame by frame, to a finding, to a point in a plot. High-speed film is played slower than it was recorded:
// frame = ⌊clock · playback rate⌋, time = (frame − zero frame) / recorded rate.
// Other scripts may dispatch "film-seek" with {ms} on the document, and listen to "film-time" with {ms, frame}.

const player = document.getElementById("film-player");
const film = document.getElementById("film");
const [rate, zero, playback] = ["rate", "zero", "playback"].map((name) => (player.dataset[name] === "" ? NaN : Number(player.dataset[name])));
const timed = Number.isFinite(rate) && Number.isFinite(zero) && Number.isFinite(playback);
const [time, counter, failed] = ["film-time", "film-frame", "film-failed"].map((id) => document.getElementById(id));
const Hair = 1e-4;

const lastFrame = () => (Number.isFinite(film.duration) ? Math.max(0, Math.ceil(film.duration * playback - Hair) - 1) : Infinity);
const frameNow = () => Math.min(lastFrame(), Math.floor(film.currentTime * playback + Hair));
const timeOf = (frame) => ((frame - zero) / rate) * 1000;
const frameOf = (ms) => Math.round((ms / 1000) * rate + zero);

// The middle of a frame, so that rounding never shows its neighbour.
function showFrame(frame) {
  const there = Math.max(0, Math.min(lastFrame(), frame));
  film.pause();
  film.currentTime = (there + 0.5) / playback;
  tell(there);
}

function seek(ms) {
  if (!timed) return;
  const frame = frameOf(ms);
  showFrame(frame);
  const outside = frame < 0 || frame > lastFrame();
  document.getElementById("film-outside").textContent = outside ? `The film does not show ${ms.toFixed(1)} ms; this is its nearest frame.` : "";
}

function tell(frame = frameNow()) {
  if (!timed) return;
  const ms = timeOf(frame);
  const text = ms.toFixed(rate > 2000 ? 2 : 1).replace("-", "−");
  time.textContent = `${text} ms`;
  counter.textContent = `frame ${frame}`;
  for (const link of document.querySelectorAll("a[data-at-film-time]")) {
    const address = new URL(link.href);
    address.searchParams.set("t", String(Math.round(ms * 100) / 100));
    link.href = address.href;
  }
  drawCursors(ms);
  document.dispatchEvent(new CustomEvent("film-time", { detail: { ms, frame } }));
}

function drawCursors(ms) {
  for (const plot of document.querySelectorAll("figure[data-film] svg.plot-canvas[data-x-from]")) {
    const { xFrom, xTo, left, right, top, bottom } = plot.dataset;
    const x = Number(left) + ((ms - Number(xFrom)) / (Number(xTo) - Number(xFrom))) * (Number(right) - Number(left));
    const line = plot.querySelector(".film-cursor") ?? plot.appendChild(document.createElementNS("http://www.w3.org/2000/svg", "line"));
    const shown = x >= Number(left) && x <= Number(right);
    line.setAttribute("class", "film-cursor");
    line.setAttribute("visibility", shown ? "visible" : "hidden");
    for (const [name, value] of [["x1", x], ["x2", x], ["y1", top], ["y2", bottom]]) line.setAttribute(name, value);
  }
}

function follow() {
  tell();
  film.requestVideoFrameCallback?.(follow);
}

function toggle() {
  if (film.paused) film.play().catch(() => {});
  else film.pause();
}

const keys = {
  ArrowLeft: (event) => showFrame(frameNow() - (event.shiftKey ? 10 : 1)),
  ArrowRight: (event) => showFrame(frameNow() + (event.shiftKey ? 10 : 1)),
  ",": () => showFrame(frameNow() - 1),
  ".": () => showFrame(frameNow() + 1),
  Home: () => showFrame(zero),
  " ": toggle,
};

document.addEventListener("keydown", (event) => {
  const key = keys[event.key];
  const elsewhere = event.target.closest("input, select, textarea, button, summary, [contenteditable]") || (event.key === " " && event.target.closest("a"));
  if (!key || elsewhere || event.ctrlKey || event.metaKey || event.altKey || (!timed && event.key !== " ")) return;
  event.preventDefault();
  key(event);
}, { capture: true });

for (const button of player.querySelectorAll("button[data-step]")) {
  button.hidden = !timed;
  button.addEventListener("click", () => showFrame(frameNow() + Number(button.dataset.step)));
}
document.getElementById("film-contact").addEventListener("click", () => showFrame(zero));
document.getElementById("film-contact").hidden = !timed;
document.getElementById("film-zero-here")?.addEventListener("click", () => {
  const shown = Number(document.querySelector("[name=playback]").value.replace(",", ".")) || playback;
  if (shown > 0) document.querySelector("[name=zero]").value = Math.floor(film.currentTime * shown + Hair);
});

document.addEventListener("click", (event) => {
  const link = event.target.closest("a[data-t]");
  if (!link || !timed || event.ctrlKey || event.metaKey || event.shiftKey) return;
  event.preventDefault();
  seek(Number(link.dataset.t));
  const address = new URL(location.href);
  address.searchParams.set("t", link.dataset.t);
  history.replaceState(null, "", address);
  film.scrollIntoView({ block: "nearest" });
});
document.addEventListener("film-seek", (event) => {
  event.preventDefault();
  seek(event.detail.ms);
});

function begin() {
  if (timed && player.dataset.start !== "") seek(Number(player.dataset.start));
  else tell();
}

const fail = () => { failed.hidden = false; };
film.addEventListener("error", fail);
film.addEventListener("loadedmetadata", begin, { once: true });
for (const change of ["timeupdate", "seeked", "pause", "play"]) film.addEventListener(change, () => tell());
film.requestVideoFrameCallback?.(follow);
if (film.error) fail();
if (film.readyState >= 1) begin();
