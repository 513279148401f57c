"use strict";
// The page on which somebody describes an enclosure. The design is the only state; every
// change is one function from a design to the next, so that undoing is going back.

const byId = (id) => document.getElementById(id);
const make = (tag, members = {}, ...children) => {
  const e = Object.assign(document.createElement(tag), members);
  e.append(...children);
  return e;
};
const LIST = "creasefit-own-designs";
const LONGEST = 8000; // bytes of an address that the service takes
const { page: WORDS, language: LANGUAGE, names: NAMES, problems: PROBLEMS } = JSON.parse(byId("words").textContent);

// called is what the page calls a panel, a piece or a size of a design that it knows.
const called = (name) => NAMES[name] ?? name;

// phrase is one of the page's texts with what stands in its places: names, texts or elements.
const phrase = (key, slots = {}) => WORDS[key].split(/\{(\w+)\}/).flatMap((part, i) => (i % 2 ? called(slots[part] ?? "") : part)).filter((part) => part !== "");
const say = (key, values) => phrase(key, values).join("");

// measured is a reading the way the language writes it.
const measured = (reading) => (LANGUAGE === "de" ? reading.replace(".", ",").replace(/in$/, "Zoll") : reading);

// said is what the service tells, in the language's own words where the page has some;
// else it is said otherwise, where that is known.
const TOLD = Object.entries(WORDS).filter(([key]) => key.startsWith("told "));
function said(told, otherwise = told) {
  let text = TOLD.reduce((before, [key, to]) => before.replace(new RegExp(key.slice(5), "u"), to), told);
  if (TOLD.length && text === told) text = otherwise;
  const known = panelsOf().map((p) => p.panel).filter((name) => NAMES[name]).sort((a, b) => b.length - a.length);
  return known.length ? text.replace(new RegExp(`\\b(?:${known.join("|")})\\b`, "gu"), called) : text;
}

let design = { design: say("my-own"), pieces: [{ piece: "piece", panels: [{ panel: "back" }] }], joins: [] };
let solution = null;
let chosen = "";
const before = [];

const panelsOf = () => design.pieces.flatMap((p) => p.panels);
const panelNamed = (name) => panelsOf().find((p) => p.panel === name);
const pieceOf = (name) => design.pieces.find((p) => p.panels.some((q) => q.panel === name));
const childAt = (name, edge) => panelsOf().find((p) => p.on === name && p.edge === edge);
const OPPOSITE = { left: "right", right: "left", bottom: "top", top: "bottom" };

// change takes the design to the next one, shows it and solves it.
function change(by) {
  before.push(JSON.stringify(design));
  notice = "";
  by(design);
  show();
  solve();
}

function undo() {
  if (!before.length) return;
  design = JSON.parse(before.pop());
  show();
  solve();
}

// names are what the form says of the thing, the paper and the sizes of the design.
function names() {
  const given = {};
  for (const [name, value] of new FormData(byId("thing"))) if (name && value.trim() !== "") given[name] = value.trim();
  return given;
}

const query = () => new URLSearchParams({ design: JSON.stringify(design), ...names() }).toString();
const order = () => JSON.stringify({ design, ...names() });
const post = (path, body) => fetch(path, { method: "POST", headers: { "Content-Type": "application/json" }, body });

let asked = 0;
let waiting = 0;
let stale = true; // the sizes are those of a design before

// solve asks for the sizes, once nothing has changed for a moment.
function solve() {
  clearTimeout(waiting);
  stale = true;
  byId("flat").classList.add("rough");
  history.replaceState(null, "", "#" + query());
  waiting = setTimeout(async () => {
    const now = ++asked;
    const sizes = await post("/v1/solve/own", order()).catch(() => null);
    const answer = await sizes?.json();
    if (now !== asked) return;
    if (!answer) return tell(say("unreachable"));
    solution = sizes.ok ? answer : null;
    stale = false;
    draw();
    if (solution) showSolution();
    else showProblem(answer);
  }, 150);
}

const wrong = (text) => make("p", { textContent: text, className: "wrong" });
let notice = ""; // that stays until something is changed

function tell(text, ...more) {
  byId("said").replaceChildren(...(notice ? [wrong(notice)] : []), ...(text ? [wrong(text)] : []), ...more);
}

// sizeNamed is what a size of a piece is called: a panel, or one side of it.
const sizeNamed = (name) => NAMES[name] ?? name.replace(/^(.+) (height|width)$/, (whole, panel, side) => (NAMES[panel] ? called(panel) + ", " + say(side) : whole));

