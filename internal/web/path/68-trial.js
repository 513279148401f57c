// What can be measured of a trial piece once it is folded, and on a test sheet.
const CUT = ["blank", "marks", "rises", "depths"];
const FOLDED = SIZES.flatMap((size) => ["inside_" + size, "outside_" + size]);
const ON_SHEET = ["stack_count", "stack", "block_width", "block_thickness", "turns", "wound", "marked", "wet_along", "wet_across", "cut_at", "cuts", "score_at", "scores", "scored_apart", "folded_inside"];

// trial offers what should have been cut, to be changed to what was.
function trial() {
  const should = new URLSearchParams(lying.solution.links.check.split("?")[1]);
  $("trial-fields").replaceChildren(...CUT.filter((name) => should.has(name)).map((name) => measuredField("trial", name, should.getAll(name).map(readable).join("; "))),
    ...FOLDED.map((name) => measuredField("trial", name, "")));
  $("trial-said").replaceChildren();
  $("test-sheet").href = "/v1/calibrate?" + new URLSearchParams({ unit: unit(), language: WORDS.language, format: "pdf" });
  if (!$("hand-fields").firstChild) $("hand-fields").append(...ON_SHEET.map((name) => measuredField("hand", name, "")));
}

// readable is a size of an address the way that hands write it.
const readable = (text) => text.split("x").map((one) => length(one.replace(/^(\d+)-(\d)/, "$1 $2").replace(/(in|mm)$/, " $1"))).join(" × ");

function measuredField(of, name, value) {
  const id = of + "-" + name;
  return node("p", {}, node("label", { for: id }, say("measured-" + name)), node("input", { id, name, value, size: 22, autocapitalize: "off", spellcheck: "false" }));
}

// typedIn adds what stands in the fields of a form to a query, each entry of a list
// by itself. Numbers without a unit are in the page's.
function typedIn(id, query) {
  let text = "";
  for (const input of $(id).querySelectorAll("input")) {
    input.removeAttribute("aria-invalid");
    query.delete(input.name);
    for (const one of input.value.split(";").map(plain).filter(Boolean)) {
      query.append(input.name, one.replace("×", "x"));
      text += one;
    }
  }
  if (text.includes(",") && !text.includes(".")) query.set("decimal", "comma");
  return query;
}

// learnFrom asks about measurements, and shows what they say or which cannot be read.
async function learnFrom(event, address, query, told_) {
  event.preventDefault();
  const shown = event.target.parentElement.querySelector("[role=status]");
  let body;
  try {
    const answer = await fetch(address + "?" + query);
    body = await answer.json();
    if (answer.ok) return void shown.replaceChildren(...told_(body));
  } catch {
    return void shown.replaceChildren(node("p", { class: "wrong" }, say("unreachable")));
  }
  for (const { name } of body.errors ?? []) event.target.querySelector(`[name="${CSS.escape(name ?? "")}"]`)?.setAttribute("aria-invalid", "true");
  shown.replaceChildren(...(body.errors?.length ? body.errors : [body]).map((fault) => node("p", { class: "wrong" }, fault.name ? label_(fault.name) + ": " : "", complaint(fault))));
}

const label_ = (name) => WORDS.page["measured-" + name] ?? label(name);

// checked says whether what was cut still closes, what would mend it, and what the
// folded piece teaches.
function checked({ works, sure, mend, learned }) {
  const changes = [...mend, ...(learned?.mend ?? [])].map(({ name, from, to }) =>
    node("li", {}, say("mend", { name: DATA.parts[name] ?? name, from: length(from.reading), to: length(to.reading) })));
  return [node("p", { class: works ? "" : "wrong" }, say(works ? "trial-works" : "trial-fails"), " ", works ? chanceWords(sure.chance) : ""),
    changes.length ? node("ul", {}, ...changes) : "", ...(learned ? [node("ul", {}, ...learned.causes.slice(0, 3).map(cause)), ...settings(learned.use)] : [])].filter(Boolean);
}

// cause is what was most likely off in a folded piece.
function cause({ cause: what, at, off }) {
  return node("li", {}, say("cause-" + what, { at: at ? length(at.reading) : "", off: length(unit() === "in" ? Math.abs(off.in).toFixed(3) + " in" : Math.abs(off.mm).toFixed(2) + " mm") }), " ", say(off.mm < 0 ? "off-less" : "off-more"));
}

// grown is by how much a wetted sheet has grown.
const grown = ({ name, percent }) => node("p", {}, say("grown-" + name, length(String(percent))));

// settings are what was learned of a paper and a hand, and take them into the address.
function settings(use) {
  const list = Object.entries(use);
  if (!list.length) return [node("p", {}, say("hand-nothing"))];
  return [node("ul", {}, ...list.map(([name, value]) => node("li", {}, label(name) + ": " + length(value)))),
    node("p", {}, node("button", { type: "button", click: () => settle(use) }, say("hand-take")))];
}

function settle({ caliper, ...rest }) {
  if (caliper) {
    field("stock").value = "";
    field("caliper").value = length(caliper);
  }
  Object.assign(own_, rest);
  visit();
}

$("trial-form").addEventListener("submit", (event) => learnFrom(event, "/v1/check/" + kind, typedIn("trial-form", new URLSearchParams(lying.solution.links.check.split("?")[1])), checked));
$("hand-form").addEventListener("submit", (event) => learnFrom(event, "/v1/calibrate", typedIn("hand-form", new URLSearchParams({ unit: unit() })), ({ use, growth }) => [...growth.map(grown), ...settings(use)]));
