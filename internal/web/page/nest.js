
const round = []; // kinds that go round what lies on the bench, from the inside out
let nestings = 0; // asked for, so that a late answer is not shown
let beside; // the names of a portfolio, fetched when first needed

// nesting is the query of what lies on the bench with all that goes round it:
// the names that a portfolio knows stand beside its layers, the others are the
// first layer's own.
async function nesting() {
  if (!beside) {
    const { parameters } = await (await fetch("/v1/kinds/portfolio")).json();
    beside = new Set(parameters.map((parameter) => parameter.name));
  }
  const query = new URLSearchParams();
  const first = { kind: $("solver").getAttribute("kind") };
  for (const [name, value] of Object.entries($("solver").values)) {
    if (beside.has(name)) query.set(name, value);
    else first[name] = value;
  }
  for (const layer of [first, ...round.map((kind) => ({ kind }))]) query.append("layers", JSON.stringify(layer));
  return query;
}

// nest shows what goes round what lies on the bench.
async function nest() {
  const asked = ++nestings;
  showRound();
  if (!round.length) return;
  let shown;
  try {
    const answer = await fetch("/v1/solve/portfolio?" + (await nesting()));
    const body = await answer.json();
    shown = answer.ok ? nested(body) : [node("p", { className: "wrong" }, `These do not go round one another: ${body.detail}.`)];
  } catch {
    shown = [node("p", { className: "wrong" }, "The answer cannot be fetched just now.")];
  }
  if (asked === nestings) $("nested").replaceChildren(...shown);
}

function nested({ pieces, chain, outside, links }) {
  const rows = pieces.map((piece) => node("li", {}, node("strong", {}, piece.layer === piece.name ? piece.name : `${piece.layer}, ${piece.name}`),
    `: ${piece.quantity > 1 ? piece.quantity + " of " : ""}${piece.blank.width.reading} by ${piece.blank.height.reading}`));
  const least = Math.min(1, ...chain.flatMap((link) => link.fit.map((fit) => fit.chance)));
  const closed = [outside.width, outside.height, outside.thickness].map((length) => length.reading).join(" × ");
  const to = (text, href) => node("a", { href, target: "_blank", rel: "noopener" }, text);
  return [node("p", {}, `Closed it measures ${closed}. Every layer goes in at least ${Math.floor(100 * least)} times in 100.`), node("ul", {}, ...rows),
    node("p", { className: "links" }, to("All patterns", links.drawing), " ", to("Guide", links.guide + "&format=html"), " ", to("To print", links.guide + "&format=pdf"))];
}

function showRound() {
  listed($("round"), round, (kind) => $("outer").querySelector(`option[value="${kind}"]`).text, nest);
  if (!round.length) $("nested").replaceChildren();
}

$("nest").addEventListener("submit", (event) => {
  event.preventDefault();
  round.push($("outer").value);
  nest();
});
$("solver").addEventListener("creasefit-solution", nest);
