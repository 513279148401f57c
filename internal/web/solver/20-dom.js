// make builds an element. Members of attributes that are functions listen.
function make(tag, attributes, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes ?? {})) {
    if (typeof value === "function") element.addEventListener(name, value);
    else if (value === true) element.setAttribute(name, "");
    else if (value !== false && value != null) element.setAttribute(name, value);
  }
  element.append(...children.filter((child) => child != null));
  return element;
}

// english marks what the service said in its own language.
function english(text) {
  return make("span", { lang: "en" }, text);
}

// readingText writes a reading the way the language does.
function readingText(reading, words) {
  const [, number, unit] = /^(.*?)(?: (in|mm))?$/.exec(reading);
  const shown = number.replace(".", words.decimal).replace("-", "\u2212");
  return unit ? shown + "\u00a0" + (words.units[unit] ?? unit) : shown;
}

// readingNode is a reading with its fraction set as one.
function readingNode(reading, words) {
  const text = readingText(reading, words);
  const [, before, fraction, after] = /^(.*?)(\d+\/\d+)(.*)$/.exec(text) ?? [null, text, "", ""];
  return make("span", { class: "reading", part: "reading" }, before, fraction && make("span", { class: "fraction" }, fraction), after);
}
