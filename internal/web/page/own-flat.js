// The flat picture: panels that can be chosen, folds, and a plus at every free edge.

const SVG = "http://www.w3.org/2000/svg";
const shape = (tag, attributes, ...children) => {
  const e = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) e.setAttribute(name, value);
  e.append(...children);
  return e;
};

// unitNow is the unit that lengths without one are in.
const unitNow = () => byId("thing").elements.unit.value;

// millimetres is a length as it is written, undefined for what is none.
function millimetres(text) {
  const m = text?.trim().match(/^(?=\d)(\d+(?:\.\d+)?(?![/.\d]))?[ -]?(?:(\d+)\/(\d+))?\s*(mm|in)?$/);
  return m ? (Number(m[1] ?? 0) + (m[3] ? m[2] / m[3] : 0)) * ((m[4] ?? unitNow()) === "in" ? 25.4 : 1) : undefined;
}

// amount is a length of the design, or that of its size of this name.
function amount(what) {
  const size = (design.sizes ?? []).find((s) => s.name === what);
  return millimetres(size ? names()[what] ?? size[unitNow()] : what);
}

// longOf is how far a panel goes: as it was worked out, as the design says, or a guess.
function longOf(p, key, guess, sizes, deep = 0) {
  const known = sizes[p.panel + (key === "up" ? " height" : "")];
  const like = p[key]?.like && deep < 9 && panelNamed(plain(p[key].like));
  if (known === undefined && like) return longOf(like, like.on ? "reach" : p[key].like === like.panel ? "across" : "up", guess, sizes, deep + 1);
  return known ?? (typeof p[key] === "string" ? amount(p[key]) : undefined) ?? guess;
}

// spread lays the panels out flat, one piece beside the other. While nothing has been
// solved it is a guess.
function spread() {
  const at = {};
  const sizes = Object.fromEntries((solution?.pieces ?? []).flatMap((p) => p.panels.map((q) => [q.name, q.size.mm])));
  const usual = [amount(names().width) ?? 90, amount(names().height) ?? 120];
  let shift = 0;
  for (const piece of design.pieces) {
    const boxes = {};
    const hang = (p) => {
      const long = longOf(p, "reach", 35, sizes);
      const [x0, y0, x1, y1] = boxes[p.on];
      const away = (p.narrower && amount(p.narrower)) || 0;
      boxes[p.panel] = { left: [x0 - long, y0 + away, x0, y1 - away], right: [x1, y0 + away, x1 + long, y1 - away], bottom: [x0 + away, y0 - long, x1 - away, y0], top: [x0 + away, y1, x1 - away, y1 + long] }[p.edge];
    };
    for (const p of piece.panels) if (!p.on) boxes[p.panel] = [0, 0, longOf(p, "across", usual[0], sizes), longOf(p, "up", usual[1], sizes)];
    for (let again = true; again; ) {
      again = false;
      for (const p of piece.panels) if (p.on && boxes[p.on] && !boxes[p.panel]) { hang(p); again = true; }
    }
    const [low, high] = [0, 2].map((k) => Math[k ? "max" : "min"](...Object.values(boxes).map((b) => b[k])));
    for (const [name, [x0, y0, x1, y1]] of Object.entries(boxes)) at[name] = [x0 - low + shift, y0, x1 - low + shift, y1];
    shift += high - low + 25;
  }
  return at;
}

// pressed makes a shape a button, for the pointer and for the keyboard.
function pressed(e, label, act) {
  for (const [name, value] of [["role", "button"], ["tabindex", "0"], ["aria-label", label]]) e.setAttribute(name, value);
  e.addEventListener("click", act);
  e.addEventListener("keydown", (event) => {
    if (event.key === "Enter" || event.key === " ") { event.preventDefault(); act(); }
  });
  return e;
}

