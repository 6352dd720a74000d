// The channel viewer: draws the view that the address names, zooms and pans (asking again for the visible window), reads two cursors, exports what is shown.
// All state stands in the address; without this script the page shows the same view as drawings.
import { init } from "/lib/charts.js";
import { fetchTraces, fetchValues, query } from "./data.js";
import { colours, layout, options, panels } from "./options.js";

const root = document.getElementById("viewer");
const [stage, status, table, asked] = ["viewer-chart", "viewer-status", "viewer-values", "viewer-window"].map((id) => document.getElementById(id));
const { traces, names, units } = JSON.parse(root.dataset.view);
const Wait = 120;
const Closest = 0.05;
const Widest = 60_000;
const view = {
  from: Number(root.dataset.from), to: Number(root.dataset.to), a: optional(root.dataset.a), b: optional(root.dataset.b), each: root.dataset.each === "true",
  unitOf: (unit) => units[unit] ?? { unit, factor: 1 },
};
let set = null;
let active = "a";
let chart = null;
let drawing = null;
let pending = null;
let reading = null;

function optional(text) {
  return text === undefined || text === "" ? null : Number(text);
}

const round = (ms) => Math.round(ms * 1e6) / 1e6;

function address() {
  const url = new URL(location.href);
  url.searchParams.set("from", String(round(view.from)));
  url.searchParams.set("to", String(round(view.to)));
  for (const name of ["a", "b"]) {
    if (view[name] === null) url.searchParams.delete(name);
    else url.searchParams.set(name, String(round(view[name])));
  }
  return url;
}

// Links and forms that lead to another view carry the window and the cursors on.
function remember() {
  const url = address();
  history.replaceState(null, "", url);
  for (const name of ["from", "to", "a", "b"]) {
    const value = url.searchParams.get(name) ?? "";
    for (const field of document.querySelectorAll(`form [name="${name}"]`)) field.value = value;
  }
  for (const link of document.querySelectorAll("a[data-view-link]")) {
    const target = new URL(link.href);
    for (const name of ["from", "to", "a", "b"]) {
      if (url.searchParams.has(name)) target.searchParams.set(name, url.searchParams.get(name));
      else target.searchParams.delete(name);
    }
    link.href = target.href;
  }
  for (const field of document.querySelectorAll('form [name="Return"]')) field.value = url.pathname + url.search;
  document.getElementById("viewer-csv").href = `/api/v1/traces?${query(traces, round(view.from), round(view.to), { format: "csv" })}`;
}

function plotWidth() {
  const grid = chart?.getModel?.().getComponent("grid", 0)?.coordinateSystem?.getRect();
  return Math.max(100, Math.round(grid?.width ?? stage.clientWidth - 80));
}

async function refine() {
  drawing?.abort();
  drawing = new AbortController();
  root.setAttribute("aria-busy", "true");
  try {
    const next = await fetchTraces(query(traces, round(view.from), round(view.to), { columns: Math.min(4000, plotWidth()), marks: set === null }), drawing.signal);
    if (set) next.traces.forEach((trace, i) => Object.assign(trace, { marks: set.traces[i].marks, limits: set.traces[i].limits }));
    set = next;
    draw();
    const most = Math.max(...set.traces.map((trace) => trace.count));
    status.textContent = `${round(view.from)} to ${round(view.to)} ms, ${set.traces.some((trace) => trace.reduced) ? "least and greatest of every pixel column" : "every sample"}, at most ${most} values a trace.`;
    root.setAttribute("aria-busy", "false");
    root.dataset.drawn = `${round(view.from)}:${round(view.to)}`;
  } catch (error) {
    if (error.name !== "AbortError") status.textContent = error.message;
  }
}

function draw() {
  if (!set) return;
  const width = stage.clientWidth;
  const count = panels(set.traces, view.each).length;
  const { total } = layout(count, width, view.each);
  stage.style.height = `${total}px`;
  chart ??= init(stage, null, { renderer: "canvas" });
  chart.resize({ width, height: total });
  chart.setOption(options(set, view, width, names, colours(root)), { notMerge: true });
}

function show(from, to) {
  const span = Math.min(Widest, Math.max(Closest, to - from));
  const middle = (from + to) / 2;
  [view.from, view.to] = [middle - span / 2, middle + span / 2];
  remember();
  draw();
  clearTimeout(pending);
  pending = setTimeout(refine, Wait);
}

function zoom(factor, about = (view.from + view.to) / 2) {
  show(about - (about - view.from) * factor, about + (view.to - about) * factor);
}

function pan(share) {
  const by = (view.to - view.from) * share;
  show(view.from + by, view.to + by);
}

const whole = () => show(Number(root.dataset.wholeFrom), Number(root.dataset.wholeTo));

function place(name, ms) {
  view[name] = ms;
  active = name;
  remember();
  draw();
  readCursors();
  if (ms !== null && name === "a") document.dispatchEvent(new CustomEvent("film-seek", { detail: { ms }, cancelable: true }));
}

async function readCursors() {
  reading?.abort();
  reading = new AbortController();
  const instants = [view.a, view.b].filter((ms) => ms !== null);
  try {
    const values = instants.length === 0 ? [] : await fetchValues(traces, instants, reading.signal);
    traces.forEach((_, i) => fill(i, values[i]));
    table.dataset.read = `${view.a ?? ""}:${view.b ?? ""}`;
  } catch (error) {
    if (error.name !== "AbortError") status.textContent = error.message;
  }
}

