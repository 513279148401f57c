"use strict";

const $ = (id) => document.getElementById(id);
const SERVICE = new URL($("service").src).origin;
const REST = 350; // ms without a key before what was typed is asked about
const SLOW = 1500; // ms after which the visitor is told that it takes long
const PATIENCE = 15000; // ms after which asking is given up
const RULER = "1/32 in"; // how exactly a visitor measures at her table

let kit = KITS[0];
let asking = null; // the AbortController of the question on its way
let rest = 0;

// node builds an element.
function node(tag, attributes, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  element.append(...children);
  return element;
}

// address is that of a call about a kit; values may be lists.
function address(call, { kind }, ...values) {
  const query = new URLSearchParams();
  for (const [name, value] of values.flatMap(Object.entries)) {
    for (const one of [value].flat()) query.append(name, one);
  }
  return SERVICE + "/v1/" + call + "/" + kind + "?" + query;
}

const drawing = (kit) => address("drawing", kit, { unit: "in" }, kit.made, kit.paper);
const unit = () => $("form").elements.unit.value;
const inputOf = ({ names }) => $("size-" + names[0]);

// shelve shows the kits, each with its picture as soon as it can be had.
async function shelve() {
  const links = KITS.map(({ id, title }) =>
    node("a", { href: "#" + id, class: id }, node("canvas", { width: 300, height: 200, "aria-hidden": "true" }), node("span", {}, title)));
  $("shelf").append(...links.map((link) => node("li", {}, link)));
  await customElements.whenDefined("creasefit-fold");
  const { picture } = customElements.get("creasefit-fold");
  await Promise.all(KITS.map((kit, i) => picture(drawing(kit), 0.92, 28, 34, links[i].firstChild).catch(() => {}))); // its name will do
  $("shelf").toggleAttribute("data-painted", true);
}

// show puts the kit that the address names on the counter.
function show() {
  kit = KITS.find(({ id }) => "#" + id === location.hash) ?? KITS[0];
  for (const link of $("shelf").querySelectorAll("a")) {
    if (link.hash === "#" + kit.id) link.setAttribute("aria-current", "true");
    else link.removeAttribute("aria-current");
  }
  $("kit").hidden = false;
  $("kit").className = kit.id;
  $("title").textContent = kit.title;
  $("about").textContent = kit.about;
  $("legend").textContent = "My " + kit.thing + " is";
  $("fields").replaceChildren(...kit.sizes.map(field));
  $("model").setAttribute("label", kit.title);
  $("model").setAttribute("src", drawing(kit));
  $("printed").tBodies[0].replaceChildren(...printed().map(([what, size]) => node("tr", {}, node("th", { scope: "row" }, what), node("td", {}, size))));
  leave();
}

// field is a size that the visitor types.
function field({ label, hint, names }) {
  const id = "size-" + names[0];
  return node("p", { class: "size" },
    node("label", { for: id }, label + " ", node("small", {}, hint)),
    node("input", { id, "aria-describedby": id + "-wrong", autocapitalize: "off", spellcheck: "false", placeholder: kit.made[names[0]] }),
    node("span", { id: id + "-wrong", class: "wrong" }));
}

const unbroken = (size) => size.replaceAll(" ", "\u00a0");

// printed lists what the packet says.
function printed() {
  const { blank, marks, rises = [] } = kit.printed;
  const each = marks.length / blank.length; // every piece has as many scores
  const of = (list, i) => list.slice(i * each, (i + 1) * each);
  const rows = blank.flatMap((size, i) => [
    [blank.length > 1 ? "Piece " + (i + 1) : "Cut", [size]], ["Scores, from the left", of(marks, i)], ["Scores, from the bottom", of(rises, i)],
  ]);
  const made = kit.sizes.map(({ label, names }) => kit.made[names[0]] + " " + label.toLowerCase());
  return [...rows, ["Made for", made]].filter(([, sizes]) => sizes.length).map(([what, sizes]) => [what, sizes.map(unbroken).join(", ")]);
}

