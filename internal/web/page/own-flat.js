// The flat picture: panels that can be chosen, folds, and a plus at every free edge.

const SVG = "http://www.w3.org/2000/svg";
const shape = (tag, attributes, ...children) => {
  const e = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) e.setAttribute(name, value);
  e.append(...children);
  return e;
};

// facesOf reads the panels of a FOLD file: of each frame, side by side.
function facesOf(file) {
  const frames = [file, ...(file.file_frames ?? [])].filter((f) => f.faces_vertices);
  const all = {};
  let shift = 0;
  for (const f of frames) {
    const xs = f.vertices_coords.map((v) => v[0]);
    f.faces_vertices.forEach((face, i) => (all[f["faces_creasefit:name"][i]] = face.map((v) => [f.vertices_coords[v][0] + shift, f.vertices_coords[v][1]])));
    shift += Math.max(...xs) + 15;
  }
  return all;
}

// millimetres is a length of the design, or a guess at one that is not known yet.
function millimetres(reach, guess) {
  if (typeof reach === "string") {
    const m = reach.match(/^(?:(\d+(?:\.\d+)?)?[ -]?(?:(\d+)\/(\d+))?)\s*(mm|in)$/);
    if (m) return (Number(m[1] ?? 0) + (m[3] ? m[2] / m[3] : 0)) * (m[4] === "in" ? 25.4 : 1);
  }
  return guess;
}

// roughly lays the panels out with guesses, while nothing has been solved.
function roughly() {
  const at = {};
  const { width, height, unit } = names();
  const factor = unit === "in" ? 25.4 : 1;
  let shift = 0;
  for (const piece of design.pieces) {
    const boxes = {};
    const hang = (p) => {
      const on = boxes[p.on];
      const long = millimetres(p.reach, 35);
      const [x0, y0, x1, y1] = on;
      boxes[p.panel] = { left: [x0 - long, y0, x0, y1], right: [x1, y0, x1 + long, y1], bottom: [x0, y0 - long, x1, y0], top: [x0, y1, x1, y1 + long] }[p.edge];
    };
    for (const p of piece.panels) if (!p.on) boxes[p.panel] = [0, 0, millimetres(p.across, (Number(width) || 90) * factor), millimetres(p.up, (Number(height) || 120) * factor)];
    for (let again = true; again; ) {
      again = false;
      for (const p of piece.panels) if (p.on && boxes[p.on] && !boxes[p.panel]) { hang(p); again = true; }
    }
    const low = Math.min(...Object.values(boxes).map((b) => b[0]));
    for (const [name, [x0, y0, x1, y1]] of Object.entries(boxes)) at[name] = [[x0, y0], [x1, y0], [x1, y1], [x0, y1]].map(([x, y]) => [x - low + shift, y]);
    shift += Math.max(...Object.values(boxes).map((b) => b[2])) - low + 15;
  }
  return at;
}

const boxOf = (ring) => {
  const [xs, ys] = [ring.map((p) => p[0]), ring.map((p) => p[1])];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
};

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
  const known = faces && panelsOf().every((p) => faces[p.panel]);
  const rings = known ? faces : roughly();
  const svg = byId("flat");
  const focused = document.activeElement?.dataset?.key;
  const all = Object.values(rings).flat();
  const [x0, y0, x1, y1] = boxOf(all);
  const unit = Math.max(x1 - x0, y1 - y0) / 100;
  svg.setAttribute("viewBox", [x0 - 7 * unit, -y1 - 7 * unit, x1 - x0 + 14 * unit, y1 - y0 + 14 * unit].join(" "));
  svg.classList.toggle("rough", !known);
  const parts = [];
  for (const p of panelsOf()) if (rings[p.panel]) parts.push(panelShape(p, rings[p.panel], unit));
  for (const p of panelsOf()) if (rings[p.panel] && p.on && p.fold !== "flat") parts.push(foldLine(p, boxOf(rings[p.panel])));
  for (const p of panelsOf()) if (rings[p.panel]) parts.push(...pluses(p, boxOf(rings[p.panel]), unit));
  svg.replaceChildren(...parts);
  if (focused) svg.querySelector(`[data-key="${CSS.escape(focused)}"]`)?.focus();
}

function panelShape(p, ring, unit) {
  const [x0, y0, x1, y1] = boxOf(ring);
  const upright = y1 - y0 > 1.6 * (x1 - x0);
  const room = upright ? y1 - y0 : x1 - x0;
  const text = shape("text", { x: (x0 + x1) / 2, y: -(y0 + y1) / 2, "font-size": Math.min(3 * unit, (1.9 * room) / called(p.panel).length) });
  text.textContent = called(p.panel);
  if (upright) text.setAttribute("transform", `rotate(-90 ${(x0 + x1) / 2} ${-(y0 + y1) / 2})`);
  const g = shape("g", { class: "panel", "aria-pressed": p.panel === chosen, "data-key": "panel " + p.panel },
    shape("polygon", { points: ring.map(([x, y]) => x + "," + -y).join(" ") }), text);
  return pressed(g, say("change", p), () => choose(p.panel, true));
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
