"use strict";

const $ = (id) => document.getElementById(id);
const PAPER = "unit=in&stock=index-110&";
// Contents to show a kind with: not every kind can be made for thin ones.
const EXAMPLES = ["contents=tasting-cards", "contents=tea-sachets", "width=3-1/2&height=5&thickness=1", "width=3&thickness=1"];

// node builds an element with text.
function node(tag, attributes, ...children) {
  const element = Object.assign(document.createElement(tag), attributes);
  element.append(...children);
  return element;
}

// listed shows what was put aside or round, each with a button that takes it off
// again; said is how an item is told, changed what follows.
function listed(list, items, said, changed) {
  list.hidden = items.length === 0;
  list.replaceChildren(...items.map((item, i) => {
    const button = node("button", { type: "button" }, "Take off");
    button.addEventListener("click", () => {
      items.splice(i, 1);
      changed();
    });
    button.setAttribute("aria-label", "Take off " + said(item));
    return node("li", {}, said(item) + " ", button);
  }));
}

// begin gives the names of the address to the element, before it is defined.
function begin(search) {
  const solver = $("solver");
  for (const name of solver.getAttributeNames()) {
    if (!["id", "level", "aria-busy"].includes(name)) solver.removeAttribute(name);
  }
  const given = new URLSearchParams(search);
  if (!given.has("kind")) given.set("kind", "slotted-band");
  for (const [name, value] of given) {
    if (/^[a-z][a-z0-9_]*$/.test(name)) solver.setAttribute(name, value);
  }
  mark();
}

// mark shows which kind lies on the bench.
function mark() {
  for (const link of $("shelf").querySelectorAll("a")) {
    if (link.dataset.kind === $("solver").getAttribute("kind")) link.setAttribute("aria-current", "true");
    else link.removeAttribute("aria-current");
  }
}

// stock fills the shelf with every kind there is.
async function stock() {
  const { kinds } = await (await fetch("/v1/kinds")).json();
  $("shelf").append(...kinds.map((kind) => node("li", {}, shelved(kind))));
  $("outer").append(...kinds.map((kind) => node("option", { value: kind.name, selected: kind.name === "sleeve" }, kind.title)));
  mark();
  await customElements.whenDefined("creasefit-fold");
  const links = [...$("shelf").querySelectorAll("a")];
  await Promise.all([0, 1, 2].map(async (first) => {
    for (let i = first; i < links.length; i += 3) await picture(links[i]);
  }));
  $("shelf").toggleAttribute("data-painted", true);
}

function shelved(kind) {
  const canvas = node("canvas", { width: 240, height: 150 });
  canvas.setAttribute("aria-hidden", "true");
  const link = node("a", { href: "?kind=" + kind.name, title: kind.help }, canvas, node("span", {}, kind.title));
  link.dataset.kind = kind.name;
  link.addEventListener("click", (event) => {
    if (event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    choose(kind.name);
  });
  return link;
}

// picture paints the finished kind with the first contents that it can be
// made for, or shows its drawing without WebGL. Without any, the title says it
// all the same.
async function picture(link) {
  const canvas = link.querySelector("canvas");
  for (const example of EXAMPLES) {
    const address = "/v1/drawing/" + link.dataset.kind + "?" + PAPER + example;
    try {
      if (!(await customElements.get("creasefit-fold").picture(address, 1, 28, 26, canvas))) {
        canvas.replaceWith(node("img", { src: address + "&format=svg", alt: "" }));
      }
      link.dataset.example = example;
      return;
    } catch {
      // the next one, then
    }
  }
}

// choose puts another kind on the bench and keeps what both know; contents
// that were an example only give way to one that suits the kind.
function choose(kind) {
  const values = $("solver").values;
  const { example } = document.querySelector(`#shelf a[data-kind="${kind}"]`).dataset;
  if (example && EXAMPLES.includes("contents=" + values.contents)) {
    delete values.contents;
    Object.assign(values, Object.fromEntries(new URLSearchParams(example)));
  }
  const search = "?" + new URLSearchParams({ ...values, kind });
  history.pushState(null, "", search);
  begin(search);
}

// solved follows an answer: address, model, other programs.
function solved({ detail }) {
  const { solution, values, link } = detail;
  history.replaceState(null, "", new URL(link).search);
  const query = new URLSearchParams(values).toString();
  const model = $("model");
  model.setAttribute("label", document.querySelector(`#shelf a[data-kind="${solution.kind}"]`)?.textContent ?? solution.kind);
  const { width, height, thickness } = solution.outside;
  model.setAttribute("measures", [width, height, thickness].map((length) => length.reading).join(" × "));
  model.setAttribute("src", "/v1/drawing/" + solution.kind + "?" + query);
  elsewhere(solution, values, link, query);
}

// readings lists what a cell can show.
function readings(solution) {
  return solution.pieces.flatMap((piece, p) => [
    [`/pieces/${p}/blank/width`, `${piece.name}: width of the blank`], [`/pieces/${p}/blank/height`, `${piece.name}: height of the blank`],
    ...piece.scores.map((score, s) => [`/pieces/${p}/scores/${s}/at`, `${piece.name}: ${score.name}`]),
    ...piece.cuts.map((cut, c) => [`/pieces/${p}/cuts/${c}/depth`, `${piece.name}: ${cut.name}`]),
  ]);
}

// elsewhere writes the same request for other programs.
function elsewhere(solution, values, link, query) {
  const address = location.origin + "/v1/solve/" + solution.kind + "?" + query;
  const pick = $("pick");
  const chosen = pick.value;
  pick.replaceChildren(...readings(solution).map(([value, text]) => node("option", { value }, text)));
  if ([...pick.options].some((option) => option.value === chosen)) pick.value = chosen;
  const cell = () => ($("cell").textContent = `=WEBSERVICE("${address}&pick=${pick.value}/${solution.unit}")`);
  pick.onchange = cell;
  cell();
  $("curl").textContent = `curl '${address}&format=text'`;
  $("html").textContent = snippet({ kind: solution.kind, ...values }, link);
}

// snippet is the two lines that put the element on another page.
function snippet(attributes, link) {
  const { solver, integrity } = document.querySelector(".elsewhere").dataset;
  const escape = (text) => text.replace(/[&"<>]/g, (c) => ({ "&": "&amp;", '"': "&quot;", "<": "&lt;", ">": "&gt;" })[c]);
  const given = Object.entries(attributes).map(([name, value]) => ` ${name}="${escape(value)}"`).join("");
  return `<script src="${location.origin}${solver}" integrity="${integrity}" crossorigin="anonymous" defer></script>\n` +
    `<creasefit-solver${given}><a href="${escape(link)}">Work out the sizes</a></creasefit-solver>`;
}

// copy puts a snippet on the clipboard, or selects it where that is refused.
async function copy(button) {
  const code = $(button.dataset.copy);
  try {
    await navigator.clipboard.writeText(code.textContent);
    $("copied").textContent = "Copied.";
  } catch {
    getSelection().selectAllChildren(code);
    $("copied").textContent = "Selected: copy it with your keyboard.";
  }
}

begin(location.search);
addEventListener("popstate", () => begin(location.search));
$("solver").addEventListener("creasefit-solution", solved);
for (const button of document.querySelectorAll("[data-copy]")) button.addEventListener("click", () => copy(button));
stock().catch(() => $("shelf").replaceChildren(node("li", {}, "The kinds cannot be fetched just now. Load the page again.")));