// draw shows the panels; those that are not solved yet have dashed outlines.
function draw() {
  const boxes = spread();
  const svg = byId("flat");
  const focused = document.activeElement?.dataset?.key;
  const [x0, y0, x1, y1] = [0, 1, 2, 3].map((k) => Math[k < 2 ? "min" : "max"](...Object.values(boxes).map((b) => b[k])));
  const unit = Math.max(x1 - x0, y1 - y0) / 100;
  svg.setAttribute("viewBox", [x0 - 7 * unit, -y1 - 7 * unit, x1 - x0 + 14 * unit, y1 - y0 + 14 * unit].join(" "));
  svg.classList.toggle("rough", stale || !solution);
  const laid = panelsOf().filter((p) => boxes[p.panel]);
  svg.replaceChildren(...laid.map((p) => panelShape(p, boxes[p.panel], unit)), ...laid.filter((p) => p.on && p.fold !== "flat").map((p) => foldLine(p, boxes[p.panel])),
    ...laid.flatMap((p) => pluses(p, boxes[p.panel], unit)));
  if (focused) svg.querySelector(`[data-key="${CSS.escape(focused)}"]`)?.focus();
}

// panelShape is a panel, its sides slanted and its window cut out.
function panelShape(p, box, unit) {
  const [x0, y0, x1, y1] = box;
  const upright = y1 - y0 > 1.6 * (x1 - x0);
  const room = upright ? y1 - y0 : x1 - x0;
  const text = shape("text", { x: (x0 + x1) / 2, y: -(y0 + y1) / 2, "font-size": Math.min(3 * unit, (1.9 * room) / called(p.panel).length) });
  text.textContent = called(p.panel);
  if (upright) text.setAttribute("transform", `rotate(-90 ${(x0 + x1) / 2} ${-(y0 + y1) / 2})`);
  const g = shape("g", { class: "panel", "aria-pressed": p.panel === chosen, "data-key": "panel " + p.panel }, shape("path", { d: ringOf(p, box) + holeOf(p, box), "fill-rule": "evenodd" }), text);
  return pressed(g, say("change", p), () => choose(p.panel, true));
}

const closed = (corners) => "M" + corners.map(([x, y]) => x + " " + -y).join("L") + "Z";

function ringOf(p, [x0, y0, x1, y1]) {
  const in_ = (p.taper && amount(p.taper)) || 0;
  const at = (edge) => (p.edge === edge ? in_ : 0);
  return closed([[x0 + at("bottom"), y0 + at("left")], [x1 - at("bottom"), y0 + at("right")], [x1 - at("top"), y1 - at("right")], [x0 + at("top"), y1 - at("left")]]);
}

function holeOf({ window: w }, [x0, y0, x1, y1]) {
  if (!w) return "";
  const [a, b, c, d] = [x0 + amount(w.left), y0 + amount(w.bottom), x1 - amount(w.right), y1 - amount(w.top)];
  return [a, b, c, d].every(Number.isFinite) ? closed([[a, b], [a, d], [c, d], [c, b]]) : "";
}

function foldLine(p, [x0, y0, x1, y1]) {
  const [a, b, c, d] = { left: [x1, y0, x1, y1], right: [x0, y0, x0, y1], bottom: [x0, y1, x1, y1], top: [x0, y0, x1, y0] }[p.edge];
  return shape("line", { x1: a, y1: -b, x2: c, y2: -d, class: "fold " + (p.fold ?? "valley") });
}

// pluses are the buttons at the free edges of a panel.
function pluses(p, [x0, y0, x1, y1], unit) {
  const places = { left: [x0 - 3 * unit, (y0 + y1) / 2], right: [x1 + 3 * unit, (y0 + y1) / 2], bottom: [(x0 + x1) / 2, y0 - 3 * unit], top: [(x0 + x1) / 2, y1 + 3 * unit] };
  return Object.entries(places).filter(([edge]) => !childAt(p.panel, edge) && !(p.on && edge === OPPOSITE[p.edge])).map(([edge, [x, y]]) => {
    const r = 1.9 * unit;
    const g = shape("g", { class: "plus", transform: `translate(${x} ${-y})`, "data-key": edge + " " + p.panel },
      shape("circle", { r }), shape("path", { d: `M${-r / 2} 0H${r / 2}M0 ${-r / 2}V${r / 2}` }));
    return pressed(g, say("add", { edge: say(edge), panel: p.panel }), () => addPanel(p.panel, edge));
  });
}
