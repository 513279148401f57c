const SIZES = ["width", "height", "thickness"];
const form = $("ask");
const field = (name) => form.elements.namedItem(name);
// What is offered as a thing at once: the rest is one choice away.
const OFTEN = ["tasting-cards", "tea-sachets", "tea-tin", "honey-jar", "id-1", "photo-4r", "sheet-a6"];
const RULERS = { in: ["1/8 in", "1/16 in", "1/32 in"], mm: ["1 mm", "0.5 mm"] };
const USUAL = { in: { ruler: "1/16 in", sheet: "letter" }, mm: { ruler: "0.5 mm", sheet: "a4" } };
const THINGS = new Map(DATA.things.map((thing) => [thing.name, thing]));

// A size that says how many of the named thing lie side by side or on one another.
const SEVERAL = /\b(them|davon)\b/i;

// chips offers things by name.
function chips() {
  const often = OFTEN.map((name) => node("button", { type: "button", "data-thing": name, click: () => choose(name) }, THINGS.get(name).title));
  const others = node("select", { "aria-label": say("things"), id: "others", change: () => others.value && choose(others.value) },
    node("option", { value: "" }, say("other-things") + " …"), ...DATA.things.filter((thing) => !OFTEN.includes(thing.name)).map((thing) => node("option", { value: thing.name }, thing.title)));
  $("chips").replaceChildren(...often, others);
}

// choose takes a thing by name. Its sizes stand in the fields, and typing into
// one of them makes it a thing of one's own.
function choose(name) {
  const [width, height, thickness] = THINGS.get(name).size.split("|");
  field("contents").value = name;
  const unit = /in$/.test(width) ? "in" : "mm";
  if (field("unit").value !== unit) changeUnit(unit);
  for (const [size, text] of Object.entries({ width, height, thickness })) field(size).value = text && length(text);
  visit();
  if (!thickness) field("thickness").focus();
}

// own forgets the name of a thing once its width or height is another.
function own(size) {
  const name = field("contents").value;
  if (!name) return;
  const at = SIZES.indexOf(size);
  if (SEVERAL.test(field(size).value)) return;
  if (length(THINGS.get(name).size.split("|")[at]) !== field(size).value) field("contents").value = "";
}

// roundOff keeps what is round as thick as it is wide.
function roundOff() {
  if (round()) field("thickness").value = field("width").value;
}

// marked shows which thing is chosen.
function marked() {
  for (const chip of $("chips").querySelectorAll("button")) chip.setAttribute("aria-pressed", String(chip.dataset.thing === field("contents").value));
  $("others").value = OFTEN.includes(field("contents").value) ? "" : field("contents").value;
  field("thickness").readOnly = round();
  $("own-paper").hidden = Boolean(field("stock").value);
  for (const size of SIZES) field(size).placeholder = say("for-example", unit() === "in" ? ["3 1/2", "5", "3/4"][SIZES.indexOf(size)] : [90, 120, 20][SIZES.indexOf(size)]);
}

const unit = () => field("unit").value;

// changeUnit offers the marks and sheets that go with a unit, and writes bare
// numbers with the unit that they were meant in.
function changeUnit(to) {
  const from = to === "in" ? "mm" : "in";
  for (const name of [...SIZES, "caliper"]) {
    if (/^[\d .,/-]*\d$/.test(field(name).value)) field(name).value += "\u00a0" + WORDS.units[from];
  }
  field("unit").value = to;
  rulers();
  if (field("sheet").value === USUAL[from].sheet) field("sheet").value = USUAL[to].sheet;
}

function rulers() {
  const known = field("ruler").value;
  field("ruler").replaceChildren(...RULERS[unit()].map((mark) => node("option", { value: mark }, length(mark))));
  field("ruler").value = RULERS[unit()].includes(known) ? known : USUAL[unit()].ruler;
}

// millimetres reads a size roughly, for the picture alone: what several things come
// to where it says so.
function millimetres(text, usual, size) {
  const parts = text.split(/ \+ | and | und /);
  const sum = parts.map((part) => {
    const [, times, one] = /^\s*(\d+)\s*(?:of|mal|\*)\s*(.*)$/i.exec(part) ?? [null, SEVERAL.test(part) ? parseInt(part, 10) || 1 : 1, part];
    const named = SEVERAL.test(one) && THINGS.get(field("contents").value)?.size.split("|")[SIZES.indexOf(size)];
    return times * oneLength(named || one);
  });
  return sum.reduce((a, b) => a + b) || usual;
}

