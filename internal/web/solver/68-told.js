const SETTLED = 900; // ms without a key before a field being typed in is called wrong
const SLOW = 1500; // ms after which a caller is told that it takes long

// Told is the element as far as it tells how its calls go: that they take long, what
// is wrong with them and where, and that there was no answer, which it asks for again.
class Told extends HTMLElement {
  root = this.attachShadow({ mode: "open" });
  timers = {};
  last = 0; // when a key was pressed
  failures = 0; // calls without an answer, in a row

  constructor() {
    super();
    this.root.adoptedStyleSheets = [sheet];
    this.body = make("div", { class: "body" });
    this.status = make("p", { class: "status", role: "status", part: "status" });
    this.trouble = make("div", { class: "trouble", part: "problem", hidden: true });
    this.answer = make("div", { class: "answer-area" });
    this.inside = make("slot");
    this.root.append(this.body, this.status, this.trouble, this.answer, this.inside);
  }

  // slowly tells when an answer takes long.
  slowly() {
    clearTimeout(this.timers.slow);
    this.timers.slow = setTimeout(() => this.say(this.words.slow), SLOW);
  }

  clear() {
    clearTimeout(this.timers.slow);
    this.removeAttribute("aria-busy");
    this.trouble.hidden = true;
    this.trouble.replaceChildren();
    for (const field of this.sentence?.fields.values() ?? []) field.show(null);
  }

  say(text) {
    if (this.status.textContent !== text) this.status.textContent = text;
  }

  // fail shows a problem at its fields, but lets a field that is being typed
  // in come to rest first.
  fail(error) {
    if (!(error instanceof Trouble)) throw error;
    const rest = SETTLED - (performance.now() - this.last);
    const wait = error.problem && this.last && this.root.activeElement ? Math.max(0, rest) : 0;
    this.timers.fail = setTimeout(() => this.#tell(error), wait);
  }

  #tell(error) {
    const held = this.trouble.contains(this.root.activeElement);
    this.clear();
    if (this.solution) this.answer.classList.add("stale");
    if (error.problem && error.problem.status < 500 && error.problem.status !== 429) this.#wrong(error.problem);
    else this.#away(error);
    if (held) this.trouble.querySelector("button")?.focus();
    this.emit("creasefit-problem", { problem: error.problem ?? { status: 0, title: error.reason, detail: this.words[error.reason], errors: [] } });
  }

  #wrong(problem) {
    const elsewhere = [];
    const seen = new Set();
    for (const item of problem.errors) {
      const field = this.sentence?.fields.get(item.name);
      if (seen.has(item.name)) continue;
      seen.add(item.name);
      if (field && !field.said) field.show(item);
      else elsewhere.push(item);
      if (field?.help) this.sentence.fold.open = true;
    }
    for (const item of elsewhere) {
      const about = item.name ? (this.words.names[item.name] ?? item.name.replaceAll("_", " ")) + ": " : "";
      this.trouble.append(make("p", {}, about, ...complaint({ ...item, expected: "" }, this.words)));
    }
    if (problem.errors.length === 0) this.trouble.append(make("p", {}, english(problem.detail)));
    if (problem.try) this.trouble.append(this.#button(this.words.correct, () => this.#correct(problem.try)));
    this.trouble.hidden = this.trouble.childElementCount === 0;
    const [first] = problem.errors;
    this.say(fill(this.words.wrong, first && this.words.problems[first.code] ? spoken(complaint(first, this.words)) : problem.detail));
  }

  // #correct takes the values of the corrected address.
  #correct(address) {
    const wrong = this.body.querySelector("[aria-invalid]");
    this.values = Object.fromEntries(new URL(address, this.service).searchParams);
    wrong?.focus();
  }

  // #away tells that there is no answer, and tries again by itself.
  #away(error) {
    const { problem } = error;
    const reason = problem ? complaint({ code: problem.type?.split("/").pop(), detail: problem.detail }, this.words) : [this.words[error.reason]];
    const stale = this.solution ? " " + this.words.stale : "";
    this.trouble.append(make("p", {}, ...reason, stale), this.#button(this.words.again, () => this.retry()));
    this.trouble.hidden = false;
    this.say(spoken(reason) + stale);
    const pause = Math.max(error.wait || 0, Math.min(60, 5 * 2 ** this.failures++)); // seconds
    this.timers.ask = setTimeout(() => this.retry(), pause * 1000);
  }

  #button(text, click) {
    return make("button", { type: "button", part: "button", click }, text);
  }

  emit(name, detail) {
    this.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
  }
}
