// The sentences: one a panel, one a statement, and the buttons beside them.

const option = (value, text, selected) => make("option", { value, textContent: text, selected });
const select = (label, options, value, act) => {
  const s = make("select", { onchange: () => act(s.value) }, ...options.map(([v, text]) => option(v, text, v === value)));
  s.setAttribute("aria-label", label);
  return s;
};

const FOLDS = ["valley 90", "valley 180", "mountain 90", "mountain 180", "flat 0"].map((f) => [f, say(f)]);

// reachWords are the ways to say how far a panel goes.
function reachWords(panel) {
  const others = panelsOf().filter((p) => p.panel !== panel.panel);
  return [["free", say("free")], ["length", say("length")], ...(design.sizes ?? []).map((s) => ["size " + s.name, say("as-size", { size: s.name })]),
    ...["width", "height", "thickness"].map((a) => ["covers " + a, say("covers", { size: say(a) })]),
    ["stands thickness", say("stands")], ...others.map((p) => ["like " + p.panel, say("like", p)])];
}

// reachValue is which of them a reach is.
function reachValue(to) {
  if (to === undefined || to === "free") return "free";
  if (typeof to === "string") return (design.sizes ?? []).some((s) => s.name === to) ? "size " + to : "length";
  for (const way of ["covers", "stands", "like"]) if (to[way]) return way + " " + to[way];
  return "other";
}

// setReach says one of them of a panel.
function setReach(p, key, value) {
  const [way, ...rest] = value.split(" ");
  const what = rest.join(" ");
  const unit = byId("thing").elements.unit.value;
  change(() => {
    if (way === "free") delete p[key];
    else if (way === "length") p[key] = unit === "in" ? "1 in" : "25 mm";
    else if (way === "size") p[key] = what;
    else if (way !== "other") p[key] = { [way]: what };
  });
}

function reachField(p, key) {
  const value = reachValue(p[key]);
  const ways = reachWords(p);
  if (value === "other") ways.push(["other", say("other", { panel: p[key].of ?? "" })]);
  const parts = [select(say(key + "-label", p), ways, value, (v) => setReach(p, key, v))];
  if (value === "length") {
    const input = make("input", { value: p[key], size: 8, onchange: () => change(() => (p[key] = input.value.trim())) });
    input.setAttribute("aria-label", say("length-label", p));
    parts.push(" ", input);
  }
  return parts;
}

// panelSentence says one panel.
function panelSentence(p) {
  const name = make("input", { value: called(p.panel), size: Math.max(8, called(p.panel).length), maxLength: 40, onchange: () => name.value.trim() !== called(p.panel) && renamePanel(p.panel, name.value.trim()) });
  name.setAttribute("aria-label", say("name-label", p));
  const li = make("li", { className: p.panel === chosen ? "chosen" : "" });
  li.dataset.panel = p.panel;
  if (!p.on) li.append(...phrase("root", { panel: name, across: reachField(p, "across"), up: reachField(p, "up") }));
  else {
    const fold = (p.fold ?? "valley") + " " + (p.fold === "flat" ? "0" : p.angle ?? "90");
    const folds = select(say("fold-label", p), FOLDS, fold, (v) => change(() => {
      const [way, angle] = v.split(" ");
      p.fold = way;
      if (angle === "180") p.angle = "180";
      else delete p.angle;
    }));
    li.append(...phrase("hung", { panel: name, edge: say(p.edge), on: p.on, fold: folds, reach: reachField(p, "reach") }), " ", ...landing(p));
  }
  if (panelsOf().length > 1) li.append(" ", make("button", { type: "button", textContent: say("take-away"), title: say("take-away-help"), onclick: () => removePanel(p.panel) }));
  return li;
}

const LANDINGS = ["glue inside", "glue outside", "lies inside", "lies outside"];

