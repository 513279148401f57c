const TYPING = 250; // ms without a key before a request is sent
const LONGEST = 2000; // characters of an address that every server on the way takes
const KEPT = "creasefit-last";
let kind = ""; // that is chosen
let own_ = {}; // the kind's own names and further ones that no field shows
let asked = 0; // requests sent, so that a late answer is not shown
let waiting;

// plain is what was typed as the service reads it in every language.
const plain = (text) => text.trim().replace(/\u00a0/g, " ");

// common is what all kinds are asked for.
function common() {
  const names = {};
  const contents = field("contents").value;
  for (const name of ["unit", "contents", ...SIZES, "stock", "caliper", "sheet", "bench", "ruler", "fit"]) {
    const value = plain(field(name).value);
    const said = (contents && (name === "width" || name === "height") && !SEVERAL.test(value)) || (name === "caliper" && field("stock").value);
    const usual = (name === "bench" && value === "hand") || (name === "fit" && value === "easy") || (name === "ruler" && value === USUAL[unit()].ruler);
    if (value && !said && !usual) names[name] = value;
  }
  if (contents && names.thickness && length(THINGS.get(contents).size.split("|")[2]) === field("thickness").value) delete names.thickness;
  return names;
}

// round says that the contents are round.
const round = () => field("shape").checked;

// kindNames are what the chosen kind alone is asked for.
const kindNames = () => ({ ...own_, ...(round() && DATA.round.includes(kind) && { shape: "round" }) });

// further is what only the list of kinds is asked for.
function further() {
  const wish = [...form.querySelectorAll("[name=wish]:checked")].map((box) => box.value);
  const post = field("post").value;
  return { ...(round() && { shape: "round" }), ...(wish.length && { wish: wish.filter((name) => name !== "one-sheet" || field("sheet").value) }), ...(post && { post }) };
}

// address is the page with everything that was typed.
function address() {
  const query = new URLSearchParams({ ...common(), ...(kind && { kind }), ...own_ });
  for (const [name, value] of Object.entries(further())) for (const one of [value].flat()) query.append(name, one);
  return "?" + query;
}

// visit makes what stands there the page's address, as a page to come back to.
function visit() {
  if (address() !== location.search) history.pushState(null, "", address());
  show();
}

// typed keeps the address as it is typed and asks after a pause.
function typed(event) {
  const { name } = event.target;
  if (!name) return;
  if (SIZES.includes(name)) own(name);
  if (name === "width" || name === "shape") roundOff();
  if (name === "unit") changeUnit(event.target.value);
  if ("own" in event.target.dataset) {
    if (plain(event.target.value)) own_[name] = plain(event.target.value);
    else delete own_[name];
  }
  const address_ = address();
  if (address_ === location.search) return; // leaving a field changes nothing
  if (event.type === "change" && event.target.type !== "text") history.pushState(null, "", address_);
  else history.replaceState(null, "", address_);
  show(event.target.type === "text" ? TYPING : 0);
}

// fill puts the values of an address into the fields.
function fill(search) {
  const given = new URLSearchParams(search);
  field("unit").value = given.get("unit") ?? (WORDS.language === "en" ? "in" : "mm");
  rulers();
  const usual = { stock: given.has("caliper") ? "" : "index-110", sheet: search ? "" : USUAL[unit()].sheet, bench: "hand", fit: "easy", ruler: USUAL[unit()].ruler };
  for (const name of ["contents", ...SIZES, "stock", "caliper", "sheet", "bench", "ruler", "fit", "post"]) {
    const value = given.get(name) ?? usual[name] ?? "";
    if (field(name).tagName === "SELECT" && value && ![...field(name).options].some((o) => o.value === value)) field(name).append(node("option", { value }, length(value)));
    field(name).value = /^\d.* (in|mm)$/.test(value) && field(name).type === "text" ? length(value) : value;
  }
  const thing = THINGS.get(given.get("contents"));
  if (thing) thing.size.split("|").forEach((text, i) => { if (text && !given.has(SIZES[i])) field(SIZES[i]).value = length(text); });
  field("shape").checked = given.get("shape") === "round";
  for (const box of form.querySelectorAll("[name=wish]")) box.checked = given.getAll("wish").includes(box.value);
  kind = DATA.kinds.some((k) => k.name === given.get("kind")) ? given.get("kind") : "";
  const known = new Set(["unit", "contents", ...SIZES, "stock", "caliper", "sheet", "bench", "ruler", "fit", "post", "wish", "kind", "decimal", "shape"]);
  own_ = Object.fromEntries([...given].filter(([name]) => !known.has(name) && /^[a-z][a-z0-9_]*$/.test(name)));
}

