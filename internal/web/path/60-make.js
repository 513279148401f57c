let printer = false; // the paper in the printer was chosen
let lying; // what lies on the bench: its solution and the names it was asked with

// showMake leads on: to paper, to the post, round another thing, to other pages.
function showMake(solution, suggestion, names) {
  lying = { solution, names: { ...names, ...kindNames() } };
  if (!printer) $("print-on").value = unit() === "in" ? "letter" : "a4";
  prints();
  model();
  mailed(suggestion.post);
  snippets();
  trial();
  forgetPlan();
  $("nested").replaceChildren();
  $("keep-name").value = titleOf(kind);
  $("make").hidden = false;
}

// to is an address about what lies on the bench.
function to(call, more) {
  return `/v1/${call}/${kind}?` + new URLSearchParams({ ...lying.names, ...more });
}

// model shows the enclosure folding, once somebody wants to see it.
function model() {
  if (!$("folded").open) return;
  if (!customElements.get("creasefit-fold") && !document.querySelector("script[data-fold]")) {
    document.head.append(node("script", { src: DATA.fold.pinned, integrity: DATA.fold.integrity, "data-fold": true }));
  }
  if (!$("model").firstChild) $("model").append(node("creasefit-fold", { label: titleOf(kind) }));
  const { width, height, thickness } = lying.solution.outside;
  const shown = $("model").firstChild;
  shown.setAttribute("label", titleOf(kind));
  shown.setAttribute("measures", [width, height, thickness].map((l) => length(l.reading)).join(" × "));
  shown.setAttribute("src", to("drawing", {}));
}

function prints() {
  const { language } = WORDS;
  const paper = $("print-on").value;
  const ways = [["guide", to("guide", { language, format: "html" })], ["guide-pdf", to("guide", { language, paper, format: "pdf" })],
    ["template", to("drawing", { language, paper, view: "template", format: "pdf" })], ["measured", to("drawing", { language, paper, format: "pdf" })]];
  if (DATA.designs.includes(kind) && !kindNames().shape) ways.push(["mine", mine()]);
  $("prints").replaceChildren(...ways.map(([key, href]) => node("li", {}, node("a", { href, id: "print-" + key }, say(key)))));
}

// mine is where this enclosure can be changed panel by panel.
function mine() {
  const { given, unit: rule } = lying.solution;
  const sizes = ["width", "height", "thickness", "caliper"].filter((name) => given[name]).map((name) => [name, given[name][rule]]);
  const { contents, stock, ...names } = lying.names; // the presets' sizes are written out
  return (WORDS.language === "en" ? "" : "/" + WORDS.language) + "/own?" + new URLSearchParams({ kind, ...names, unit: rule, ...Object.fromEntries(sizes) });
}

// mailed says what the chosen post makes of it, and all posts once that is wanted.
function mailed(posted) {
  $("mail-part").hidden = !posted;
  if (!posted) return;
  const { mail } = lying.solution.links;
  const all = node("details", { toggle: (event) => event.target.open && event.target.childElementCount === 1 && everyPost(event.target, mail) }, node("summary", {}, say("mail-more")));
  $("mailed").replaceChildren(node("p", {}, verdict(posted), " ", say("mail-advice")), all);
}

function verdict({ post, verdict: how, class: class_ }) {
  const known = DATA.posts.find((p) => p.name === post);
  return say({ takes: "mail-takes", "may-take": "mail-may", none: "mail-none" }[how], { post: known.title, class: known.classes[class_] });
}

async function everyPost(list, mail) {
  const answer = await fetch(mail + "&language=" + WORDS.language);
  const { posts = [] } = await answer.json();
  const limit = (post) => post.nearest ?? post.not_in.at(-1)?.reasons[0]; // of the class, else what keeps it out of the largest
  list.append(node("ul", {}, ...posts.map((post) => node("li", {}, [verdict(post), limit(post)?.detail].filter(Boolean).join(" — ")))));
}

// nest puts one kind round what lies on the bench.
async function nest(event) {
  event.preventDefault();
  const layers = [JSON.stringify({ kind, ...kindNames() }), JSON.stringify({ kind: $("outer").value })];
  const { names } = lying;
  const query = new URLSearchParams(Object.entries(names).filter(([name]) => !(name in kindNames())));
  for (const layer of layers) query.append("layers", layer);
  const answer = await fetch("/v1/solve/portfolio?" + query);
  const body = await answer.json();
  if (!answer.ok) return void $("nested").replaceChildren(node("p", { class: "wrong" }, say("nest-wrong")));
  const { width, height, thickness } = body.outside;
  query.set("language", WORDS.language);
  $("nested").replaceChildren(node("p", {}, say("nest-shown", { size: [width, height, thickness].map((l) => length(l.reading)).join(" × "), n: hundred(body.sure.chance) })),
    node("ul", {}, ...body.pieces.map((piece) => node("li", {}, `${titleOf(piece.layer)}: ${length(piece.blank.width.reading)} ${say("by")} ${length(piece.blank.height.reading)}`))),
    node("p", {}, node("a", { href: "/v1/guide/portfolio?" + query + "&format=html" }, say("nest-guide"))));
}

// snippets are the lines that put the question on another page.
function snippets() {
  const escape = (text) => text.replace(/[&"<>]/g, (c) => ({ "&": "&amp;", '"': "&quot;", "<": "&lt;", ">": "&gt;" })[c]);
  const given = Object.entries({ kind, ...lying.names, lang: WORDS.language }).map(([name, value]) => ` ${name}="${escape(value)}"`).join("");
  const { origin } = location;
  const { path, pinned, integrity } = DATA.element;
  const link = origin + location.pathname + address();
  const element = `<creasefit-solver${given}><a href="${escape(link)}">${escape(titleOf(kind))}</a></creasefit-solver>`;
  const frame = origin + "/frame?" + new URLSearchParams({ kind, ...lying.names, lang: WORDS.language });
  const solve = origin + to("solve", {});
  const all = [["link", link], ["evergreen", `<script src="${origin}${path}" defer></script>\n${element}`],
    ["frame", `<iframe src="${escape(frame)}" title="${escape(titleOf(kind))}" width="100%" height="900" loading="lazy"></iframe>`],
    ["pinned", `<script src="${origin}${pinned}" integrity="${integrity}" crossorigin="anonymous" defer></script>\n${element}`],
    ["prompt", `curl '${solve}&format=text'`], ["cell", `=WEBSERVICE("${solve}&pick=/pieces/0/blank/width/${lying.solution.unit}")`]];
  $("snippets").replaceChildren(...all.map(([key, text]) => node("div", {}, node("h4", { id: key + "-title" }, say(key)),
    node("pre", { tabindex: "0", "aria-labelledby": key + "-title" }, node("code", { id: key }, text)), node("button", { type: "button", "data-copy": key, click: () => copy(key) }, say("copy")))));
}

// copy puts lines on the clipboard, or selects them where that is refused.
async function copy(id) {
  try {
    await navigator.clipboard.writeText($(id).textContent);
    $("copied").textContent = say("copied");
  } catch {
    getSelection().selectAllChildren($(id));
    $("copied").textContent = say("selected");
  }
}

$("folded").addEventListener("toggle", () => lying && model());
$("nest").addEventListener("submit", nest);
$("print-on").addEventListener("change", () => {
  printer = true;
  prints();
});
