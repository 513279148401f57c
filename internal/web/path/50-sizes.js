const PARAMETERS = new Map(); // of kinds, fetched once a kind

// showSizes shows the chosen kind: how sure it is first, then what to cut, then
// the work step by step.
function showSizes(solution, guide, suggestion, names) {
  $("sizes-title").textContent = guide.title;
  $("answer").replaceChildren(sureness(solution), spread(names), ...beyond(solution, suggestion), cutList(guide), ...notes(guide), steps(guide), ...otherMarks(solution));
  $("sizes").hidden = false;
  finer();
  showMake(solution, suggestion, names);
  const { cut_list: [first] } = guide;
  $("status").textContent = say("answer", { kind: guide.title, sure: chanceWords(solution.sure.chance), cut: `${say("cut-list")} ${first.width.text} ${say("by")} ${first.height.text}.` });
  if (!landed) {
    landed = true;
    $("sizes").focus({ preventScroll: true });
    $("sizes").scrollIntoView({ behavior: matchMedia("(prefers-reduced-motion: reduce)").matches ? "auto" : "smooth" });
  }
}

function chanceWords(chance) {
  const n = hundred(chance);
  return n >= 99 ? say("sure-always") : say(n >= 80 ? "sure" : "unsure", n);
}

// sureness says how often it goes in, how much room the least sure axis has, and
// offers what would make it surer.
function sureness({ sure, fit, warnings }) {
  const weakest = sure.weakest && fit.find((f) => f.axis === sure.weakest.axis && (f.between ?? "") === (sure.weakest.between ?? ""));
  const axis = weakest && (WORDS.names[weakest.axis] ?? say(weakest.axis));
  const room = weakest && (weakest.nominal.mm > 0.2 ? say("room", { axis, room: rounded(weakest.nominal) }) : say("no-room", { axis }));
  const surer = warnings.find((w) => w.code === "unsure-fit" && w.try);
  return node("p", { class: sure.chance < 0.8 ? "sure doubtful" : "sure" }, node("strong", {}, chanceWords(sure.chance)), " ", room ?? "", " ",
    surer ? node("button", { type: "button", click: () => take(surer.try) }, say("surer")) : "");
}

// spread is the picture of how far each clearance may come out, once it is wanted.
function spread(names) {
  const theme = matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "light";
  const src = `/v1/drawing/${kind}?` + new URLSearchParams({ ...names, ...kindNames(), language: WORDS.language, view: "spread", theme, format: "svg" });
  return node("details", { class: "spread", toggle: (event) => event.target.open && event.target.childElementCount === 1 && event.target.append(node("img", { src, alt: say("spread"), class: "plan" })) },
    node("summary", {}, say("spread")));
}

// rounded is a length to the nearest mark of the ruler, as a rough word for room.
function rounded(l) {
  if (unit() === "mm") return length(Math.round(l.mm * 2) / 2 + " mm");
  const parts = Math.round(l.in * 32);
  if (parts === 0) return length("0 in");
  let [top, under] = [parts % 32, 32];
  while (top && top % 2 === 0) [top, under] = [top / 2, under / 2];
  return length([Math.floor(parts / 32) || "", top ? `${top}/${under}` : ""].filter(Boolean).join(" ") + " in");
}

// take takes the names of another address of the same kind.
function take(link) {
  const given = new URLSearchParams(link.split("?")[1]);
  const [fields, more] = [["contents", ...SIZES, "stock", "caliper", "sheet", "unit"], {}];
  for (const [name, value] of given) {
    if (fields.includes(name)) continue;
    const input = form.querySelector(`#thing [name="${name}"], #paper [name="${name}"]`);
    if (input) field(name).value = value;
    else more[name] = value;
  }
  own_ = more;
  visit();
}

// beyond says that a blank is larger than the sheet, or than any usual one.
function beyond(solution, { sheets }) {
  const sizes = solution.pieces.flatMap(({ blank }) => [blank.width, blank.height]);
  const longest = sizes.reduce((a, b) => (b.mm > a.mm ? b : a));
  return sheets === 0 || (sheets == null && longest.mm > 660) ? [node("p", { class: "doubtful" }, say("beyond-long", length(longest.reading)))] : [];
}

