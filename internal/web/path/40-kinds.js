const FIRST = 6; // kinds that are shown at once

// showKinds lays out what suits: the best first, the others behind one tap.
function showKinds({ kinds, works }) {
  const good = kinds.slice(0, works).map(card);
  $("suits").replaceChildren(...good.slice(0, FIRST));
  $("further").replaceChildren(...good.slice(FIRST));
  $("more").hidden = good.length <= FIRST;
  $("more-title").textContent = say("more-kinds", Math.max(0, good.length - FIRST));
  if ($("further").querySelector("[aria-current]")) $("more").open = true;
  const bad = kinds.slice(works);
  $("refused").hidden = bad.length === 0;
  $("refused-title").textContent = say("refused", bad.length);
  $("against").replaceChildren(...bad.map(({ kind: name, why }) => node("li", {}, node("strong", {}, titleOf(name)), ": ", complaint(because(why[0])))));
  $("kinds").hidden = false;
}

// because is a reason as a complaint: what the size would have to be stands beside.
const because = ({ code, name, detail, expected }) => ({ code, name, detail, hint: /^(at|from) /.test(expected) ? expected : "" });

// card is one kind with its picture.
function card(k) {
  const chance = hundred(k.chance);
  const facts = [chance >= 99 ? say("always") : say("chance", chance), say("minutes", Math.ceil(k.minutes)),
    k.sheets === 0 ? say("beyond") : k.sheets > 1 ? say("sheets", k.sheets) : "", ...k.missed.map((wish) => (wish === "mail" ? say("no-letter") : say("missed", say(wish))))];
  const link = node("a", { href: chosen(k.kind), class: "card", "data-kind": k.kind, "aria-current": k.kind === kind && "true", click: (event) => {
    if (event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    pick(k.kind);
  } }, drawing(k.picture), node("span", { class: "name" }, titleOf(k.kind)), node("span", { class: "facts" }, facts.filter(Boolean).join(" · ")));
  if (chance < 80 || k.sheets === 0) link.classList.add("doubtful");
  return node("li", {}, link);
}

// chosen is the address with another kind.
function chosen(name) {
  const query = new URLSearchParams(address().slice(1));
  for (const old of Object.keys(own_)) query.delete(old);
  query.set("kind", name);
  return "?" + query;
}

// pick takes a kind: a page to come back from.
function pick(name) {
  if (name !== kind) own_ = {};
  kind = name;
  visit();
  landed = false;
}

let landed = true; // what was picked is in sight