function fill(i, found) {
  const cells = table.tBodies[0].rows[i].querySelectorAll("[data-cursor]");
  const shown = view.unitOf(found?.unit ?? "");
  const at = { a: view.a === null ? -1 : 0, b: view.b === null ? -1 : view.a === null ? 0 : 1 };
  const value = (name) => (at[name] < 0 || !found ? null : found.values[at[name]] ?? null);
  const pair = { a: value("a"), b: value("b"), delta: value("a") === null || value("b") === null ? null : value("b") - value("a") };
  for (const cell of cells) {
    const raw = pair[cell.dataset.cursor];
    cell.textContent = raw === null ? "–" : figure6(raw * shown.factor);
    cell.dataset.value = raw === null ? "" : String(raw);
  }
}

const figure6 = (value) => Number(value.toPrecision(6)).toString().replace("-", "−");

function step(name, samples) {
  const interval = Math.min(...set.traces.filter((trace) => trace.interval > 0).map((trace) => trace.interval)) * 1000;
  if (Number.isFinite(interval)) place(name, round((view[name] ?? Math.max(view.from, 0)) + samples * interval));
}

// Where a pointer stands, in ms; null beside the panels.
function timeAt(event) {
  const box = stage.getBoundingClientRect();
  const at = [event.clientX - box.left, event.clientY - box.top];
  for (let grid = 0; set && grid < panels(set.traces, view.each).length; grid++) {
    if (chart.containPixel({ gridIndex: grid }, at)) return chart.convertFromPixel({ gridIndex: grid }, at)[0];
  }
  return null;
}

stage.addEventListener("wheel", (event) => {
  const ms = timeAt(event);
  if (ms === null) return;
  event.preventDefault();
  zoom(event.deltaY > 0 ? 1.25 : 0.8, ms);
}, { passive: false });

let held = null;
stage.addEventListener("pointerdown", (event) => {
  const ms = timeAt(event);
  if (ms === null || event.button !== 0) return;
  held = { x: event.clientX, from: view.from, to: view.to, ms, moved: false };
  stage.setPointerCapture(event.pointerId);
});
stage.addEventListener("pointermove", (event) => {
  if (!held) return;
  held.moved ||= Math.abs(event.clientX - held.x) > 4;
  const by = ((event.clientX - held.x) / plotWidth()) * (held.to - held.from);
  if (held.moved) show(held.from - by, held.to - by);
});
stage.addEventListener("pointerup", (event) => {
  if (held && !held.moved) place(event.shiftKey ? "b" : "a", nearest(held.ms));
  held = null;
});
stage.addEventListener("pointercancel", () => { held = null; });

// A click means a sample, not a place between two.
function nearest(ms) {
  const trace = set.traces.find((one) => one.interval > 0);
  const interval = trace ? trace.interval * 1000 : 0.1;
  return round(Math.round(ms / interval) * interval);
}

const keys = {
  ArrowLeft: (event) => (event.shiftKey ? step(active, -1) : pan(-0.1)),
  ArrowRight: (event) => (event.shiftKey ? step(active, 1) : pan(0.1)),
  "+": () => zoom(0.5), "=": () => zoom(0.5), "-": () => zoom(2), 0: whole, Home: whole,
  a: () => place("a", view.a ?? nearest((view.from + view.to) / 2)), b: () => place("b", view.b ?? nearest((view.from + view.to) / 2)),
  Escape: () => { place("a", null); place("b", null); },
};
// On the window, before anything beside the chart sees the key.
window.addEventListener("keydown", (event) => {
  const act = event.target === stage && !event.ctrlKey && !event.metaKey && !event.altKey && keys[event.key];
  if (!act) return;
  event.preventDefault();
  event.stopPropagation();
  act(event);
}, { capture: true });

const acts = {
  in: () => zoom(0.5), out: () => zoom(2), left: () => pan(-0.25), right: () => pan(0.25), whole,
  copy: async () => {
    await navigator.clipboard.writeText(address().href).then(
      () => { status.textContent = "The link is copied: it restores exactly this view."; },
      () => { status.textContent = `Copy it from here: ${address().href}`; });
  },
  png: () => save(chart.getDataURL({ type: "png", pixelRatio: 2 }), "view.png"),
  svg: () => {
    const drawn = init(null, null, { renderer: "svg", ssr: true, width: stage.clientWidth, height: stage.clientHeight });
    drawn.setOption(options(set, view, stage.clientWidth, names, colours(root)));
    const url = URL.createObjectURL(new Blob([drawn.renderToSVGString()], { type: "image/svg+xml" }));
    save(url, "view.svg");
    drawn.dispose();
    setTimeout(() => URL.revokeObjectURL(url), 10_000);
  },
};
root.addEventListener("click", (event) => {
  const button = event.target.closest("button[data-act]");
  if (button) acts[button.dataset.act]();
});

function save(href, name) {
  const link = Object.assign(document.createElement("a"), { href, download: name });
  document.body.append(link);
  link.click();
  link.remove();
}

asked.addEventListener("submit", (event) => {
  const field = (name) => (asked.elements[name].value === "" ? null : Number(asked.elements[name].value));
  const [from, to] = [field("from"), field("to")];
  if (from === null || to === null || !(from < to) || Number.isNaN(field("a") ?? 0) || Number.isNaN(field("b") ?? 0)) return;
  event.preventDefault();
  [view.a, view.b] = [field("a"), field("b")];
  show(from, to);
  readCursors();
});

// The film moves the first cursor, unless the cursor moved the film.
document.addEventListener("film-time", (event) => {
  const film = document.getElementById("film");
  if (film && !film.paused) {
    view.a = round(event.detail.ms);
    draw();
  }
});

new ResizeObserver(() => { if (set && chart && chart.getWidth() !== stage.clientWidth) draw(); }).observe(root);
matchMedia("(prefers-color-scheme: dark)").addEventListener("change", draw);
root.classList.add("live");
remember();
await refine();
if (view.a !== null || view.b !== null) await readCursors();
