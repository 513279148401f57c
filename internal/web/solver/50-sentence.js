const SIZES = ["width", "height", "thickness"];
const COMMON = ["unit", "contents", ...SIZES, "stock", "caliper", "ruler", "bench", "fit"];
const RULINGS = ["1/8 in", "1/16 in", "1/32 in", "1 mm", "0.5 mm"];

// Sentence is the request as a sentence with places to fill in, made from the
// kind's own list of parameters.
class Sentence {
  constructor(kind, lists, words) {
    Object.assign(this, { kind, words, fields: new Map(), presets: {} });
    for (const param of kind.parameters) {
      if (param.about === "calculation") this.#add(param, lists[param.catalogue]);
    }
    this.node = make("div", { class: "sentence", part: "sentence" }, this.#first(), this.#own(), this.#more());
  }

  #add(param, list) {
    const preset = param.type === "preset" && list;
    if (preset) this.presets[param.name] = new Map(list.map((item) => [item.name, item]));
    const field = new Field(param, this.words, preset && groupsOf(list, this.words));
    if (param.type === "step") field.suggest(RULINGS);
    if (param.type === "size" && list) field.suggest(list.map((item) => item.name));
    this.fields.set(param.name, field);
  }

  // #first is the sentence itself: the words of the template with the common
  // fields in their places.
  #first() {
    const line = make("p", {});
    for (const [i, piece] of this.words.sentence.split(/\{(\w+)\}/).entries()) {
      if (i % 2 === 0) line.append(piece);
      else line.append(...this.#place(piece));
    }
    return line;
  }

  #place(name) {
    const nodes = this.fields.has(name) ? [this.fields.get(name).node] : [];
    const further = { contents: SIZES.filter((size) => this.kind.needs.includes(size)), stock: ["caliper"] }[name] ?? [];
    return nodes.concat(further.filter((size) => this.fields.has(size)).map((size) => this.#size(size)));
  }

  // #size is ", [3 1/2 in] wide", shown while nothing named says it.
  #size(name) {
    const [before, after] = this.words[name].split("{}");
    const field = this.fields.get(name);
    field.phrase = make("span", {}, ", ", before, field.node, after);
    return field.phrase;
  }

  // #own lists what is peculiar to the kind.
  #own() {
    const own = [...this.fields.values()].filter((f) => !f.param.advanced && !COMMON.includes(f.name));
    if (own.length === 0) return null;
    const line = make("p", {}, this.words.own + " ");
    for (const [i, field] of own.entries()) {
      line.append(make("span", { class: "pair" }, make("label", { for: field.id }, field.label), " ", field.node, i < own.length - 1 ? "," : "."), " ");
    }
    return line;
  }

  // #more folds the rest away.
  #more() {
    const placed = new Set([...COMMON.filter((name) => !SIZES.includes(name)), ...this.kind.needs]);
    const rest = [...this.fields.values()].filter((f) => !placed.has(f.name) && (f.param.advanced || SIZES.includes(f.name)));
    if (rest.length === 0) return null;
    rest.forEach((field) => field.explain());
    this.fold = make("details", { part: "more" }, make("summary", {}, this.words.more),
      make("div", { class: "rest" }, ...rest.map((f) => make("div", { class: "line" }, make("label", { for: f.id }, f.label), f.node))));
    return this.fold;
  }

  get unit() {
    return this.fields.get("unit")?.value || "in";
  }

  // named returns the chosen item of a list of presets.
  named(name) {
    return this.presets[name]?.get(this.fields.get(name).value);
  }

  // start fills the fields in: what is given, else what the service would
  // take, else an example to begin with.
  start(given, unit) {
    const own = SIZES.some((size) => size in given);
    for (const field of this.fields.values()) {
      const sample = field.param.type === "preset" && !(field.name === "contents" ? own : "caliper" in given || "grammage" in given) && field.param.sample;
      field.value = field.name === "unit" ? given.unit ?? unit : given[field.name] ?? (field.initial(given.unit ?? unit) || sample || "");
    }
    this.before = this.unit;
    this.arrange();
  }

  // convert keeps the meaning of what stands there when the unit changes.
  convert() {
    for (const field of this.fields.values()) {
      if (field.name !== "unit" && field.value === field.initial(this.before)) field.value = field.initial(this.unit);
      else if (field.param.unit === "length" && /^[\d .,/-]*\d$/.test(field.value)) field.value += " " + this.before;
    }
    this.before = this.unit;
  }

  // arrange shows the sizes that nothing named says.
  arrange() {
    if (this.unit !== this.before) this.convert();
    for (const size of SIZES) this.#toggle(size, this.named("contents")?.[size]);
    this.#toggle("caliper", this.named("stock") || this.fields.get("grammage")?.value);
    const fit = this.fields.get("fit");
    if (fit) fit.control.disabled = Boolean(this.fields.get("clearance_min")?.value || this.fields.get("clearance_max")?.value);
  }

  #toggle(name, said) {
    const field = this.fields.get(name);
    if (!field) return;
    field.said = Boolean(said);
    if (field.phrase) field.phrase.hidden = field.said;
    else field.control.disabled = field.said;
  }

  // missing lists the labels of sizes that are still empty.
  missing() {
    return [...this.fields.values()].filter((f) => f.phrase && !f.said && !f.value).map((f) => f.label);
  }

  // values is the request: what differs from what the service would take.
  values() {
    const values = {};
    for (const field of this.fields.values()) {
      const untold = field.said || field.control.disabled || !field.value;
      if (!untold && (field.name === "unit" || field.value !== field.initial(this.unit))) values[field.name] = field.value;
    }
    const typed = [...this.fields.values()].filter((f) => !f.isChoice && f.param.type !== "text" && f.name in values).map((f) => f.value);
    if (typed.some((text) => text.includes(",")) && !typed.some((text) => text.includes("."))) values.decimal = "comma";
    return values;
  }
}

// groupsOf groups presets by what stands before the colon of their titles.
function groupsOf(list, words) {
  const groups = new Map();
  for (const item of list) {
    const [, group, title] = /^([^:]+): (.*)$/.exec(item.title) ?? [null, words.plainGroup, item.title];
    if (!groups.has(group)) groups.set(group, []);
    groups.get(group).push([item.name, title]);
  }
  return [...groups].sort((a, b) => (a[0] === words.plainGroup) - (b[0] === words.plainGroup));
}
