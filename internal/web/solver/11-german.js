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
  choices: { hand: "der Hand", trimmer: "der Schneidemaschine", plotter: "dem Plotter", in: "Zoll", mm: "Millimetern", snug: "knapp", easy: "bequem", loose: "locker",
    auto: "von selbst", one: "eine", two: "zwei", width: "Breite", height: "Höhe", both: "beide", front: "vorn", yes: "ja", no: "nein",
    square: "gerade", angled: "schräg", pointed: "spitz", straight: "gleichseitig", reverse: "wechselseitig",
    side: "seitlich", tent: "oben", gate: "als Altar", letter: "als Brief", accordion: "im Zickzack", inside: "innen", outside: "außen",
    single: "einfach", double: "doppelt", "one-piece": "in einem Stück", "two-pieces": "in zwei Stücken", circumscribed: "umschrieben", inscribed: "einbeschrieben" },
  names: { unit: "Einheit", contents: "Inhalt", width: "Breite", height: "Höhe", thickness: "Dicke", contents_tolerance: "Inhalt schwankt um", stock: "Papier",
    caliper: "Papierdicke", grammage: "Flächengewicht", sheet: "Bogen", grain: "Laufrichtung", ruler: "Lineal", step: "Maße in", bench: "Werkzeug",
    cut_tolerance: "Schnittfehler", score_tolerance: "Rillfehler", fit: "Passung", clearance_min: "Luft mindestens", clearance_max: "Luft höchstens",
    band_height: "Bandhöhe", tab: "Lasche", scores: "Rillen je Seite", meeting: "Treffpunkt", slit_play: "Schlitzspiel", ornament_width: "Zierform, Breite",
    ornament_height: "Zierform, Höhe", ornament_caliper: "Zierform, Papierdicke", lap: "Klebelasche", reveal: "Überstand", notch: "Griffkerbe",
    notch_faces: "Kerben", flap: "Klappe", closing_flap: "Verschlussklappe", side_flap: "Seitenklappe", overlap: "Überlappung", bottom_panel: "Bodenteil",
    relief: "Freischnitt", flap_inset: "Klappeneinzug", pocket_height: "Taschenhöhe", page_height: "Seitenhöhe", gusset: "Zwickel", style: "Art",
    tuck: "Einstecklasche", dust_flap: "Staubklappe", taper: "Schräge", friction_slit: "Bremsschlitz",
    fold: "Faltung", panels: "Felder", gap: "Spalt", open: "Öffnung", layers: "Lagen", headroom: "Luft nach oben", turn_over: "Umschlagrand",
    base_flap: "Bodenklappe", middle_height: "Höhe in der Mitte", depth: "Wandhöhe", corners: "Ecklaschen", walls: "Wände", lid_depth: "Deckelhöhe",
    lid_fit: "Deckel sitzt", slide: "Lade gleitet", ribbon_slit: "Bandschlitz", columns: "Spalten", rows: "Reihen", column_width: "Spaltenbreite",
    row_height: "Reihenhöhe", slots: "Einschnitte", play: "Schlitzluft", join: "Zuschnitt", sides: "Seiten", around: "Vieleck",
    ...Object.fromEntries([1, 2, 3, 4, 5, 6, 7, 8].flatMap((n) => [["column_" + n, "Spalte " + n], ["row_" + n, "Reihe " + n]])) },
  titles: TITLES.de,
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
  problems: {
    unreadable: "„{value}“ lässt sich nicht lesen", "no-unit": "„{value}“ hat keine Einheit", ambiguous: "„{value}“ lässt sich auf zwei Arten lesen",
    unknown: "„{value}“ gibt es hier nicht", missing: "Diese Angabe fehlt noch", "out-of-range": "„{value}“ liegt außerhalb dessen, was geht",
    "too-fine": "„{value}“ ist feiner, als ein Lineal sein kann", "no-fit": "Mit diesem Lineal geht das nicht auf", conflict: "Zwei Angaben widersprechen sich",
    impossible: "So entsteht keine Hülle", "too-many-calls": "Es kamen zu viele Anfragen auf einmal", overloaded: "Der Dienst hat gerade zu viel zu tun",
    draining: "Der Dienst wird gerade neu gestartet", "took-too-long": "Die Rechnung hat zu lange gedauert", internal: "Dem Dienst ist ein Fehler unterlaufen",
  },
  readings: "Maße",
  cut: "Zuschneiden",
  by: "mal",
  times: "{}-mal",
  score: "Rillen",
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
  drawing: "Zeichnung",
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
      words[key] = typeof value === "object" ? { ...words[key], ...value } : value;
    }
  }
  return words;
}

// fill puts values into the places of a text.
function fill(text, values) {
  return text.replace(/\{(\w*)\}/g, (_, name) => (typeof values === "object" ? values[name] ?? "" : values));
}