// leave forgets the last question and its answer.
function leave() {
  asking?.abort("left");
  clearTimeout(rest);
  for (const size of kit.sizes) wrong(size, "");
  say("", []);
  alarm("");
}

// say shows an answer, or nothing.
function say(mark, lines, ...more) {
  $("answer").dataset.mark = mark;
  $("answer").removeAttribute("aria-busy");
  $("answer").replaceChildren(...lines.map((line, i) => node("p", i || !mark ? {} : { class: "stamp" }, line)), ...more);
}

// alarm says why there is no answer, with a way to ask again.
function alarm(text) {
  const again = node("button", { type: "button" }, "Ask again");
  again.addEventListener("click", ask);
  $("trouble").replaceChildren(...(text ? [node("p", {}, text), again] : []));
}

// wrong shows what is wrong with a size, or that nothing is.
function wrong(size, text) {
  const input = inputOf(size);
  $(input.id + "-wrong").textContent = text;
  input.setAttribute("aria-invalid", String(Boolean(text)));
}

// empty lists the sizes that nothing was typed for.
const empty = () => kit.sizes.filter((size) => !inputOf(size).value.trim());

// ask sends the question if all sizes are there.
async function ask() {
  asking?.abort("left");
  clearTimeout(rest);
  alarm("");
  if (empty().length) return leave();
  const mine = (asking = new AbortController());
  const sizes = Object.fromEntries(kit.sizes.flatMap((size) => size.names.map((name) => [name, inputOf(size).value.trim()])));
  const waits = [setTimeout(() => say("", ["Still asking; the line is slow …"]), SLOW), setTimeout(() => mine.abort("late"), PATIENCE)];
  try {
    const answer = await fetch(address("check", kit, { unit: unit(), contents_tolerance: RULER }, sizes, kit.paper, kit.printed), { signal: mine.signal, credentials: "omit" });
    const document = await answer.json();
    if (answer.ok) tell(document, sizes);
    else refuse(document);
  } catch (reason) {
    if (reason !== "left") lose(reason);
  } finally {
    waits.forEach(clearTimeout);
  }
}

// tell shows the answer, and where to get one that fits better.
function tell(check, sizes) {
  for (const size of kit.sizes) wrong(size, "");
  const { mark, title, lines } = answerIn(check, kit, unit());
  const { scores, ...paper } = kit.paper; // of other contents it may need others
  const own = SERVICE + "/?" + new URLSearchParams({ kind: kit.kind, unit: unit(), ...sizes, ...paper });
  say(mark, [title, ...lines], ...(mark === "yes" ? [] : [node("p", {}, node("a", { href: own }, "Fold one to your own size"))]));
}

// refuse shows what cannot be answered, each at the size it belongs to.
function refuse({ status, detail, errors = [] }) {
  const wrongWith = (size) => errors.find(({ name }) => size.names.includes(name));
  const sizes = kit.sizes.filter(wrongWith);
  for (const size of kit.sizes) {
    const { detail = "", hint } = wrongWith(size) ?? {};
    wrong(size, detail + (hint ? ": " + hint : ""));
  }
  say("", sizes.length ? ["Not quite yet. Look at: " + sizes.map(({ label }) => label.toLowerCase()).join(", ") + "."] : []);
  if (!sizes.length) alarm(status === 429 || status === 503 ? "Many are asking just now. Give it a moment." : "This cannot be answered: " + detail);
}

// lose says that nobody has answered.
function lose(reason) {
  say("", []);
  if (!navigator.onLine) alarm("You are offline. What you typed stays here.");
  else alarm(reason === "late" ? "Nobody has answered in time." : "The sizing service cannot be reached just now.");
}

$("form").addEventListener("input", () => {
  clearTimeout(rest);
  $("answer").setAttribute("aria-busy", "true");
  rest = setTimeout(ask, REST);
});
$("form").addEventListener("submit", (event) => {
  event.preventDefault();
  ask();
  for (const size of empty()) wrong(size, "Still to be measured.");
  if (empty().length) inputOf(empty()[0]).focus();
});
addEventListener("hashchange", show);
addEventListener("online", () => $("trouble").firstChild && ask());
shelve();
show();
