const WORDS = {
  en: { closed: "Made", turn: "Turn", tilt: "Tilt", fold: "Show the making", open: "Take it apart", flat: "lying flat", shut: "finished", part: "{} per cent made",
    view: "{title}, {state}, turned by {turn} degrees and seen from {tilt} degrees above.", size: "Closed it measures {}.",
    width: "width", height: "height", thickness: "thickness",
    none: "This browser shows no 3-D pictures; the drawing has every size.", lost: "The model cannot be fetched just now." },
  de: { closed: "Fertig", turn: "Drehen", tilt: "Neigen", fold: "Entstehung zeigen", open: "Auseinandernehmen", flat: "flach ausgelegt", shut: "fertig", part: "zu {} Prozent fertig",
    view: "{title}, {state}, um {turn} Grad gedreht und aus {tilt} Grad von oben gesehen.", size: "Geschlossen misst es {}.",
    width: "Breite", height: "Höhe", thickness: "Dicke",
    none: "Dieser Browser zeigt keine räumlichen Bilder; die Zeichnung hat alle Maße.", lost: "Das Modell ist gerade nicht zu bekommen." },
};
const WIDTH = 640;
const HEIGHT = 440;

const fill = (text, values) => text.replace(/\{(\w*)\}/g, (_, name) => (typeof values === "object" ? values[name] : values));

// CreasefitFold shows an enclosure as it is made, step by step, and turns it. Its
// attributes are src (address of a drawing), body (a request in JSON that is sent
// there, where it is too long for an address), label (what it is) and measures (its
// closed size in words).
class CreasefitFold extends HTMLElement {
  static observedAttributes = ["src", "body", "label", "measures"];

  // picture paints a model once onto a canvas; false without WebGL.
  static async picture(src, closed, turn, tilt, canvas) {
    const painter = Painter.shared();
    if (!painter) return false;
    painter.paint(await new Model(src).at(closed), turn, tilt, canvas);
    return true;
  }

  #root = this.attachShadow({ mode: "open" });
  #model = null;
  #playing = 0;
  #asked = 0;

  constructor() {
    super();
    this.#root.adoptedStyleSheets = [sheet];
    this.canvas = Object.assign(document.createElement("canvas"), { width: WIDTH, height: HEIGHT });
    this.canvas.setAttribute("role", "img");
    this.canvas.setAttribute("part", "picture");
    this.canvas.addEventListener("pointerdown", (event) => this.#grab(event));
    this.note = Object.assign(document.createElement("p"), { hidden: true });
    this.note.setAttribute("role", "status");
    this.sliders = { closed: this.#slider("closed", 0, 100, 100), turn: this.#slider("turn", -180, 180, 28), tilt: this.#slider("tilt", -90, 90, 26) };
    this.button = Object.assign(document.createElement("button"), { type: "button" });
    this.button.setAttribute("part", "button");
    this.button.addEventListener("click", () => this.#play());
    const controls = document.createElement("div");
    controls.className = "controls";
    controls.append(this.button, ...Object.values(this.sliders).map((input) => input.parentElement));
    this.#root.append(this.canvas, this.note, controls);
  }

  #slider(name, min, max, value) {
    const label = document.createElement("label");
    const input = Object.assign(document.createElement("input"), { type: "range", min, max, step: 1, value });
    input.addEventListener("input", () => {
      if (name === "closed") cancelAnimationFrame(this.#playing);
      this.#paint();
    });
    label.append(document.createElement("span"), input);
    return input;
  }

  connectedCallback() {
    const language = (this.closest("[lang]")?.lang ?? "en").slice(0, 2);
    this.words = WORDS[language] ?? WORDS.en;
    for (const [name, input] of Object.entries(this.sliders)) input.previousSibling.textContent = this.words[name];
    this.#paint();
  }

  disconnectedCallback() {
    cancelAnimationFrame(this.#playing);
  }

  attributeChangedCallback(name, before, after) {
    if ((name === "src" || name === "body") && before !== after) this.#model = this.getAttribute("src") ? new Model(this.getAttribute("src"), this.getAttribute("body")) : null;
    if (this.words) this.#paint(); // attributes are told before the element is connected
  }

  // #state says in words what the picture shows.
  #state() {
    const { words } = this;
    const closed = Number(this.sliders.closed.value);
    const state = closed === 0 ? words.flat : closed === 100 ? words.shut : fill(words.part, closed);
    const view = fill(words.view, { title: this.getAttribute("label") ?? "", state, turn: this.sliders.turn.value, tilt: this.sliders.tilt.value });
    return this.hasAttribute("measures") ? view + " " + fill(words.size, this.getAttribute("measures")) : view;
  }

  async #paint() {
    const asked = ++this.#asked;
    const painter = Painter.shared();
    this.button.textContent = Number(this.sliders.closed.value) < 100 ? this.words.fold : this.words.open;
    this.canvas.setAttribute("aria-label", this.#state());
    if (!this.#model) return;
    if (!painter) return this.#tell(this.words.none);
    try {
      const lists = await this.#model.at(this.sliders.closed.value / 100);
      if (asked !== this.#asked) return;
      painter.paint(lists, Number(this.sliders.turn.value), Number(this.sliders.tilt.value), this.canvas, this.words);
      this.#tell("");
    } catch {
      if (asked === this.#asked) this.#tell(this.words.lost);
    }
  }

  #tell(text) {
    this.note.textContent = text;
    this.note.hidden = !text;
    this.canvas.hidden = Boolean(text);
    this.toggleAttribute("data-painted", !text);
  }

  // #play shows the making or takes it apart, at once for those who want no motion.
  async #play() {
    const long = await this.#model?.long().catch(() => 0);
    const { closed } = this.sliders;
    const [from, to] = [Number(closed.value), Number(closed.value) < 100 ? 100 : 0];
    cancelAnimationFrame(this.#playing);
    const still = matchMedia("(prefers-reduced-motion: reduce)").matches;
    const began = performance.now();
    const step = (now) => {
      const part = still ? 1 : Math.min(1, Math.max(0, now - began) / 2400);
      closed.value = from + (to - from) * part;
      this.#paint();
      if (part < 1) this.#playing = requestAnimationFrame(step);
    };
    step(began);
  }

  // #grab turns the model with the pointer; the sliders do the same by keys.
  #grab(event) {
    const { turn, tilt } = this.sliders;
    const [x, y, a, b] = [event.clientX, event.clientY, Number(turn.value), Number(tilt.value)];
    this.canvas.setPointerCapture(event.pointerId);
    const move = (now) => {
      turn.value = ((a - (now.clientX - x) / 2 + 540) % 360) - 180;
      tilt.value = b + (now.clientY - y) / 2;
      this.#paint();
    };
    this.canvas.addEventListener("pointermove", move);
    this.canvas.addEventListener("lostpointercapture", () => this.canvas.removeEventListener("pointermove", move), { once: true });
  }
}

if (!customElements.get("creasefit-fold")) customElements.define("creasefit-fold", CreasefitFold);
