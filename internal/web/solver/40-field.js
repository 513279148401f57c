let fields = 0; // numbers ids

// complaint says what is wrong: in the words that the language has for it, else
// in the service's. A hint that is a value needs no language.
function complaint({ code, value, detail, hint, expected }, words) {
  const own = words.problems[code];
  const said = own ? fill(own, { value: value ?? "" }) : detail;
  const isValue = /^[\d.]/.test(hint);
  const more = isValue ? fill(words.suggest, hint) : hint ?? (own ? "" : expected);
  if (!own) return [english([said, more].filter(Boolean).join("; ") + ".")];
  return [said, more && "; ", isValue || !more ? more : english(more), "."];
}

// spoken is a complaint as plain text.
const spoken = (parts) => parts.map((part) => part.textContent ?? part).join("");

// Field is one control with its label, and with what is wrong with it.
class Field {
  constructor(param, words, options) {
    Object.assign(this, { param, words, id: "f" + ++fields, name: param.name });
    this.label = words.names[param.name] ?? param.name.replaceAll("_", " ");
    this.open = param.choices && param.type === "text"; // one of the words, or what is typed
    this.control = options || (param.choices && !this.open) ? this.#select(options || []) : this.#input();
    this.wrong = make("span", { class: "wrong", id: this.id + "w", hidden: true });
    this.node = make("span", { class: "field" }, this.control, this.wrong);
    if (this.open) this.suggest(param.choices);
  }

  get value() {
    return this.control.value.trim();
  }

  set value(text) {
    if (this.control.tagName === "SELECT" && text && ![...this.control.options].some((o) => o.value === text)) {
      this.control.append(make("option", { value: text }, text));
    }
    this.control.value = text;
    this.resize();
  }

  get isChoice() {
    return this.control.tagName === "SELECT";
  }

  // initial is the value that the service takes when none is given.
  initial(unit) {
    return this.param.default?.[unit] ?? "";
  }

  #attributes(part) {
    return { id: this.id, part, "aria-label": this.label, title: this.param.help, "data-name": this.name };
  }

  #select(groups) {
    const { param, words } = this;
    const select = make("select", this.#attributes("field choice"));
    if (param.type === "preset") select.append(make("option", { value: "" }, words.other[param.name] ?? words.unset));
    else if (!param.default) select.append(make("option", { value: "" }, words.unset));
    for (const choice of param.choices ?? []) select.append(make("option", { value: choice }, words.choices[choice] ?? choice));
    for (const [title, options] of groups) {
      select.append(make("optgroup", { label: title }, ...options.map(([value, text]) => make("option", { value, lang: "en" }, text))));
    }
    return select;
  }

  #input() {
    const modes = { count: "numeric", number: "decimal" };
    return make("input", {
      ...this.#attributes("field"), type: "text", inputmode: modes[this.param.type] ?? "text", autocomplete: "off", autocapitalize: "off",
      spellcheck: "false", enterkeyhint: "done", placeholder: this.words.unset,
    });
  }

  // suggest offers values that can also be typed.
  suggest(values) {
    const list = make("datalist", { id: this.id + "l" }, ...values.map((value) => make("option", { value, label: this.words.choices[value] })));
    this.control.setAttribute("list", list.id);
    this.node.append(list);
  }

  // resize gives the control the width of its value where the browser does not.
  resize() {
    if (!this.isChoice) this.control.size = Math.min(40, Math.max(3, this.control.value.length || this.words.unset.length));
  }

  // explain shows the help below the control.
  explain() {
    this.help = make("span", { class: "help", id: this.id + "h", lang: "en" }, this.param.help);
    this.node.append(this.help);
    this.#describe();
  }

  // show tells what is wrong, or that nothing is.
  show(error) {
    this.wrong.hidden = !error;
    this.wrong.replaceChildren();
    if (error) {
      this.wrong.append(...complaint(error, this.words));
      this.control.setAttribute("aria-invalid", "true");
    } else {
      this.control.removeAttribute("aria-invalid");
    }
    this.#describe();
  }

  #describe() {
    const ids = [!this.wrong.hidden && this.wrong.id, this.help?.id].filter(Boolean).join(" ");
    if (ids) this.control.setAttribute("aria-describedby", ids);
    else this.control.removeAttribute("aria-describedby");
  }
}
