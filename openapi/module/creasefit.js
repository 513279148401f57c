// Creasefit 0.1.0: one function a call. Made from the specification; needs nothing else.

const OF_KIND = ["adapt","check","drawing","guide","solve"]; // about one kind: name(kind, names, how)
const PLAIN = {"calibrate":"/v1/calibrate","mail":"/v1/mail","match":"/v1/match","ruler":"/v1/ruler","stock":"/v1/stock","suggest":"/v1/suggest","yield":"/v1/yield"}; // name(names, how)
const LISTS = {"benches":"/v1/benches","contents":"/v1/contents","designs":"/v1/designs","kind":"/v1/kinds/{kind}","kindDesign":"/v1/kinds/{kind}/design","kinds":"/v1/kinds","limits":"/v1/limits","posts":"/v1/posts","sheets":"/v1/sheets/sizes","stocks":"/v1/stocks"}; // name(how), or name(kind, how)
const LONGEST = 1800; // characters of an address; longer requests go by POST
const KEPT = 100; // answers that are asked for again by their tag
const TEXTS = /^(text\/|image\/svg|image\/vnd\.dxf|application\/(json|xml|.*\+json|.*\+xml))/;

/** What the service says is wrong (RFC 9457). */
export class CreasefitProblem extends Error {
  constructor(problem, status) {
    super(problem.detail ?? "HTTP status " + status);
    this.name = "CreasefitProblem";
    this.status = status;
    this.problem = problem;
    this.errors = problem.errors ?? [];
  }
}

const wait = (seconds, signal) => new Promise((done, fail) => {
  const gone = () => { clearTimeout(timer); fail(signal.reason); };
  const timer = setTimeout(() => { signal?.removeEventListener("abort", gone); done(); }, seconds * 1000);
  signal?.addEventListener("abort", gone, { once: true });
});

/** The service at an address; by default where this module comes from. */
export function creasefit(base = new URL(import.meta.url).origin, { fetch = globalThis.fetch, tries = 3, headers = {} } = {}) {
  const known = new Map(); // addresses to what they were answered with, the oldest first
  const root = String(base).replace(/\/+$/, "");

  // send asks, and again after the time that a busy service names.
  async function send(address, options) {
    for (let left = tries; ; left--) {
      options.signal?.throwIfAborted();
      const response = await fetch(address, { ...options, headers: { ...headers, ...options.headers } });
      if (response.ok || response.status === 304) return response;
      const busy = response.status === 503 || response.status === 429;
      if (!busy || left <= 1) {
        const isProblem = /json/.test(response.headers.get("Content-Type") ?? "");
        throw new CreasefitProblem(isProblem ? await response.json() : {}, response.status);
      }
      await response.body?.cancel();
      await wait(Number(response.headers.get("Retry-After")) || 1, options.signal);
    }
  }

  async function read(response) {
    const media = response.headers.get("Content-Type") ?? "";
    if (/^application\/json/.test(media)) return response.json();
    return TEXTS.test(media) ? response.text() : response.blob();
  }

  // ask makes a request short enough for an address a GET, whose answer may be
  // kept, and any other a POST.
  async function ask(path, names, { format, signal, post = false } = {}) {
    const query = new URLSearchParams();
    let plain = !post;
    for (const [name, value] of Object.entries(names ?? {})) {
      for (const one of [value].flat()) {
        plain &&= typeof one !== "object";
        query.append(name, one);
      }
    }
    if (format) query.append("format", format);
    const address = root + path + (query.size ? "?" + query : "");
    if (!plain || address.length > LONGEST) {
      const how = format ? "?format=" + encodeURIComponent(format) : "";
      return read(await send(root + path + how, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(names), signal }));
    }
    const kept = known.get(address);
    const response = await send(address, { headers: kept ? { "If-None-Match": kept.tag } : {}, signal });
    if (response.status === 304) return structuredClone(kept.value);
    const value = await read(response);
    const tag = response.headers.get("ETag");
    if (tag) {
      known.delete(address);
      known.set(address, { tag, value: structuredClone(value) });
      if (known.size > KEPT) known.delete(known.keys().next().value);
    }
    return value;
  }

  // batch yields the answers to lines in their order; names hold for all lines.
  async function* batch(lines, names = {}, { signal } = {}) {
    const query = new URLSearchParams(names);
    const body = Array.from(lines, (line) => JSON.stringify(line)).join("\n");
    const response = await send(root + "/v1/batch" + (query.size ? "?" + query : ""), { method: "POST", headers: { "Content-Type": "application/x-ndjson" }, body, signal });
    let rest = "";
    for await (const text of response.body.pipeThrough(new TextDecoderStream())) {
      const whole = (rest + text).split("\n");
      rest = whole.pop();
      for (const line of whole) {
        const answer = JSON.parse(line);
        if (answer.done) return;
        if (answer.done === false) throw new CreasefitProblem({ detail: answer.why }, 503);
        yield answer;
      }
    }
    throw new CreasefitProblem({ detail: "the stream ended before it was done" }, 0);
  }

  // table sends a table as it was exported and returns the one that comes back.
  const table = async (text, names = {}, { signal } = {}) =>
    (await send(root + "/v1/batch?" + new URLSearchParams(names), { method: "POST", headers: { "Content-Type": "text/csv" }, body: text, signal })).text();

  const service = { batch, table };
  for (const call of OF_KIND) service[call] = (kind, names, how) => ask(`/v1/${call}/${encodeURIComponent(kind)}`, names, how);
  for (const [call, path] of Object.entries(PLAIN)) service[call] = (names, how) => ask(path, names, how);
  for (const [call, path] of Object.entries(LISTS)) {
    service[call] = path.includes("{kind}") ? (kind, how) => ask(path.replace("{kind}", encodeURIComponent(kind)), {}, how) : (how) => ask(path, {}, how);
  }
  return service;
}
