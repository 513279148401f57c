// Words in German. What the service itself says and has no words here stays in
// English and is marked as such.
const GERMAN = {
  language: "de",
  sentence: "Wickle {contents} in {stock}. Ich schneide mit {bench}, messe in {unit} und zeichne auf {ruler} genau an; es soll {fit} sitzen.",
  own: "Mit",
  width: "{} breit",
  height: "{} hoch",
  thickness: "{} dick",
  caliper: "{} dick",
  other: { contents: "etwas Eigenes", stock: "ein anderes Papier" },
  plainGroup: "Genormte Formate und Papiere",
  titles: TITLES.de,
  ...SHARED.de,
  more: "Feineres",
  unset: "wie es kommt",
  needed: "Noch auszufüllen: {}.",
  slow: "Der Dienst antwortet langsam. Bitte noch warten …",
  unreachable: "Der Dienst ist nicht erreichbar.",
  late: "Der Dienst hat zu lange gebraucht.",
  stale: "Unten steht die letzte Antwort.",
  again: "Noch einmal",
  correct: "Berichtigen",
  wrong: "So geht es noch nicht: {}",
  suggest: "vielleicht {}",
  readings: "Maße",
  cut: "Zuschneiden",
  by: "mal",
  times: "{}-mal",
  score: "Rillen",
  paper: "{} Papier",
  papers: "{} Papiere",
  scoreAt: "{reading} von {from}",
  orFrom: "oder {reading} von {from}",
  folds: { valley: "Talfalz", mountain: "Bergfalz" },
  on: "auf Rille {}",
  cuts: { slit: "Schlitz", slot: "Aussparung", notch: "Kerbe", window: "Fenster", relief: "Freischnitt" },
  cutDeep: "{reading} tief von {from}",
  cutWide: "{reading} breit",
  cutAt: "bei {}",
  sides: { left: "links", right: "rechts", top: "oben", bottom: "unten" },
  diagonal: "über die Diagonale",
  sheet: "Aus einem Bogen",
  sure: "Passt es hinein?",
  surely: "{axis}: ja.",
  almost: "{axis}: fast immer, {n} von 100 Malen.",
  probably: "{axis}: wahrscheinlich, etwa {n} von 100 Malen. Erst ein Probestück machen.",
  perhaps: "{axis}: vielleicht, etwa {n} von 100 Malen. Lockerer wählen oder genauer schneiden.",
  hardly: "{axis}: eher nicht, etwa {n} von 100 Malen. Lockerer wählen oder genauer schneiden.",
  room: "Luft: {nominal}; {least} bis {most}, wenn sich alle Fehler addieren.",
  axes: { width: "Breite", height: "Höhe", thickness: "Dicke", diagonal: "Diagonale" },
  notes: "Gut zu wissen",
  doThat: "So machen",
  finer: "Andere Teilungen",
  alternative: "In {step}: passt {n} von 100 Malen",
  take: "{} nehmen",
  plainest: "Zurück zu den einfachsten Maßen",
  gains: [[/the gap of (.+?) closes to (.+?); /, "der Spalt von $1 wird $2, "], [/the clearances come no nearer to the middle of their windows/, "die Luft liegt nicht näher an der Mitte"],
    [/the clearances come (.+?) nearer to the middle of their windows/, "die Luft liegt $1 näher an der Mitte"]],
  drawing: "Zeichnung",
  steps: "Schritt für Schritt",
  copySteps: "Anleitung kopieren",
  copied: "Kopiert, samt Bildern.",
  notCopied: "Dieser Browser lässt Seiten nichts kopieren.",
  links: { guide: "Anleitung", drawing: "Zeichnung", pdf: "Zeichnung zum Drucken", yield: "Schnittplan", mail: "Geht es mit der Post?", permanent: "Dauerhafter Link", data: "Antwort als Daten" },
  units: { in: "Zoll" },
  decimal: ",",
};

const LANGUAGES = { en: ENGLISH, de: GERMAN };

// wordsFor lays own words over those of the language, and those over English.
function wordsFor(language, own) {
  const layers = [ENGLISH, LANGUAGES[language.split("-")[0].toLowerCase()] ?? {}, own ?? {}];
  const words = {};
  for (const layer of layers) {
    for (const [key, value] of Object.entries(layer)) {
      words[key] = typeof value === "object" && !Array.isArray(value) ? { ...words[key], ...value } : value;
    }
  }
  return words;
}

// fill puts values into the places of a text.
function fill(text, values) {
  return text.replace(/\{(\w*)\}/g, (_, name) => (typeof values === "object" ? values[name] ?? "" : values));
}
