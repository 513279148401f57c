"use strict";

const SHOWN = 6000; // characters of an answer

// attempt sends an example and shows what comes back.
async function attempt(event) {
  event.preventDefault();
  const form = event.currentTarget;
  const outcome = form.querySelector(".outcome");
  const { method, media } = form.dataset;
  const options = method === "POST" ? { method, headers: { "Content-Type": media }, body: form.elements.body.value } : {};
  try {
    const answer = await fetch(form.elements.address.value, options);
    outcome.replaceChildren(...shown(answer.status, answer.headers.get("Content-Type") ?? "", await answer.text()));
  } catch {
    outcome.textContent = "The service cannot be reached.";
  }
}

function shown(status, media, text) {
  const line = document.createElement("p");
  line.textContent = `${status}, ${media}`;
  const code = document.createElement("code");
  code.textContent = /json/.test(media) ? pretty(text) : text;
  if (code.textContent.length > SHOWN) code.textContent = code.textContent.slice(0, SHOWN) + " …";
  const pre = document.createElement("pre");
  pre.tabIndex = 0;
  pre.setAttribute("role", "region");
  pre.setAttribute("aria-label", "Answer");
  pre.append(code);
  return [line, pre];
}

// pretty indents JSON; several values in one answer stay as they are.
function pretty(text) {
  try {
    return JSON.stringify(JSON.parse(text), null, 2);
  } catch {
    return text;
  }
}

for (const form of document.querySelectorAll("form.try")) form.addEventListener("submit", attempt);
