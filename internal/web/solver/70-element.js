const TYPING = 250; // ms without a key before a request is sent
const HERE = new URL("../../", document.currentScript?.src ?? location.href).href;

// CreasefitSolver is the element. Its attributes are kind, service, lang, steps (the
// work told step by step), model (the folded view) and every name that the kind's
// calculations know.
class CreasefitSolver extends Told {
  #own = {};
  #request = null; // the AbortController of the calls under way
  #opened = null;
  #sent = ""; // the values of the last call
  #watch = new MutationObserver((changes) => this.#changed(changes.map((change) => change.attributeName)));

  constructor() {
    super();
    this.body.addEventListener("input", (event) => this.#typed(event, TYPING));
    this.body.addEventListener("change", (event) => this.#typed(event, 0));
  }

  connectedCallback() {
    this.#watch.observe(this, { attributes: true });
    addEventListener("online", this.#online);
    this.#open();
  }

  disconnectedCallback() {
    this.#watch.disconnect();
    removeEventListener("online", this.#online);
    this.#stop();
  }

  // strings are own words that go before those of the language.
  get strings() {
    return this.#own;
  }

  set strings(own) {
    this.#own = own;
    if (this.isConnected) this.#open();
  }

  // values are the names and values that are sent.
  get values() {
    return this.sentence?.values() ?? {};
  }

  set values(values) {
    for (const [name, value] of Object.entries(values)) {
      const field = this.sentence?.fields.get(name);
      if (field) field.value = value;
    }
    this.#refresh(0);
  }

  get service() {
    return new URL(this.getAttribute("service") || HERE, location.href).href.replace(/\/*$/, "/");
  }

  #online = () => this.retry();

  #changed(names) {
    if (names.some((name) => ["kind", "lang", "service"].includes(name))) return void this.#open();
    const given = names.filter((name) => this.sentence?.fields.has(name) && this.hasAttribute(name));
    if (given.length) this.values = Object.fromEntries(given.map((name) => [name, this.getAttribute(name)]));
  }

  #stop() {
    this.#request?.abort();
    Object.values(this.timers).forEach(clearTimeout);
    this.#request = new AbortController();
    return this.#request.signal;
  }

  // #open learns the kind and builds the sentence.
  async #open() {
    const signal = this.#stop();
    const language = this.lang || this.closest("[lang]")?.lang || "en";
    this.words = wordsFor(language, this.#own);
    this.#opened = false;
    this.setAttribute("aria-busy", "true");
    this.slowly();
    try {
      const kind = await listing(this.service + "v1/kinds/" + encodeURIComponent(this.getAttribute("kind") || "slotted-band"));
      const wanted = [...new Set(kind.parameters.map((param) => param.catalogue).filter(Boolean))];
      const lists = await Promise.all(wanted.map((path) => listing(this.service + path.slice(1))));
      if (signal.aborted) return;
      this.#build(kind, Object.fromEntries(wanted.map((path, i) => [path, Object.values(lists[i])[0]])), language);
      this.#opened = true;
      this.#refresh(0);
    } catch (error) {
      if (!signal.aborted) this.fail(error);
    }
  }

  #build(kind, lists, language) {
    const { words } = this;
    const given = Object.fromEntries([...this.attributes].map((a) => [a.name, a.value]).filter(([name]) => kind.parameters.some((p) => p.name === name)));
    this.sentence = new Sentence(kind, lists, words);
    const title = words.titles?.[kind.name] ? words.titles[kind.name] : english(kind.title);
    const heading = make("p", { class: "kind", part: "title", role: "heading", "aria-level": this.getAttribute("level") || "3" }, title);
    this.inside.hidden = true;
    this.body.replaceChildren(heading, this.sentence.node);
    this.answer.replaceChildren();
    this.solution = undefined;
    this.sentence.start(given, new Intl.Locale(language).region === "US" || /^en\b/.test(language) ? "in" : "mm");
  }

  #typed(event, wait) {
    const field = this.sentence.fields.get(event.target.dataset.name);
    field.resize();
    this.last = wait ? performance.now() : 0;
    this.sentence.arrange();
    const known = JSON.stringify(this.values) === this.#sent;
    if (wait || !known) this.#refresh(wait); // leaving a field changes nothing
  }

  // #refresh asks after a pause, unless something is still missing.
  #refresh(wait) {
    const signal = this.#stop();
    const missing = this.sentence?.missing() ?? [];
    if (!this.sentence || !this.#opened) return;
    if (missing.length) {
      this.clear();
      this.answer.classList.add("stale");
      this.say(fill(this.words.needed, missing.join(", ")));
      return;
    }
    this.timers.ask = setTimeout(() => this.#ask(signal), wait);
  }

  async #ask(signal) {
    this.setAttribute("aria-busy", "true");
    this.slowly();
    const { name } = this.sentence.kind;
    const values = this.sentence.values();
    const language = this.#language();
    const dark = this.#isDark();
    this.#sent = JSON.stringify(values);
    const theme = dark ? "dark" : "light";
    const steps = this.hasAttribute("steps");
    const lines = [{ id: "solution", call: "solve" }, { id: "drawing", call: "drawing", ...language, format: "svg", theme }];
    if (steps || language.language) lines.push({ id: "guide", call: "guide", ...language, ...(steps ? { pictures: theme } : { steps: "no" }) });
    try {
      const { solution, drawing, guide } = await calculate(this.service, { kind: name, ...values }, lines, signal);
      if (signal.aborted) return;
      this.#show(solution, values);
      this.#draw(drawing, dark);
      if (language.language && solution.warnings.length) this.#warn(guide.warnings);
      if (steps) this.answer.querySelector(".links").before(stepsNode(guide, this.words));
      if (this.hasAttribute("model")) await this.#fold(solution);
    } catch (error) {
      if (!signal.aborted) this.fail(error);
    }
  }

  #show(solution, values) {
    if (this.trouble.contains(this.root.activeElement)) this.#toAnswer();
    this.clear();
    this.failures = 0;
    this.solution = solution;
    const links = this.#links(solution, values);
    this.answer.classList.remove("stale");
    this.answer.replaceChildren(...answerNodes(solution, this.words, links, (values) => this.#take(values)));
    this.say(summary(solution, this.words));
    this.emit("creasefit-solution", { solution, values, kind: solution.kind, link: links.find(([text]) => text === this.words.links.permanent)[1] });
  }

  // #language asks the service for another language than its usual one.
  #language() {
    const { language } = this.words;
    return language === "en" ? {} : { language };
  }

  #links(solution, values) {
    const { links } = this.words;
    const to = (path, more) => this.service + path.slice(1) + more;
    const as = (format) => "&" + new URLSearchParams({ format, ...this.#language() });
    const { language } = this.#language();
    const page = (more) => this.service + (language ? language + "/" : "") + "?" + new URLSearchParams({ kind: solution.kind, ...values, ...more });
    const all = [[links.permanent, page()], [links.data, to(solution.links.self, "")]];
    if (solution.links.mail) all.unshift([links.mail, language ? page({ post: language }) : to(solution.links.mail, "&format=text")]); // posts tell their rules in English
    if (solution.links.drawing) all.unshift([links.drawing, to(solution.links.drawing, as("svg"))], [links.pdf, to(solution.links.drawing, as("pdf"))]);
    if (solution.links.yield) all.unshift([links.yield, to(solution.links.yield, as("svg"))]);
    if (solution.links.guide) all.unshift([links.guide, to(solution.links.guide, as("html"))]);
    return all;
  }

  // #take chooses what a button offers; the button is gone afterwards, so the
  // focus moves to the readings.
  #take(values) {
    this.values = values;
    this.#toAnswer();
  }

  #toAnswer() {
    this.answer.tabIndex = -1;
    this.answer.focus();
  }

  // #isDark says whether the ink around the drawing is light.
  #isDark() {
    const shown = this.answer.querySelector("figure");
    const figure = shown ?? this.answer.appendChild(make("figure", { part: "drawing", class: "drawing" }));
    const [red, green, blue] = getComputedStyle(figure).color.match(/[\d.]+/g).map(Number);
    if (!shown) figure.remove();
    return red + green + blue > 384;
  }

  // #draw sets the drawing into the page.
  #draw(text, dark) {
    const figure = this.answer.querySelector("figure");
    const svg = svgFrom(text);
    if (!svg) return;
    const smallest = Math.min(...[...svg.querySelectorAll("[font-size]")].map((letters) => Number(letters.getAttribute("font-size"))));
    for (const side of ["width", "height"]) svg.style.setProperty("--" + side, Math.ceil((11 * svg.viewBox.baseVal[side]) / smallest) + "px"); // letters of 11 pixels
    figure.classList.toggle("dark", dark);
    figure.replaceChildren(svg);
  }

  // #fold shows the enclosure folded, with the element for that, which is fetched only
  // where it is wanted; where it cannot be, the drawing has every size.
  async #fold(solution) {
    try {
      if (!customElements.get("creasefit-fold")) await import(HERE + "element/1/creasefit-fold.js");
    } catch {
      return;
    }
    const { width, height, thickness } = solution.outside;
    this.folded ??= make("creasefit-fold", { part: "model" });
    this.folded.setAttribute("label", solution.kind);
    this.folded.setAttribute("measures", [width, height, thickness].map((size) => readingText(size.reading, this.words)).join(" × "));
    this.folded.setAttribute("src", this.service + solution.links.drawing.slice(1));
    this.answer.querySelector("figure").after(this.folded);
  }

  // #warn takes what is to be known in the language from the guide, which the
  // service writes in it.
  #warn(warnings) {
    const { solution } = this;
    const notes = warnings.map(({ text }) => make("li", {}, solution.warnings.some(({ detail }) => detail === text) ? english(text) : text));
    this.answer.querySelector(".notes ul").replaceChildren(...notes);
  }

  retry() {
    if (this.#opened) this.#refresh(0);
    else this.#open();
  }
}

if (!customElements.get("creasefit-solver")) customElements.define("creasefit-solver", CreasefitSolver);
