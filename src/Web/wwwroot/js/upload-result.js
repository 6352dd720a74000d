// What an upload came to, as elements. Text from the server is only ever set as textContent.
const words = { high: "high", moderate: "moderate", low: "low", veryLow: "very low", "very-low": "very low" };

export function element(tag, text, attributes = {}) {
  const made = document.createElement(tag);
  if (text !== undefined && text !== null) made.textContent = text;
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  return made;
}

export function renderResult(into, answer, dry) {
  const heading = dry ? `${answer.test}: nothing kept, this is what would be` : answer.created ? `${answer.test} is kept` : `${answer.test} was already here`;
  const level = answer.overall ? `${words[answer.overall] ?? answer.overall} protection` : "not rated";
  const verdict = answer.valid ? `Valid run, ${level}.` : `Not valid: its conduct is outside the procedure. By its figures: ${level}.`;
  const parts = [element("h2", heading), element("p", verdict, { class: "lead" })];
  if (!dry) {
    const link = element("a", `Open ${answer.test}`, { class: "button", href: `/tests/${encodeURIComponent(answer.test)}` });
    const line = element("p");
    line.append(link);
    parts.push(line);
  }
  parts.push(...problems(answer.problems, "No problem was found."));
  into.replaceChildren(...parts);
}

export function renderRefusal(into, answer) {
  into.replaceChildren(element("h2", answer.title), element("p", answer.detail ?? ""), ...problems(answer.problems, null));
}

export function problems(list, none) {
  if (!list || list.length === 0) return none ? [element("p", none, { class: "quiet" })] : [];
  const table = element("table", null, { class: "data" });
  const head = table.createTHead().insertRow();
  for (const title of ["Weight", "What", "Where", "Value", "Limit"]) head.append(element("th", title, { scope: "col" }));
  const body = table.createTBody();
  for (const problem of list) {
    const row = body.insertRow();
    const where = [problem.file, problem.line ? `line ${problem.line}` : null, problem.column, problem.channel].filter(Boolean).join(", ");
    const cells = [["Weight", problem.severity], ["What", problem.message], ["Where", where], ["Value", problem.value], ["Limit", problem.limit]];
    for (const [label, text] of cells) row.append(element("td", text ?? "", { "data-label": label, ...(label === "Where" ? { class: "mono" } : {}) }));
  }
  const count = list.length === 1 ? "1 problem" : `${list.length} problems`;
  return [element("h3", count), table];
}
