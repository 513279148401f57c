// stepsNode tells the work step by step with its pictures, and gives all of it away
// to be pasted: with pictures where they can be, else as text.
function stepsNode(guide, words) {
  const told = make("span", { role: "status" });
  const copy = async () => {
    const types = { "text/html": htmlOf(guide), "text/plain": textOf(guide) };
    try {
      await navigator.clipboard.write([new ClipboardItem(Object.fromEntries(Object.entries(types).map(([type, text]) => [type, new Blob([text], { type })])))]);
      told.textContent = words.copied;
    } catch {
      told.textContent = words.notCopied;
    }
  };
  const pictures = (step) => (step.pictures ?? []).map((text) => make("figure", { part: "step-picture" }, svgFrom(text)));
  return block("steps", words.steps, make("ol", {}, ...guide.steps.map((step) => make("li", {}, make("strong", {}, step.title), ...wordsOf(step).map((text) => make("p", {}, text)), ...pictures(step)))),
    make("p", {}, make("button", { type: "button", part: "button", click: copy }, words.copySteps), " ", told));
}

const wordsOf = ({ text, lines = [], after }) => [text, ...lines, after].filter(Boolean);

const textOf = (guide) => [guide.title, ...guide.steps.map((step, i) => [i + 1 + ". " + step.title, ...wordsOf(step)].join("\n"))].join("\n\n");

// htmlOf has pictures as images, since most editors drop drawings inside of text.
function htmlOf(guide) {
  const safe = (text) => text.replace(/[&<>]/g, (c) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;" })[c]);
  const image = (text) => `<p><img alt="" src="data:image/svg+xml,${encodeURIComponent(text)}"></p>`;
  const step = (one) => `<li><b>${safe(one.title)}</b>${wordsOf(one).map((text) => `<p>${safe(text)}</p>`).join("")}${(one.pictures ?? []).map(image).join("")}</li>`;
  return `<h3>${safe(guide.title)}</h3><ol>${guide.steps.map(step).join("")}</ol>`;
}
