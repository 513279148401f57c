// arrive shows the page of an address.
function arrive() {
  fill(location.search);
  show();
}

// resume goes on where this browser was left, unless an address says otherwise.
function resume() {
  try {
    const last = localStorage.getItem(KEPT);
    if (!location.search && last) history.replaceState(null, "", last);
  } catch {
    // a browser that keeps nothing begins anew
  }
}

form.addEventListener("input", typed);
form.addEventListener("change", typed);
form.addEventListener("submit", (event) => event.preventDefault());
addEventListener("popstate", arrive);
addEventListener("online", () => show());
$("shut").addEventListener("click", () => $("large").close());
$("anew").addEventListener("click", (event) => {
  event.preventDefault();
  history.pushState(null, "", location.pathname);
  fill("");
  show();
  field("width").focus();
});
matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => show());
chips();
resume();
arrive();
showKept();
