const $ = (id) => document.getElementById(id);
const DATA = JSON.parse($("words").textContent);
const WORDS = DATA.words;

// node builds an element. Attributes that are functions listen.
function node(tag, attributes, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes ?? {})) {
    if (typeof value === "function") element.addEventListener(name, value);
    else if (value === true) element.setAttribute(name, "");
    else if (value !== false && value != null) element.setAttribute(name, value);
  }
  element.append(...children.filter((child) => child != null && child !== ""));
  return element;
}

// say is one of the page's texts with values in its places.
function say(key, values) {
  return WORDS.page[key].replace(/\{(\w*)\}/g, (_, name) => (typeof values === "object" ? values[name] : values) ?? "");
}

// length writes a reading the way the language does.
function length(reading) {
  const [, number, unit] = /^(.*?)(?: (in|mm))?$/.exec(reading);
  const shown = number.replace(".", WORDS.decimal).replace("-", "\u2212");
  return unit ? shown + "\u00a0" + WORDS.units[unit] : shown;
}

// hundred is a chance as tries in a hundred, never rounded up.
const hundred = (chance) => Math.floor(chance * 100 + 1e-9);

// label names a parameter.
const label = (name) => WORDS.page[name] ?? WORDS.names[name] ?? name.replaceAll("_", " ");

// choice names a choice of a parameter.
const choice = (word) => WORDS.choices[word] ?? WORDS.page[word] ?? word;

// complaint says what is wrong: in the language's own words where it has some.
function complaint({ code, detail, hint, value }) {
  if (WORDS.language === "en") return sentence([detail, hint].filter(Boolean).join("; "));
  const said = WORDS.reasons[detail] ?? (WORDS.problems[code] ?? say("wrong")).replace("{value}", value ?? "");
  return sentence(said) + (/^[\d.]/.test(hint) ? " " + say("suggest", length(hint)) : "");
}

// sentence begins with a capital and ends with a full stop.
function sentence(text) {
  const begun = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?…]$/.test(begun) ? begun : begun + ".";
}

// pictures is the word for pictures that suit the page's ground.
const pictures = () => (matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "light");

// drawing is a picture of the service on the page's own ground.
function drawing(text) {
  const svg = svgFrom(text);
  svg?.querySelector(":scope > path")?.remove();
  return svg;
}

// enlarged is a picture that a tap shows as large as the screen.
function enlarged(text) {
  const show = () => {
    $("large").querySelector("div").replaceChildren(drawing(text));
    $("large").showModal();
  };
  return node("figure", { class: "picture", click: show }, drawing(text), node("button", { type: "button" }, say("enlarge")));
}