// showSolution says what came out, and where to go on from there.
function showSolution() {
  const s = solution;
  const row = (name, size) => make("tr", {}, make("th", { scope: "row", textContent: name }), make("td", { textContent: size }));
  const rows = s.pieces.flatMap((p) => [
    row(say("blank", { piece: p.name }), measured(p.blank.width.reading) + " × " + measured(p.blank.height.reading)),
    ...p.panels.map((q) => row(sizeNamed(q.name), measured(q.size.reading))),
    ...p.cuts.filter((c) => c.kind === "slit").map((c) => row(sizeNamed(c.name), measured(c.depth.reading))),
  ]);
  const lines = [make("p", { textContent: say("sure", { n: Math.floor(s.sure.chance * 100 + 1e-9) }) + " " + say("step", { step: measured(s.step) }) })];
  if (s.warnings.length) lines.push(make("ul", {}, ...s.warnings.map((w) => make("li", { textContent: said(w.detail) }))));
  tell("", ...lines, make("table", {}, make("caption", { textContent: say("sizes") }), make("tbody", {}, ...rows)));
  const link = (key, href) => make("a", { textContent: say(key), href });
  byId("ways").replaceChildren(
    way("template", "/v1/drawing/own.pdf", { view: "template" }), way("measures", "/v1/drawing/own.pdf"), way("guide", "/v1/guide/own.html", { language: LANGUAGE }),
    link("post", s.links.mail), ...(s.links.yield ? [link("cut-plan", s.links.yield)] : []), link("share", location.href));
  const folded = byId("folded");
  const short = query().length < LONGEST - 100;
  folded.setAttribute("label", called(design.design));
  if (short) folded.removeAttribute("body");
  else folded.setAttribute("body", order());
  folded.setAttribute("src", "/v1/drawing/own" + (short ? "?" + query() : ""));
}

// way leads to a file about the design. One that is too long for an address is asked for
// by a button instead, and saved.
function way(key, path, more = {}) {
  const href = path + "?" + query() + "&" + new URLSearchParams(more);
  if (href.length <= LONGEST) return make("a", { textContent: say(key), href });
  return make("button", { type: "button", textContent: say(key), onclick: async () => {
    const answer = await post(path, JSON.stringify({ design, ...names(), ...more })).catch(() => null);
    if (answer?.ok) download(await answer.blob(), path.split("/").pop());
    else tell(say("unreachable"));
  } });
}

// download saves a file of the page's own.
function download(blob, name) {
  const href = URL.createObjectURL(blob);
  make("a", { href, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(href), 1000);
}

// showProblem asks in words for what is missing, each with the panel it is about.
function showProblem(problem) {
  const lines = (problem.errors ?? [{ detail: problem.detail }]).map((e) => {
    const at = e.name?.match(/pieces\[(\d+)\]\.panels\[(\d+)\]/);
    const panel = at && design.pieces[at[1]]?.panels[at[2]]?.panel;
    const line = make("li", { textContent: [said(e.detail, (PROBLEMS[e.code] ?? say("not-yet")).replace("{value}", e.value ?? "").replace(/[.:]$/, "")), e.hint && said(e.hint, "")].filter(Boolean).join(": ") + ". " });
    if (panel) line.append(make("button", { type: "button", textContent: say("show", { panel }), onclick: () => choose(panel, true) }));
    return line;
  });
  tell(say("not-yet"), make("ul", {}, ...lines));
  byId("ways").replaceChildren();
}

// choose marks a panel in the picture and in its sentence.
function choose(name, focus = false) {
  chosen = name;
  draw();
  for (const li of byId("panels").children) {
    li.classList.toggle("chosen", li.dataset.panel === name);
    if (li.dataset.panel === name && focus) li.querySelector("select, input")?.focus();
  }
}

// addPanel hangs a panel on an edge; its name says where it is.
function addPanel(on, edge) {
  const base = say("name-" + edge, { on });
  let name = base.slice(0, 36);
  for (let n = 2; panelNamed(name); n++) name = base.slice(0, 34) + " " + n;
  chosen = name;
  const unit = byId("thing").elements.unit.value;
  change(() => pieceOf(on).panels.push({ panel: name, on, edge, fold: "valley", reach: unit === "in" ? "1 in" : "25 mm" }));
  choose(name);
}

// removePanel takes a panel away with all that hangs on it and all that is said of it.
function removePanel(name) {
  change((d) => {
    const gone = new Set([name]);
    for (let size = 0; size !== gone.size; ) {
      size = gone.size;
      for (const p of panelsOf()) if (gone.has(p.on)) gone.add(p.panel);
    }
    for (const piece of d.pieces) piece.panels = piece.panels.filter((p) => !gone.has(p.panel));
    d.pieces = d.pieces.filter((p) => p.panels.length);
    d.joins = (d.joins ?? []).filter((j) => !mentions(j).some((n) => gone.has(n)));
    for (const p of panelsOf()) for (const key of ["reach", "across", "up"]) if (gone.has(p[key]?.like) || gone.has(p[key]?.of)) delete p[key];
    if (gone.has(d.holds)) delete d.holds;
  });
}

const plain = (text) => String(text ?? "").replace(/^(edge|fold|outside|height) of /, "");
const mentions = (j) => [j.glue, j.lies, j.meet, j.even, j.slits, j.level, j.clear, j.to, j.with, j.of].filter(Boolean).map(plain);

// renamePanel gives a panel another name wherever it is named.
function renamePanel(name, to) {
  if (!to || to === name || panelNamed(to)) return show();
  const again = (text) => (plain(text) === name ? String(text).slice(0, String(text).length - name.length) + to : text);
  change((d) => {
    for (const p of panelsOf()) {
      if (p.panel === name) p.panel = to;
      if (p.on === name) p.on = to;
      for (const key of ["reach", "across", "up"]) for (const member of ["like", "of"]) if (p[key]?.[member]) p[key][member] = again(p[key][member]);
    }
    for (const j of d.joins ?? []) for (const key of ["glue", "lies", "meet", "even", "slits", "level", "clear", "to", "with", "of"]) if (j[key]) j[key] = again(j[key]);
    if (d.holds === name) d.holds = to;
    if (chosen === name) chosen = to;
  });
}
