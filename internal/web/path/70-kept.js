const SHELF = "creasefit-pieces";

// kept are the pieces that this browser keeps: names and addresses.
function kept() {
  try {
    return JSON.parse(localStorage.getItem(SHELF) ?? "[]").filter(isPiece);
  } catch {
    return [];
  }
}

const isPiece = (piece) => typeof piece?.name === "string" && /^\?[^#]*$/.test(piece?.search);

function keepAll(pieces) {
  localStorage.setItem(SHELF, JSON.stringify(pieces));
  showKept();
}

function showKept() {
  const pieces = kept();
  $("kept").replaceChildren(...pieces.map((piece, i) => node("li", {}, node("a", { href: piece.search, click: (event) => {
    event.preventDefault();
    history.pushState(null, "", piece.search);
    arrive();
  } }, piece.name), " ", node("button", { type: "button", "aria-label": say("remove", piece.name), click: () => keepAll(pieces.toSpliced(i, 1)) }, "×"))));
  if (!pieces.length) $("kept").append(node("li", { class: "quiet" }, say("kept-none")));
  $("export").disabled = !pieces.length;
}

// save gives all pieces to a file; read takes those of a file in.
function save() {
  const url = URL.createObjectURL(new Blob([JSON.stringify({ pieces: kept() }, null, 1)], { type: "application/json" }));
  node("a", { href: url, download: "creasefit-pieces.json" }).click();
  setTimeout(() => URL.revokeObjectURL(url), 1000);
}

async function read() {
  const [file] = $("file").files;
  $("file").value = "";
  try {
    const pieces = JSON.parse(await file.text()).pieces.filter(isPiece);
    if (!pieces.length) throw new Error();
    const known = kept();
    keepAll([...known, ...pieces.filter((piece) => !known.some((k) => k.search === piece.search && k.name === piece.name))]);
    $("kept-said").textContent = "";
  } catch {
    $("kept-said").textContent = say("import-wrong");
  }
}

$("keep").addEventListener("submit", (event) => {
  event.preventDefault();
  keepAll([...kept(), { name: $("keep-name").value.trim() || titleOf(kind), search: address() }]);
});
$("export").addEventListener("click", save);
$("import").addEventListener("click", () => $("file").click());
$("file").addEventListener("change", read);
