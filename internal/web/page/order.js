
const basket = []; // enclosures put aside: { kind, title, values, count }

// current is what lies on the bench, as an item of an order.
function current() {
  const kind = $("solver").getAttribute("kind");
  return { kind, values: { ...$("solver").values }, title: $("model").getAttribute("label") ?? kind, count: $("count").value.trim() };
}

// orderOf is the request of all items. The unit and the decimal mark are the
// order's, and so is the sheet with its grain.
function orderOf(items) {
  const { unit, decimal } = items[0].values;
  return {
    unit, ...(decimal && { decimal }), sheet: $("sheets").value, margin: $("margin").value,
    items: items.map(({ kind, values, count }, i) => {
      const { unit, decimal, sheet, grain, ...rest } = values;
      return { kind, name: kind + " " + (i + 1), count: Number(count), ...rest };
    }),
  };
}

// send posts the order and returns the text of the answer.
async function send(order, format) {
  const answer = await fetch("/v1/yield?format=" + format, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(order) });
  const text = await answer.text();
  if (answer.ok) return text;
  throw new Error(JSON.parse(text).detail);
}

// plan shows how few sheets the order takes, and how to cut them.
async function plan(event) {
  event?.preventDefault();
  const order = orderOf([...basket, current()]);
  try {
    const [answer, picture] = await Promise.all([send(order, "json").then(JSON.parse), send({ ...order, theme: matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "light" }, "svg")]);
    $("plan").replaceChildren(...planned(answer), drawn(picture));
  } catch (error) {
    $("plan").replaceChildren(node("p", { className: "wrong" }, `This order cannot be planned: ${error.message}.`));
  }
}

function planned(answer) {
  const sheets = answer.sheets === 1 ? "1 sheet" : answer.sheets + " sheets";
  const proof = answer.proven ? "No plan needs fewer." : `Fewer than ${answer.lower_bound} are impossible.`;
  const plans = answer.plans.map((p, i) => node("details", { open: i === 0 },
    node("summary", {}, p.times === 1 ? "Cut one sheet like this" : `Cut ${p.times} sheets like this`),
    node("ol", {}, ...p.steps.map((step) => node("li", {}, step)))));
  return [node("p", {}, node("strong", {}, sheets + "."), ` ${proof} ${Math.floor(100 * answer.used)} per cent of the paper is used.`), ...plans];
}

function drawn(picture) {
  const svg = new DOMParser().parseFromString(picture, "image/svg+xml").documentElement;
  const figure = node("figure", {}, document.importNode(svg, true));
  figure.setAttribute("aria-label", "Cut plan");
  return figure;
}

// putAside keeps what lies on the bench for the order, so that another kind
// can be added to it.
function putAside() {
  basket.push(current());
  showBasket();
  document.querySelector("#shelf a:not([aria-current])")?.focus();
}

function showBasket() {
  listed($("basket"), basket, (item) => `${item.count} of ${item.title}`, showBasket);
}

$("order").addEventListener("submit", plan);
$("put").addEventListener("click", putAside);