// landing says what a panel comes to lie on, and offers its like on the other side.
function landing(p) {
  const has = (design.joins ?? []).find((j) => (j.glue ?? j.lies) === p.panel);
  const value = has ? `${has.glue ? "glue" : "lies"} ${has.face ?? "inside"} ${has.to}` : "";
  const ways = [["", say("nothing")], ...panelsOf().filter((q) => q.panel !== p.panel && q.panel !== p.on).flatMap((q) => LANDINGS.map((v) => [v + " " + q.panel, say(v, q)]))];
  const lands = select(say("landing-label", p), ways, value, (v) => change((d) => {
    d.joins = (d.joins ?? []).filter((j) => j !== has);
    const [way, face, ...to] = v.split(" ");
    if (v) d.joins.push({ [way]: p.panel, to: to.join(" "), face });
  }));
  const parts = [...phrase("lands", { landing: lands }), " "];
  const other = OPPOSITE[p.edge];
  if (!childAt(p.on, other) && panelNamed(p.on).edge !== p.edge) parts.push(make("button", { type: "button", textContent: say("twin"), onclick: () => twin(p, other, has) }));
  return parts;
}

// twin hangs the like of a panel on the other side of its parent.
function twin(p, edge, landed) {
  const name = p.panel.includes(p.edge) ? p.panel.replace(p.edge, edge) : edge + " " + p.panel;
  if (panelNamed(name)) return;
  change((d) => {
    pieceOf(p.panel).panels.push({ ...structuredClone(p), panel: name, edge });
    if (landed) d.joins.push({ ...landed, [landed.glue ? "glue" : "lies"]: name });
  });
}

// lineWords says which line of a panel is meant.
const lineWords = (text) => text.replace(/^(edge of|fold of|outside of) (.*)$/, (_, of, panel) => say(of, { panel }));

// joinSentence says one statement.
function joinSentence(j, i) {
  const what = ["glue", "lies", "meet", "even", "level", "slits", "clear"].find((w) => j[w]);
  const by = j.short ?? j.past;
  const values = { a: lineWords(j[what]), b: lineWords(j.with ?? j.of ?? j.to), more: by ? say(j.short ? "short" : "past", { by }) : "" };
  if (what === "glue" || what === "lies") values.landing = say(`${what} ${j.face ?? "inside"}`, { panel: j.to });
  const text = say("says-" + (what === "lies" ? "glue" : what), values);
  return make("li", {}, text + " ", make("button", { type: "button", textContent: say("leave-out"), onclick: () => change((d) => d.joins.splice(i, 1)) }));
}

// options are what a request may give of the design.
const options = () => [...(design.sizes ?? []), ...(design.choices ?? [])];

// optionFields are the named sizes and the choices of the design.
function optionFields() {
  const kept = names();
  return options().map((o) => {
    const field = o.of ? make("select", { name: o.name }, ...o.of.map((word) => option(word, word.replaceAll("_", " "), word === kept[o.name])))
      : make("input", { name: o.name, value: kept[o.name] ?? "", placeholder: byId("thing").elements.unit.value === "in" ? o.in : o.mm, size: 8 });
    return make("p", {}, make("label", { textContent: [...new Set([called(o.name), NAMES[o.help] ?? o.help])].filter(Boolean).join(": ") + " " }, field));
  });
}

// show writes all sentences anew.
function show() {
  const held = document.activeElement;
  const list = held?.closest?.("#panels li")?.dataset.panel;
  const place = list && [...held.closest("li").querySelectorAll("input, select, button")].indexOf(held);
  byId("undo").disabled = !before.length;
  byId("title").value = called(design.design);
  byId("thing-title").textContent = say(design.into ? "into" : "thing");
  const panels = panelsOf().map((p) => [p.panel, called(p.panel)]);
  byId("holds").replaceChildren(...panels.map(([v, t]) => option(v, t, v === (design.holds ?? panels[0][0]))));
  for (const name of ["a", "b"]) {
    const s = byId("join").elements[name];
    const was = s.value;
    s.replaceChildren(...panels.map(([v, t]) => option(v, t, v === was)));
  }
  byId("panels").replaceChildren(...panelsOf().map(panelSentence));
  byId("joins").replaceChildren(...(design.joins ?? []).map(joinSentence));
  byId("sizes").replaceChildren(...optionFields());
  draw();
  if (list) [...byId("panels").children].find((li) => li.dataset.panel === list)?.querySelectorAll("input, select, button")[place]?.focus();
}

// stateJoin takes the form's statement into the design.
function stateJoin(event) {
  event.preventDefault();
  const { what, a, how, b } = byId("join").elements;
  const face = how.value === "outside" ? "outside" : "inside";
  const join = { glue: { glue: a.value, to: b.value, face }, lies: { lies: a.value, to: b.value, face }, even: { even: a.value, with: b.value },
    meet: { meet: "edge of " + a.value, with: (how.value === "edge" ? "edge of " : "fold of ") + b.value } }[what.value];
  change((d) => (d.joins ??= []).push(join));
}

