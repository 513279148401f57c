const PATIENCE = 15000; // ms until a call is given up
const LONGEST = 2000; // characters of an address that every server on the way takes
const catalogues = new Map(); // listings by address, shared by all elements of a page

// Trouble is a call that was not answered, or answered with a problem.
class Trouble extends Error {
  constructor(reason, problem, wait) {
    super(reason);
    Object.assign(this, { reason, problem, wait });
  }
}

// ask fetches; it takes no headers of its own, so that no preflight is needed.
async function ask(url, signal, body) {
  const limit = new AbortController();
  const stop = () => limit.abort();
  signal?.addEventListener("abort", stop);
  const timer = setTimeout(stop, PATIENCE);
  try {
    const answer = await fetch(url, { signal: limit.signal, credentials: "omit", ...(body && { method: "POST", body }) });
    const text = await answer.text();
    if (answer.ok) return text;
    throw new Trouble("refused", problemIn(text, answer.status), Number(answer.headers.get("Retry-After")));
  } catch (error) {
    if (error instanceof Trouble || signal?.aborted) throw error;
    throw new Trouble(limit.signal.aborted ? "late" : "unreachable");
  } finally {
    clearTimeout(timer);
    signal?.removeEventListener("abort", stop);
  }
}

// problemIn reads a problem; a proxy in between may send something else.
function problemIn(text, status) {
  try {
    const problem = JSON.parse(text);
    if (problem.detail) return { errors: [], ...problem };
  } catch {
    // not JSON: told by its status below
  }
  return { status, title: "HTTP " + status, detail: "HTTP " + status, errors: [] };
}

// calculate asks for several calculations with the same names in one request, and
// returns their answers by id. What fits into an address can be kept by caches on
// the way; plain text needs no preflight.
async function calculate(service, names, lines, signal) {
  const texts = lines.map((line) => JSON.stringify(line));
  const query = new URLSearchParams(names);
  const short = service + "v1/batch?" + new URLSearchParams([...query, ...texts.map((text) => ["lines", text])]);
  const text = await (short.length <= LONGEST ? ask(short, signal) : ask(service + "v1/batch?" + query, signal, texts.join("\n")));
  const answers = {};
  for (const { id, answer, problem, done } of text.split("\n").filter(Boolean).map((line) => JSON.parse(line))) {
    if (problem) throw new Trouble("refused", { errors: [], ...problem });
    if (done === false) throw new Trouble("late"); // cut off
    answers[id] = answer;
  }
  return answers;
}

// listing fetches a list once for all elements of the page.
function listing(url) {
  if (!catalogues.has(url)) {
    const list = ask(url).then(JSON.parse);
    catalogues.set(url, list);
    list.catch(() => catalogues.delete(url));
  }
  return catalogues.get(url);
}
