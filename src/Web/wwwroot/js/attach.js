// Sends the chosen files one after another, each as it is, with progress. What the server says is set as text, never as markup.
const form = document.getElementById("attach");
const get = (id) => document.getElementById(`attach-${id}`);
const [files, send, stop, progress, bar, text, result] = ["files", "send", "stop", "progress", "bar", "text", "result"].map(get);
let request = null;
let stopped = false;

function address(file) {
  const query = new URLSearchParams({ name: file.name });
  for (const name of ["caption", "camera", "moment", "kind"]) {
    const value = form.elements[name].value.trim();
    if (value) query.set(name, value);
  }
  return `${form.dataset.address}?${query}`;
}

function sendOne(file, place) {
  return new Promise((done) => {
    request = new XMLHttpRequest();
    request.open("POST", address(file));
    request.setRequestHeader("Content-Type", "application/octet-stream");
    request.setRequestHeader("Accept", "application/json");
    request.setRequestHeader(form.dataset.header || "RequestVerificationToken", form.dataset.token);
    request.upload.addEventListener("progress", (event) => {
      bar.value = Math.round((100 * event.loaded) / event.total);
      text.textContent = `${place}: ${file.name}, ${bar.value} %`;
    });
    request.addEventListener("load", () => done(said(file, request)));
    request.addEventListener("error", () => done([false, `${file.name}: the connection broke; nothing of it was kept.`]));
    request.addEventListener("abort", () => done([false, `${file.name}: stopped; nothing of it was kept.`]));
    request.send(file);
  });
}

function said(file, { status, responseText }) {
  let answer = {};
  try { answer = JSON.parse(responseText); } catch { /* an answer without a body */ }
  if (status === 201) return [true, `${file.name} is attached.`];
  if (status === 200) return [true, `${file.name} was here already.`];
  if (status === 401) return [false, "You are signed out. Sign in again, then attach."];
  return [false, `${file.name}: ${answer.detail ?? `refused (${status})`}`];
}

function tell(line) {
  const paragraph = document.createElement("p");
  paragraph.textContent = line;
  result.append(paragraph);
}

async function all() {
  stopped = false;
  result.replaceChildren();
  for (const part of [progress, stop]) part.hidden = false;
  send.disabled = true;
  let good = true;
  const chosen = [...files.files];
  for (const [index, file] of chosen.entries()) {
    if (stopped) break;
    const tooLarge = file.size > Number(form.dataset.most);
    const [kept, line] = tooLarge ? [false, `${file.name} has ${file.size} bytes; at most ${form.dataset.most} are taken.`] : await sendOne(file, `${index + 1} of ${chosen.length}`);
    good &&= kept;
    tell(line);
  }
  for (const part of [progress, stop]) part.hidden = true;
  send.disabled = false;
  if (good) location.reload();
}

files.addEventListener("change", () => { send.disabled = files.files.length === 0; });
send.disabled = files.files.length === 0;
form.addEventListener("submit", (event) => { event.preventDefault(); all(); });
stop.addEventListener("click", () => { stopped = true; request?.abort(); });