function oneLength(text) {
  const plain = text.replace(",", ".").replace(/\u00a0/g, " ");
  const [, whole, top, under] = /^\s*(\d*\.?\d*)?(?:[\s-]*(\d+)\s*\/\s*(\d+))?/.exec(plain);
  const slash = /^\s*(\d+)\s*\/\s*(\d+)/.exec(plain);
  const number = slash ? slash[1] / slash[2] : Number(whole || 0) + (top ? top / under : 0);
  const inches = /mm|cm/.test(plain) ? false : /in|zoll|"/i.test(plain) || unit() === "in";
  return (number > 0 ? number : 0) * (inches ? 25.4 : /cm/.test(plain) ? 10 : 1);
}

const STEP = Math.PI / 24; // between the corners of what is drawn round

// hull is the outline of what a ring sweeps over on its way back: from the corner that
// is farthest to one side round the far half of the ring to the other.
function hull(front, behind, [x, y]) {
  const aside = front.map((p) => p[0] * y - p[1] * x);
  const [left, right] = [aside.indexOf(Math.max(...aside)), aside.indexOf(Math.min(...aside))];
  const ahead = (k) => front[k % front.length][0] * x + front[k % front.length][1] * y;
  const half = front.length / 2;
  const turn = ahead(left + half / 2) > ahead(left + half * 1.5) ? 1 : front.length - 1;
  const arc = Array.from({ length: half + 1 }, (_, k) => behind[(left + k * turn) % front.length]);
  return [front[left], ...arc, front[right]];
}

// block draws the thing with an arrow for each size.
function block() {
  const [w, h, t] = [90, 120, 20].map((usual, i) => millimetres(field(SIZES[i]).value, usual, SIZES[i]));
  const most = Math.max(w, h, t);
  const [a, b, c] = [w, h, t].map((size) => 12 + (88 * size) / most);
  const right = [0.94 * a, 0.2 * a], back = [0.5 * b, -0.42 * b], up = [0, -0.86 * c];
  const at = (x, y, z) => [x * right[0] + y * back[0] + z * up[0], x * right[1] + y * back[1] + z * up[1]];
  const corners = [at(0, 0, 0), at(1, 0, 0), at(1, 1, 0), at(1, 1, 1), at(0, 1, 1), at(0, 0, 1)];
  const low = [Math.min(...corners.map((p) => p[0])) - 62, Math.min(...corners.map((p) => p[1])) - 16];
  const high = [Math.max(...corners.map((p) => p[0])) + 50, Math.max(...corners.map((p) => p[1])) + 22];
  const path = (...points) => "M" + points.map((p) => p.map((x) => x.toFixed(1)).join(" ")).join("L") + "Z";
  const [front, behind] = [0, 1].map((y) => Array.from({ length: 48 }, (_, k) => at(0.5 + Math.cos(k * STEP) / 2, y, 0.5 + Math.sin(k * STEP) / 2)));
  const face = (kind, ...points) => svgNode("path", { d: path(...points), class: kind });
  const arrow = (from, to, aside, text, anchor) => {
    const move = ([x, y]) => [x + aside[0], y + aside[1]];
    const [p, q] = [move(from), move(to)];
    return svgNode("g", { class: "arrow" }, svgNode("path", { d: `M${p.map((x) => x.toFixed(1))}L${q.map((x) => x.toFixed(1))}`, "marker-start": "url(#head)", "marker-end": "url(#head)" }),
      svgNode("text", { x: ((p[0] + q[0]) / 2 + aside[0] * 0.8).toFixed(1), y: ((p[1] + q[1]) / 2 + aside[1] * 0.8 + 4).toFixed(1), "text-anchor": anchor }, text));
  };
  $("block").replaceChildren(svgNode("svg", { viewBox: [low[0], low[1], high[0] - low[0], high[1] - low[1]].map((x) => x.toFixed(1)).join(" "), "aria-hidden": "true" },
    svgNode("defs", {}, svgNode("marker", { id: "head", viewBox: "0 0 8 8", refX: 7, refY: 4, markerWidth: 7, markerHeight: 7, orient: "auto-start-reverse" }, svgNode("path", { d: "M0 0L8 4L0 8Z" }))),
    ...(round() ? [face("side", ...hull(front, behind, back)), face("front", ...front)]
      : [face("front", at(0, 0, 0), at(1, 0, 0), at(1, 0, 1), at(0, 0, 1)), face("side", at(1, 0, 0), at(1, 1, 0), at(1, 1, 1), at(1, 0, 1)), face("top", at(0, 0, 1), at(1, 0, 1), at(1, 1, 1), at(0, 1, 1))]),
    arrow(at(0, 0, 0), at(1, 0, 0), [-2, 9], say("wide"), "middle"), arrow(at(1, 0, 0), at(1, 1, 0), [9, 5], say("high"), "start"), arrow(at(0, 0, 0), at(0, 0, 1), [-9, 0], say("thick"), "end")));
}

function svgNode(tag, attributes, ...children) {
  const element = document.createElementNS("http://www.w3.org/2000/svg", tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  element.append(...children);
  return element;
}
