// A view → the options of the chart: panels by unit (or one a trace), lines with their own dash and a direct label, windows, peaks, limits, cursors.

const Dashes = ["solid", [8, 3], [3, 3], [12, 3, 3, 3], [1, 3], [14, 4]];
const Tones = ["--series-navy", "--series-teal", "--series-ochre", "--plum"];
const Line = 22;

export function colours(element) {
  const probe = element.appendChild(document.createElement("span"));
  const named = (name) => {
    probe.style.color = `var(${name})`;
    return getComputedStyle(probe).color;
  };
  const found = { ink: named("--ink"), ink2: named("--ink-2"), edge: named("--edge"), hair: named("--hair"), paper: named("--paper"), band: named("--plum-tint"), plum: named("--plum"), tones: Tones.map(named) };
  probe.remove();
  return found;
}

/** Groups of trace indices that share a panel. */
export function panels(traces, each) {
  const groups = new Map();
  traces.forEach((trace, i) => {
    if (trace.absent) return;
    const key = each ? i : trace.unit;
    groups.set(key, [...(groups.get(key) ?? []), i]);
  });
  return [...groups.values()];
}

export function layout(count, width, each) {
  const across = each ? Math.max(1, Math.min(3, Math.floor(width / 380))) : 1;
  const rows = Math.ceil(count / across);
  const height = each ? 190 : count === 1 ? 400 : 260;
  return { across, rows, height, total: Math.max(1, rows) * height };
}

export function options(set, view, width, names, colour) {
  const groups = panels(set.traces, view.each);
  const { across, height } = layout(groups.length, width, view.each);
  const right = view.each || width < 600 ? 16 : Math.min(260, width * 0.28);
  const cell = width / across;
  const text = { color: colour.ink2, fontFamily: getComputedStyle(document.body).fontFamily, fontSize: 13 };
  return {
    animation: false, backgroundColor: colour.paper, textStyle: text,
    grid: groups.map((_, g) => ({ left: (g % across) * cell + 60, width: cell - 60 - right, top: Math.floor(g / across) * height + 44, height: height - 44 - 34 })),
    xAxis: groups.map((_, g) => ({
      type: "value", gridIndex: g, min: view.from, max: view.to, splitLine: { show: false }, axisLine: { onZero: false, lineStyle: { color: colour.edge } },
      axisLabel: { ...text, hideOverlap: true, formatter: (value) => number(value), showMinLabel: true, showMaxLabel: false }, name: "ms", nameLocation: "end", nameGap: 0, nameTextStyle: { ...text, align: "right", verticalAlign: "top", padding: [9, 0, 0, 0] },
    })),
    yAxis: groups.map((group, g) => ({
      type: "value", gridIndex: g, scale: true, splitNumber: view.each ? 3 : 5, name: panelName(set, group, view, names), nameTextStyle: { ...text, align: "left", padding: [0, 0, 4, -50] }, nameGap: 14,
      axisLine: { show: false }, splitLine: { lineStyle: { color: colour.hair } }, axisLabel: { ...text, formatter: (value) => number(value) },
    })),
    series: groups.flatMap((group, g) => group.map((i, k) => series(set.traces[i], i, g, k === 0, view, right > 100, names, colour, text))),
  };
}

function panelName(set, group, view, names) {
  const unit = view.unitOf(set.traces[group[0]].unit).unit;
  return view.each ? `${names[group[0]]}${unit ? `, ${unit}` : ""}` : unit || "no unit";
}

function series(trace, index, panel, first, view, labelled, names, colour, text) {
  const tone = colour.tones[index % colour.tones.length];
  const factor = view.unitOf(trace.unit).factor;
  const few = trace.points.length < 80;
  return {
    type: "line", name: names[index], xAxisIndex: panel, yAxisIndex: panel, connectNulls: false, clip: true, silent: true,
    symbol: few ? "circle" : "none", symbolSize: 4, showSymbol: few, color: tone,
    lineStyle: { width: 1.8, type: Dashes[index % Dashes.length], color: tone },
    data: trace.points.map(([x, y]) => [x, y === null ? null : y * factor]),
    endLabel: { show: labelled, formatter: () => wrap(names[index]), color: tone === colour.tones[2] ? colour.ink : tone, fontSize: 13, lineHeight: 15, fontFamily: text.fontFamily, distance: 6 },
    labelLayout: { moveOverlap: "shiftY" },
    markArea: { silent: true, itemStyle: { color: colour.band, opacity: 0.55 }, label: { color: colour.ink2, fontSize: 12, position: "insideTop", fontFamily: text.fontFamily }, data: areas(trace) },
    markPoint: { silent: true, symbol: "circle", symbolSize: 9, itemStyle: { color: colour.paper, borderColor: colour.ink, borderWidth: 1.6 }, label: { position: "right", color: colour.ink, fontFamily: text.fontFamily }, data: peaks(trace, view, factor) },
    markLine: { silent: true, symbol: "none", animation: false, data: [...limits(trace, factor, colour, text), ...(first ? cursors(view, colour, text) : [])] },
  };
}

function areas(trace) {
  return trace.marks.filter((mark) => mark.toS > mark.fromS).map((mark, k) => [
    { xAxis: mark.fromS * 1000, name: `${mark.label} ${figure(mark.value)} ${mark.unit}`.trim(), label: { offset: [0, k * Line * 0.75] } }, { xAxis: mark.toS * 1000 },
  ]);
}

function peaks(trace, view, factor) {
  return trace.marks.filter((mark) => mark.toS === mark.fromS && mark.ordinate !== null && mark.ordinate !== undefined && mark.fromS * 1000 >= view.from && mark.fromS * 1000 <= view.to).map((mark) => {
    const shown = view.unitOf(mark.unit);
    return { coord: [mark.fromS * 1000, mark.ordinate * factor], label: { formatter: `${mark.label} ${figure(mark.value * shown.factor)} ${shown.unit}`.trim() } };
  });
}

function limits(trace, factor, colour, text) {
  return trace.limits.map((limit) => ({
    yAxis: limit.value * factor, lineStyle: { color: colour.ink, type: [2, 3], width: 1.2 },
    label: { formatter: `${limit.label}, ${figure(limit.value * factor)}`, position: "insideStartTop", color: colour.ink2, fontFamily: text.fontFamily, fontSize: 12 },
  }));
}

function cursors(view, colour, text) {
  return [["A", view.a], ["B", view.b]].filter(([, ms]) => ms !== null).map(([name, ms]) => ({
    xAxis: ms, lineStyle: { color: colour.ink, type: name === "A" ? "solid" : [6, 3], width: 1.2 },
    label: { formatter: name, position: "end", color: colour.ink, fontWeight: "bold", fontFamily: text.fontFamily, fontSize: 13 },
  }));
}

const wrap = (name) => name.replace(/(.{18,}?) /gu, "$1\n");
export const figure = (value) => number(Number(value.toPrecision(4)));
export const number = (value) => String(Number(value.toPrecision(10))).replace("-", "−");
