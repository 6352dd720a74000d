// Sends a CSV of historic results to the API: first as a dry run, then for good, with progress and a way to stop. Server text is only ever set as text.
import { element, problems, renderRefusal } from "./upload-result.js";

const form = document.getElementById("bring");
const [file, tryIt, take, stop, progress, bar, barText, answer, reason] =
  ["file", "try", "take", "stop", "progress", "bar", "bar-text", "answer", "reason"].map((name) => document.getElementById(`results-${name}`));
let request = null;

function address(dryRun) {
  const query = new URLSearchParams();
  if (dryRun) query.set("dryRun", "true");
  if (form.dataset.replaces) {
    query.set("replaces", form.dataset.replaces);
    query.set("reason", reason.value.trim());
  }
  return `${form.dataset.address}?${query}`;
}

function busy(on) {
  tryIt.disabled = on || !file.files.length;
  stop.hidden = !on;
  progress.hidden = !on;
  if (on) take.hidden = true;
  form.setAttribute("aria-busy", String(on));
}

function send(dryRun) {
  request = new XMLHttpRequest();
  request.open("POST", address(dryRun));
  request.setRequestHeader("Content-Type", "text/csv");
  request.setRequestHeader("Accept", "application/json");
  if (form.dataset.token) request.setRequestHeader(form.dataset.header || "RequestVerificationToken", form.dataset.token);
  request.upload.addEventListener("progress", showSent);
  request.addEventListener("load", () => finish(request.status, parse(request.responseText), dryRun));
  request.addEventListener("error", () => finish(0, { title: "The connection broke", detail: "Try again; what was taken is listed under Historic results." }, dryRun));
  request.addEventListener("abort", () => finish(0, { title: "Stopped", detail: "Stopped before the service answered; what was taken is listed under Historic results." }, dryRun));
  answer.replaceChildren();
  bar.value = 0;
  busy(true);
  request.send(file.files[0]);
}

function showSent(event) {
  const percent = Math.round((100 * event.loaded) / event.total);
  if (percent < 100) {
    bar.value = percent;
    barText.textContent = `Sending: ${percent} %`;
  } else {
    bar.removeAttribute("value");
    barText.textContent = "Reading every row";
  }
}

function parse(text) {
  try {
    return JSON.parse(text);
  } catch {
    return {};
  }
}

function finish(status, result, dryRun) {
  busy(false);
  if (status >= 200 && status < 300) {
    render(result, dryRun);
    take.hidden = !dryRun || (result.created === 0 && !form.dataset.replaces);
  } else if (status === 401) {
    renderRefusal(answer, { title: "You are signed out", detail: "Sign in again, then bring the file." });
  } else {
    renderRefusal(answer, result.title ? result : { title: `Refused (${status})`, detail: "The service gave no reason." });
  }
  answer.focus();
}

function render(result, dryRun) {
  const heading = dryRun ? "Nothing kept yet: this is what would be created" : result.batch ? `Taken in as batch ${result.batch}` : "Everything was here already";
  const facts = element("dl", null, { class: "facts" });
  const fact = (name, value) => facts.append(element("dt", name), element("dd", value));
  fact("Tests", `${result.created} new, ${result.unchanged} unchanged, from ${result.rows} rows`);
  fact("Values", String(result.values));
  for (const [name, list] of [["Classes", result.createdClasses], ["Procedures", result.createdProcedures], ["Vehicles", result.createdVehicles]]) {
    if (list.length) fact(`${name} made known`, list.length > 12 ? `${list.length}: ${list.slice(0, 12).join(", ")}, …` : list.join(", "));
  }
  const parts = [element("h2", heading), facts];
  if (result.batch) {
    const line = element("p");
    line.append(element("a", `Open batch ${result.batch}`, { class: "button", href: `/results/batches/${result.batch}` }));
    parts.push(line);
  }
  answer.replaceChildren(...parts, ...problems(result.problems, "No problem was found."));
}

function choose() {
  answer.replaceChildren();
  take.hidden = true;
  const chosen = file.files[0];
  const most = Number(form.dataset.most);
  tryIt.disabled = !chosen || chosen.size > most;
  if (chosen && chosen.size > most) renderRefusal(answer, { title: "Too large", detail: `${chosen.name} has ${chosen.size} bytes, the limit is ${most}.` });
}

form.addEventListener("submit", (event) => {
  event.preventDefault();
  if (file.files.length && form.reportValidity()) send(true);
});
take.addEventListener("click", () => { if (form.reportValidity()) send(false); });
stop.addEventListener("click", () => request?.abort());
file.addEventListener("change", choose);
choose();
