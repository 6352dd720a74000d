// Asks the server for the traces of a view and reads its answer: "TPT1", header length, JSON header, float32 values, little-endian.

/** Query of the traces over a window in ms. */
export function query(traces, fromMs, toMs, more = {}) {
  const parameters = new URLSearchParams();
  for (const trace of traces) parameters.append("t", trace);
  if (fromMs !== null) parameters.set("from", String(fromMs / 1000));
  if (toMs !== null) parameters.set("to", String(toMs / 1000));
  for (const [name, value] of Object.entries(more)) parameters.set(name, value);
  return parameters;
}

export async function fetchTraces(parameters, signal) {
  const answer = await fetch(`/api/v1/traces?${parameters}`, { headers: { Accept: "application/octet-stream" }, signal });
  if (!answer.ok) throw new Error((await answer.json().catch(() => null))?.detail ?? `The traces could not be fetched (${answer.status}).`);
  return read(await answer.arrayBuffer());
}

export async function fetchValues(traces, instantsMs, signal) {
  const parameters = query(traces, null, null);
  for (const ms of instantsMs) parameters.append("at", String(ms / 1000));
  const answer = await fetch(`/api/v1/traces/values?${parameters}`, { headers: { Accept: "application/json" }, signal });
  if (!answer.ok) throw new Error((await answer.json().catch(() => null))?.detail ?? `The values could not be fetched (${answer.status}).`);
  return answer.json();
}

export function read(buffer) {
  const view = new DataView(buffer);
  const length = view.getUint32(4, true);
  const header = JSON.parse(new TextDecoder().decode(new Uint8Array(buffer, 8, length)));
  const values = new Float32Array(buffer, 8 + length);
  for (const trace of header.traces) trace.points = points(trace, header, values.subarray(trace.offset, trace.offset + trace.count));
  return header;
}

// A column's two extremes stand at a quarter and three quarters of it, in their order of time.
function points(trace, header, values) {
  const width = (header.to - header.from) / header.columns;
  const time = trace.reduced ? (i) => header.from + ((i >> 1) + (i % 2 === 0 ? 0.25 : 0.75)) * width : (i) => trace.first + i * trace.interval;
  return Array.from(values, (value, i) => [time(i) * 1000, Number.isFinite(value) ? value : null]);
}
