// Sends one zip to the API with progress, and says what it came to. Everything the server says is set as text, never as markup.
import { renderResult, renderRefusal } from "./upload-result.js";

const form = document.getElementById("upload");
const get = (id) => document.getElementById(id);
const [file, drop, send, stop, bar, barText, progress, result] =
  ["package", "drop", "send", "stop", "bar", "bar-text", "progress", "result"].map(get);
let chosen = null;
let request = null;

function choose(next) {
  chosen = next;
  get("replace").hidden = true;
  result.replaceChildren();
  const most = Number(form.dataset.most);
  send.disabled = !chosen || chosen.size > most;
  if (chosen && chosen.size > most) {
    renderRefusal(result, { title: "Too large", detail: `${chosen.name} has ${mebibytes(chosen.size)}, the limit is ${mebibytes(most)}.` });
  }
}

const mebibytes = (bytes) => `${(bytes / 1048576).toFixed(1)} MiB`;

function busy(on) {
  send.disabled = on || !chosen;
  stop.hidden = !on;
  progress.hidden = !on;
  form.setAttribute("aria-busy", String(on));
}

function showSent(event) {
  const percent = Math.round((100 * event.loaded) / event.total);
  if (percent < 100) {
    bar.value = percent;
    barText.textContent = `Sending ${chosen.name}: ${percent} %`;
  } else {
    bar.removeAttribute("value");
    barText.textContent = `Reading and reducing ${chosen.name}`;
  }
}

function address(replacing) {
  const query = new URLSearchParams();
  if (get("dry").checked) query.set("dryRun", "true");
  if (replacing) {
    query.set("replaces", replacing.sha256);
    query.set("reason", replacing.reason);
  }
  return query.size ? `${form.dataset.address}?${query}` : form.dataset.address;
}

function upload(replacing) {
  request = new XMLHttpRequest();
  request.open("POST", address(replacing));
  request.setRequestHeader("Content-Type", "application/zip");
  request.setRequestHeader("Accept", "application/json");
  if (form.dataset.token) request.setRequestHeader(form.dataset.header || "RequestVerificationToken", form.dataset.token);
  request.upload.addEventListener("progress", showSent);
  request.addEventListener("load", () => finish(request.status, parse(request.responseText)));
  request.addEventListener("error", () => finish(0, { title: "The connection broke", detail: "Nothing was kept. Try again." }));
  request.addEventListener("abort", () => finish(0, { title: "Stopped", detail: "Nothing was kept." }));
  result.replaceChildren();
  get("replace").hidden = true;
  bar.value = 0;
  busy(true);
  request.send(chosen);
}

function parse(text) {
  try {
    return JSON.parse(text);
  } catch {
    return {};
  }
}

function finish(status, answer) {
  busy(false);
  if (status >= 200 && status < 300) {
    renderResult(result, answer, get("dry").checked);
  } else if (status === 409 && answer.currentSha256) {
    offerReplacement(answer);
  } else if (status === 401) {
    renderRefusal(result, { title: "You are signed out", detail: "Sign in again, then upload." });
  } else {
    renderRefusal(result, answer.title ? answer : { title: `Refused (${status})`, detail: "The service gave no reason." });
  }
  result.focus();
}

function offerReplacement(answer) {
  renderRefusal(result, answer);
  get("replace-why").textContent = answer.sameContent
    ? "The stored package holds the same content in another zip. Replacing it changes no figure."
    : "Another package of this run is stored. Replacing it makes a new reduction and rating; the earlier ones stay in the history.";
  get("replace").hidden = false;
  get("replace").dataset.sha256 = answer.currentSha256;
}

form.addEventListener("submit", (event) => {
  event.preventDefault();
  if (chosen) upload();
});
file.addEventListener("change", () => choose(file.files[0] ?? null));
stop.addEventListener("click", () => request?.abort());
get("replace-now").addEventListener("click", () => {
  const reason = get("reason").value.trim();
  if (reason) upload({ sha256: get("replace").dataset.sha256, reason });
  else get("reason").focus();
});
for (const name of ["dragenter", "dragover"]) {
  drop.addEventListener(name, (event) => { event.preventDefault(); drop.classList.add("over"); });
}
for (const name of ["dragleave", "drop"]) {
  drop.addEventListener(name, (event) => { event.preventDefault(); drop.classList.remove("over"); });
}
drop.addEventListener("drop", (event) => {
  if (event.dataTransfer.files.length) {
    file.files = event.dataTransfer.files;
    choose(event.dataTransfer.files[0]);
  }
});
if (file.files.length) choose(file.files[0]);
