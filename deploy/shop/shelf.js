import { fromExport, fromStructuredData } from "./products.js";

const $ = (id) => document.getElementById(id);
const SERVICE = new URL($("service").href).origin;
const SIZES = ["width", "height", "thickness"];
const SURE = 0.95; // a chance that may be called a yes
const RULER = { mm: "1 mm", in: "1/32 in" }; // how exactly a visitor measures at her table

let products = [];
let asking = null; // the AbortController of the question on its way

// stock fills the list from the export it names, or from the page's own data.
async function stock() {
  const source = $("products").dataset.products;
  products = source ? fromExport(await (await fetch(source)).text()) : fromStructuredData(document);
  $("products").replaceChildren(...products.map(({ id, title, price }) => {
    const item = document.createElement("li");
    item.dataset.id = id;
    for (const [kind, text] of [["h2", title], ["p", price], ["p", ""]]) item.append(Object.assign(document.createElement(kind), { textContent: text }));
    item.lastChild.className = "says";
    return item;
  }));
  $("products").toggleAttribute("data-stocked", true);
}

// room writes how much is left, or missing.
const room = ({ left }, unit) => (unit === "mm" ? `${Math.abs(Math.round(left.mm * 10) / 10)} mm` : `${Math.abs(Math.round(left.in * 32) / 32)} in`);

// sentence answers for one product.
function sentence({ fits, verdict, chance, room: rooms, why }, unit) {
  const tightest = [...rooms].sort((a, b) => a.left.mm - b.left.mm)[0];
  if (verdict === "refused") return ["no", `No answer: ${why[0] ?? "it cannot be compared"}.`];
  if (!fits) return ["no", tightest?.left.mm < 0 ? `No: ${room(tightest, unit)} too large along the ${tightest.axis}.` : `No: ${why[0] ?? "it does not go in"}.`];
  if (chance < SURE) return ["perhaps", `Perhaps: about ${Math.round(chance * 100)} times in 100.`];
  if (verdict === "snug") return ["yes", "Yes, snugly."];
  return ["yes", `Yes, with ${room(tightest, unit)} to spare along the ${tightest.axis}.`];
}

// ask asks once for everything on the shelf. A form is sent without a preflight.
async function ask(event) {
  event.preventDefault();
  asking?.abort("left");
  const mine = (asking = new AbortController());
  const form = new FormData($("mine"));
  const unit = form.get("unit");
  const body = new URLSearchParams({ unit, contents_tolerance: RULER[unit] });
  for (const name of SIZES) {
    if (form.get(name).trim()) body.append(name, form.get(name).trim());
  }
  for (const { id, width, height, thickness } of products) body.append("holders", JSON.stringify({ id, width, height, thickness }));
  $("trouble").textContent = "";
  try {
    const answer = await fetch(SERVICE + "/v1/match", { method: "POST", body, signal: mine.signal, credentials: "omit" });
    const document = await answer.json();
    if (answer.ok) tell(document, unit);
    else refuse(document);
  } catch (reason) {
    if (reason !== "left") $("trouble").textContent = "The sizing service cannot be reached just now.";
  }
}

// tell shows the answers, each at its product.
function tell({ ranked }, unit) {
  wrong([]);
  for (const item of $("products").children) {
    const answer = ranked.find(({ id }) => id === item.dataset.id);
    const [mark, text] = answer ? sentence(answer, unit) : ["", ""];
    item.dataset.mark = mark;
    item.querySelector(".says").textContent = text;
  }
}

// refuse shows what cannot be answered, at the size it belongs to.
function refuse({ detail, errors = [] }) {
  tell({ ranked: [] });
  wrong(errors);
  if (!errors.some(({ name }) => SIZES.includes(name))) $("trouble").textContent = "This cannot be answered: " + detail;
}

function wrong(errors) {
  for (const name of SIZES) {
    const error = errors.find((e) => e.name === name);
    $(name + "-wrong").textContent = error ? error.detail : "";
    $(name).setAttribute("aria-invalid", String(Boolean(error)));
  }
}

$("mine").addEventListener("submit", ask);
stock();