// fitWords leaves only the words that go with what is stated.
function fitWords() {
  const { what, how } = byId("join").elements;
  const fit = { glue: ["inside", "outside"], lies: ["inside", "outside"], meet: ["fold", "edge"], even: ["with"] }[what.value];
  for (const o of how.options) o.hidden = o.disabled = !fit.includes(o.value);
  if (!fit.includes(how.value)) how.value = fit[0];
}

// The list that is kept in this browser.
const kept = () => JSON.parse(localStorage.getItem(LIST) ?? "[]");
function keep() {
  const list = kept().filter((d) => d.design !== design.design);
  localStorage.setItem(LIST, JSON.stringify([...list, design]));
  fillBegin();
  byId("said").prepend(make("p", { textContent: say("kept", design) }));
}

function save() {
  download(new Blob([JSON.stringify(design, null, 1)], { type: "application/json" }), design.design.replace(/\W+/g, "-").toLowerCase() + ".json");
}

async function open(file) {
  try {
    const read = JSON.parse(await file.text());
    if (!Array.isArray(read.pieces) || !read.pieces.every((p) => Array.isArray(p.panels))) throw new Error();
    before.push(JSON.stringify(design));
    take(read);
  } catch {
    tell(say("no-design"));
  }
}

function take(next) {
  design = next;
  chosen = "";
  show();
  solve();
}

// fillBegin lists what to begin with: the own list, then the designs to learn from.
let learned = [];
function fillBegin() {
  const own = kept().map((d, i) => option("own " + i, say("mine", d)));
  byId("begin").replaceChildren(option("", say("choose")), ...own, ...learned.map((d, i) => option("learn " + i, called(d.title))));
}

// start takes the design that the address brings: one by itself, or a kind's.
async function start() {
  const list = await fetch("/v1/designs").then((r) => r.json()).catch(() => ({ designs: [] }));
  learned = list.designs;
  fillBegin();
  const given = new URLSearchParams(location.hash.slice(1) || location.search.slice(1));
  const fields = byId("thing").elements;
  for (const [name, value] of given) if (fields[name] && name !== "design") fields[name].value = value.replace(/(\d)-(\d)/, "$1 $2");
  let first = learned[0]?.design ?? design;
  if (given.has("design")) first = JSON.parse(given.get("design"));
  else if (given.has("kind")) {
    const kind = given.get("kind");
    given.delete("kind");
    const answer = await fetch(`/v1/kinds/${encodeURIComponent(kind)}/design?${given}`);
    const found = await answer.json();
    if (!answer.ok) notice = said(found.errors?.[0]?.detail ?? found.detail, PROBLEMS[found.errors?.[0]?.code]);
    else first = found.design;
  }
  if (first === learned[0]?.design) byId("begin").value = "learn 0";
  take(structuredClone(first));
  for (const [name, value] of given) if (fields[name] && options().some((o) => o.name === name)) fields[name].value = value;
}

byId("undo").addEventListener("click", undo);
byId("keep").addEventListener("click", keep);
byId("export").addEventListener("click", save);
byId("import").addEventListener("change", (event) => event.target.files[0] && open(event.target.files[0]));
byId("title").addEventListener("change", () => change((d) => (d.design = byId("title").value.trim() || say("my-own"))));
byId("holds").addEventListener("change", () => change((d) => (d.holds = byId("holds").value)));
byId("join").addEventListener("submit", stateJoin);
byId("join").elements.what.addEventListener("change", fitWords);
byId("thing").addEventListener("submit", (event) => event.preventDefault());
byId("thing").addEventListener("input", (event) => event.target.id !== "begin" && solve());
byId("begin").addEventListener("change", () => {
  const [from, i] = byId("begin").value.split(" ");
  if (!from) return;
  before.push(JSON.stringify(design));
  take(structuredClone(from === "own" ? kept()[i] : learned[i].design));
});
addEventListener("keydown", (event) => {
  if ((event.ctrlKey || event.metaKey) && event.key === "z" && !/INPUT|SELECT/.test(event.target.tagName)) undo();
});
byId("language").addEventListener("click", () => (byId("language").hash = location.hash));
fitWords();
start();