// show follows what stands in the fields: the picture, the address, the answer.
function show(wait = 0) {
  marked();
  block();
  clearTimeout(waiting);
  const language = $("language");
  language.href = WORDS.page["other-path"] + location.search;
  try {
    localStorage.setItem(KEPT, location.search);
  } catch {
    // a browser that keeps nothing shows all the same
  }
  const missing = [...(field("width").value ? [] : ["width"]), ...(field("stock").value || field("caliper").value ? [] : ["caliper"])];
  if (missing.length) {
    asked++;
    away();
    $("status").textContent = $("thing").contains(document.activeElement) || location.search ? say("needed", missing.map(label).join(", ")) : "";
    return;
  }
  document.body.setAttribute("aria-busy", "true");
  waiting = setTimeout(ask, wait);
}

// away takes answers off that are no longer those of what stands above.
function away() {
  document.body.removeAttribute("aria-busy");
  for (const id of ["kinds", "sizes", "make"]) $(id).hidden = true;
}

// ask sends one request for all that is shown.
async function ask() {
  const turn = ++asked;
  const names = common();
  const typed_ = [...SIZES, "caliper"].map((name) => names[name]).filter(Boolean);
  if (typed_.some((text) => text.includes(",")) && !typed_.some((text) => text.includes("."))) names.decimal = "comma";
  const { language } = WORDS;
  const lines = [{ id: "kinds", call: "suggest", ...further(), pictures: pictures(), language }];
  if (kind) {
    lines.push({ id: "solve", call: "solve/" + kind, ...kindNames() });
    lines.push({ id: "guide", call: "guide/" + kind, ...kindNames(), pictures: pictures(), language });
  }
  let answers;
  try {
    answers = await batch(names, lines.map((line) => JSON.stringify(line)));
  } catch {
    if (turn === asked) unreachable();
    return;
  }
  if (turn === asked) told(answers, names);
}

// batch asks for lines that have names in common, and returns their answers by id. What
// fits into an address can be kept by caches on the way.
async function batch(names, lines) {
  const query = new URLSearchParams(names);
  const short = "/v1/batch?" + new URLSearchParams([...query, ...lines.map((line) => ["lines", line])]);
  const answer = await (short.length <= LONGEST ? fetch(short) : fetch("/v1/batch?" + query, { method: "POST", headers: { "Content-Type": "application/x-ndjson" }, body: lines.join("\n") }));
  if (!answer.ok) throw new Error(answer.status);
  const told_ = (await answer.text()).trim().split("\n").map((line) => JSON.parse(line));
  return Object.fromEntries(told_.map((line) => [line.id, line]));
}

function unreachable() {
  $("status").textContent = say("unreachable");
  clearTimeout(waiting);
  waiting = setTimeout(ask, 5000);
}

// told shows the answers, or what is wrong at its fields.
function told({ kinds, solve, guide }, names) {
  document.body.removeAttribute("aria-busy");
  right();
  if (kinds.problem) return wrong(kinds.problem);
  showKinds(kinds.answer);
  if (!kind) {
    $("sizes").hidden = $("make").hidden = true;
    $("status").textContent = say("found", { n: kinds.answer.works, kind: titleOf(kinds.answer.kinds[0].kind) });
  } else if (solve.problem) {
    $("make").hidden = true;
    showRefusal(solve.problem);
  } else {
    showSizes(solve.answer, guide.answer, kinds.answer.kinds.find((k) => k.kind === kind), names);
  }
}

const titleOf = (name) => DATA.kinds.find((k) => k.name === name).title;

// right takes complaints off.
function right() {
  $("trouble").hidden = true;
  for (const mark of form.querySelectorAll(".wrong")) mark.remove();
  for (const input of form.querySelectorAll("[aria-invalid]")) {
    input.removeAttribute("aria-invalid");
    input.removeAttribute("aria-describedby");
  }
}

// wrong shows what is wrong with the thing or the paper.
function wrong(problem) {
  away();
  complain(problem);
  $("status").textContent = say("wrong");
}

// complain puts each complaint at its field, and the others together.
function complain(problem) {
  const elsewhere = [];
  for (const fault of problem.errors?.length ? problem.errors : [problem]) {
    const input = fault.name && form.querySelector(`[name="${CSS.escape(fault.name)}"]:not([type=hidden])`);
    if (!input || input.getAttribute("aria-invalid")) elsewhere.push(fault);
    else {
      const mark = node("span", { class: "wrong", id: "wrong-" + fault.name }, complaint(fault));
      input.closest("details")?.setAttribute("open", "");
      input.setAttribute("aria-invalid", "true");
      input.setAttribute("aria-describedby", mark.id);
      input.after(mark);
    }
  }
  $("trouble").replaceChildren(...elsewhere.map((fault) => node("p", {}, complaint(fault))));
  $("trouble").hidden = elsewhere.length === 0;
}
