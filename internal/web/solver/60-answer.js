// scoreNumber is the number in the name of a score, for languages to use.
const scoreNumber = (name) => /(\d+)$/.exec(name)?.[1] ?? name;

// pieceNode shows what to set on the ruler for one piece, and how many blanks
// of it a sheet gives, if that was counted.
function pieceNode(piece, words, alone, perSheet) {
  const heading = alone ? null : make("p", { class: "piece" }, english(piece.name));
  const times = piece.quantity > 1 ? " (" + fill(words.times, piece.quantity) + ")" : "";
  const list = make("dl", { class: "readings" });
  list.append(make("div", { class: "blank" }, make("dt", {}, words.cut),
    make("dd", {}, readingNode(piece.blank.width.reading, words), make("span", { class: "by" }, " " + words.by + " "), readingNode(piece.blank.height.reading, words), times)));
  const scores = piece.scores.map((score) => scoreNode(score, words));
  if (scores.length) list.append(make("div", {}, make("dt", {}, words.score), make("dd", {}, make("ol", {}, ...scores))));
  const cuts = new Map();
  for (const cut of piece.cuts) cuts.set(cut.kind, [...(cuts.get(cut.kind) ?? []), cutNode(cut, words)]);
  for (const [kind, nodes] of cuts) list.append(make("div", {}, make("dt", {}, words.cuts[kind] ?? kind), make("dd", {}, make("ul", {}, ...nodes))));
  if (perSheet != null) list.append(make("div", {}, make("dt", {}, words.sheet), make("dd", {}, make("span", { class: "reading", part: "reading" }, perSheet))));
  return make("div", { class: "pieces" }, heading, list);
}

// papers are what is set beside a mark: so many thicknesses of the paper.
function papers({ papers: n }, words) {
  return n ? (n > 0 ? " + " : " − ") + fill(Math.abs(n) === 1 ? words.paper : words.papers, Math.abs(n)) : "";
}

// place is a reading with the edge that it is measured from.
function place(text, at, from, words) {
  const [before, after] = text.split("{reading}");
  return [before, readingNode(at.reading, words), papers(at, words), fill(after, { from: words.sides[from] })];
}

function scoreNode(score, words) {
  const notes = [words.folds[score.fold] + (score.angle < 180 ? " " + Math.round(score.angle) + "°" : "")];
  if (score.across === "diagonal") notes.unshift(words.diagonal);
  const or = score.or ? [" ", ...place(words.orFrom, score.or.at, score.or.from, words)] : [];
  return make("li", {}, ...place(words.scoreAt, score.at, score.from, words), make("small", {}, ...or, " · " + notes.join(", ")));
}

function cutNode(cut, words) {
  const notes = [];
  if (cut.on) notes.push(fill(words.on, scoreNumber(cut.on)));
  if (cut.at) notes.push(fill(words.cutAt, readingText(cut.at.reading, words) + papers(cut.at, words)));
  if (cut.width.mm > 0) notes.push(fill(words.cutWide, { reading: readingText(cut.width.reading, words) + papers(cut.width, words) }));
  return make("li", {}, ...place(words.cutDeep, cut.depth, cut.from, words), make("small", {}, notes.length ? " · " + notes.join(", ") : ""));
}

// hundred is the chance as tries in 100, never rounded up.
const hundred = (chance) => Math.floor(chance * 100);

// sureness chooses the sentence for a chance.
function sureness(chance, words) {
  const steps = [[0.995, words.surely], [0.95, words.almost], [0.8, words.probably], [0.5, words.perhaps]];
  return (steps.find(([least]) => chance >= least) ?? [0, words.hardly])[1];
}

function fitNode(fit, words) {
  const room = { nominal: fit.nominal, least: fit.worst_case[0], most: fit.worst_case[1] };
  for (const key of Object.keys(room)) room[key] = readingText(room[key].reading, words);
  const axis = (words.axes[fit.axis] ?? fit.axis) + (fit.between ? " (" + fit.between + ")" : "");
  return make("li", {}, make("strong", {}, fill(sureness(fit.chance, words), { axis, n: hundred(fit.chance) })), " ", fill(words.room, room));
}

// leastChance is the chance of the axis that is least sure.
const leastChance = (fits) => Math.min(1, ...fits.map((fit) => fit.chance));

// gained says what a finer step is worth, in the language where that has words for it.
function gained(text, words) {
  const said = words.gains.reduce((told, [pattern, own]) => told.replace(pattern, own), text);
  if (said === text) return english(text);
  return said.replace(/(-?[\d.]+) (in|mm)/g, (reading) => readingText(reading, words));
}

function alternativeNode(alternative, words, take) {
  const step = readingText(alternative.step, words);
  return make("li", {}, fill(words.alternative, { step, n: hundred(leastChance(alternative.fit)) }) + "; ", gained(alternative.gain + ".", words), " ",
    make("button", { type: "button", part: "button", click: () => take({ step: alternative.step }) }, fill(words.take, step)));
}

// block is a titled part of the answer; nothing if it has no content.
function block(part, title, ...content) {
  return content.length ? make("section", { part, class: part }, make("p", { class: "title" }, title), ...content) : null;
}

// summary is the answer in one line, to be spoken.
function summary(solution, words) {
  return solution.pieces.map((piece) => {
    const scores = piece.scores.map((score) => readingText(score.at.reading, words) + papers(score.at, words)).join(", ");
    const blank = words.cut + " " + readingText(piece.blank.width.reading, words) + " " + words.by + " " + readingText(piece.blank.height.reading, words) + ".";
    return blank + (scores ? " " + words.score + ": " + scores + "." : "");
  }).join(" ");
}

// answerNodes shows the whole solution.
function answerNodes(solution, words, links, take) {
  const yields = Object.fromEntries((solution.yield?.pieces ?? []).map((item) => [item.piece, item.per_sheet]));
  const notes = solution.warnings.map((warning) => make("li", {}, english(warning.detail)));
  const tries = solution.warnings.filter((warning) => warning.try).map((warning) => make("button", { type: "button", part: "button",
    click: () => take(Object.fromEntries(new URLSearchParams(warning.try.split("?")[1]))) }, words.doThat));
  const finer = solution.alternatives.map((a) => alternativeNode(a, words, take));
  const back = solution.given.step ? [make("button", { type: "button", part: "button", click: () => take({ step: "" }) }, words.plainest)] : [];
  return [
    block("answer", words.readings, ...solution.pieces.map((piece) => pieceNode(piece, words, solution.pieces.length === 1, yields[piece.name]))),
    make("figure", { part: "drawing", class: "drawing", "aria-label": words.drawing, tabindex: "0" }),
    block("fit", words.sure, make("ul", {}, ...solution.fit.map((fit) => fitNode(fit, words)))),
    block("notes", words.notes, ...(notes.length ? [make("ul", {}, ...notes), ...tries] : [])),
    block("alternatives", words.finer, ...(finer.length ? [make("ul", {}, ...finer)] : []), ...back),
    make("p", { part: "links", class: "links" }, ...links.map(([text, href]) => make("a", { href, target: "_blank", rel: "noopener" }, text))),
  ].filter(Boolean);
}