function cutList(guide) {
  return node("div", { class: "cut" }, node("h3", {}, say("cut-list")), node("ul", {}, ...guide.cut_list.map((blank) => node("li", {},
    guide.cut_list.length > 1 ? blank.piece + ": " : "", node("b", {}, blank.width.text), " " + say("by") + " ", node("b", {}, blank.height.text), blank.quantity > 1 ? " (" + say("times", blank.quantity) + ")" : ""))));
}

function notes({ warnings }) {
  return warnings?.length ? [node("details", { class: "notes" }, node("summary", {}, say("notes")), node("ul", {}, ...warnings.map(({ text }) => node("li", {}, text))))] : [];
}

// steps tells the work with its pictures; a tap makes one as large as the screen.
function steps(guide) {
  return node("details", { class: "steps", open: true }, node("summary", {}, say("steps")),
    ...(guide.cautions?.length ? [node("p", { class: "caution" }, node("strong", {}, say("cautions") + ": "), guide.cautions.map((c) => c.text ?? c).join(" "))] : []),
    node("ol", {}, ...guide.steps.map((step) => node("li", {}, node("h4", {}, step.title), node("p", {}, step.text),
      step.lines ? node("ul", {}, ...step.lines.map((line) => node("li", {}, line))) : "", step.after ? node("p", { class: "quiet" }, step.after) : "", ...(step.pictures ?? []).map(enlarged)))));
}

// otherMarks offers readings on finer marks.
function otherMarks({ alternatives, given }) {
  const buttons = alternatives.map((a) => node("button", { type: "button", click: () => takeStep(a.step) }, say("plainer", length(a.step))));
  if (given.step) buttons.push(node("button", { type: "button", click: () => takeStep() }, say("plainest")));
  return buttons.length ? [node("p", { class: "marks" }, say("one-way") + ": ", ...buttons.flatMap((b) => [b, " "]))] : [];
}

function takeStep(step) {
  if (step) own_.step = step;
  else delete own_.step;
  visit();
}

// showRefusal says why the chosen kind does not work, and leads to the others.
function showRefusal(problem) {
  $("sizes-title").textContent = titleOf(kind);
  $("answer").replaceChildren();
  $("sizes").hidden = false;
  finer().then(() => complain(problem));
  $("status").textContent = say("wrong");
}

// finer offers the kind's own choices; what they are is asked for once.
async function finer() {
  const of = kind;
  if (!PARAMETERS.has(of)) {
    if (!$("finer").open && Object.keys(own_).every((name) => name === "step")) return void $("choices").replaceChildren();
    PARAMETERS.set(of, fetch("/v1/kinds/" + of).then((answer) => answer.json()));
  }
  const { parameters } = await PARAMETERS.get(of);
  if (of !== kind || $("choices").contains(document.activeElement)) return;
  const shown = new Set(["unit", "contents", ...SIZES, "stock", "caliper", "sheet", "bench", "ruler", "fit", "shape"]);
  $("choices").replaceChildren(...parameters.filter((p) => p.about === "calculation" && !shown.has(p.name)).map(finerField));
}

function finerField(p) {
  const id = "own-" + p.name;
  const given = own_[p.name] ?? "";
  const open = p.choices && p.type === "text"; // one of the words, or what is typed
  const words = open && node("datalist", { id: id + "-words" }, ...p.choices.map((word) => node("option", { value: word, label: choice(word) })));
  const control = p.choices && !p.list && !open
    ? node("select", { id, name: p.name, "data-own": true }, node("option", { value: "" }, say("as-it-comes")), ...[...new Set([...p.choices, ...(given ? [given] : [])])].map((word) => node("option", { value: word, selected: word === given }, choice(word))))
    : node("input", { id, name: p.name, "data-own": true, value: open ? given : given && length(given), list: words && words.id, placeholder: p.default ? length(p.default[unit()]) : say("as-it-comes"), size: open ? 24 : 10, autocapitalize: "off", spellcheck: "false" });
  return node("p", {}, node("label", { for: id }, label(p.name)), control, words || "", WORDS.language === "en" ? node("span", { class: "help" }, p.help) : "");
}

$("finer").addEventListener("toggle", () => $("finer").open && kind && finer());
