"use strict";

// What a check of the sizing service means to somebody who holds the thing in
// her hand. A check has one clearance for each direction (fit), the bounds on
// other sizes (limits) and the largest contents (greatest).

const SURE = 0.95; // chance below which a yes is a perhaps
const SLACK = ["loose", "slack"];

// about writes a length the way people say it: to 1/32 in, or to half a
// millimetre. What lies between goes the way of round.
function about(length, unit, round = Math.round) {
  if (unit === "mm") return round(length.mm * 2) / 2 + "\u00a0mm";
  let [parts, per] = [round(length.in * 32), 32];
  while (per > 1 && parts % 2 === 0) [parts, per] = [parts / 2, per / 2];
  const [whole, rest] = [Math.floor(parts / per), parts % per];
  return (rest && whole ? whole + "\u00a0" : "") + (rest ? rest + "/" + per : whole) + "\u00a0in";
}

// difference writes a clearance or its lack; it may be too small for a ruler.
function difference(length, unit) {
  const size = { in: Math.abs(length.in), mm: Math.abs(length.mm) };
  return size.mm < 0.4 ? "a hair" : about(size, unit);
}

// tightest is the fit of a size: that of its direction with the least room.
// How a lid goes over its tray is not the visitor's business.
function tightest(check, { names }) {
  const own = check.fit.filter((fit) => names.includes(fit.axis) && !fit.between);
  return own.sort((a, b) => a.nominal.in - b.nominal.in)[0];
}

// beyond says in the kit's words which other size is out of its limits: a
// headline, and by how much.
function beyond(check, kit, unit) {
  for (const { name, allowed: [least, most], value } of check.limits) {
    const words = kit.limits?.[name];
    const side = value.in < least.in ? "less" : value.in > most.in ? "more" : "";
    if (words && side) return [words.title, words[side].replace("{}", difference(value, unit))];
  }
  return [];
}

// headline is the answer in one line, with what it comes to: yes, slack, no.
function headline(check, fits, other, thing) {
  const [verdicts, chance] = [fits.map((fit) => fit.verdict), Math.min(...fits.map((fit) => fit.chance))];
  if (verdicts.includes("tight")) return ["no", `No: your ${thing} is too big.`];
  if (other) return ["slack", other];
  if (verdicts.some((verdict) => SLACK.includes(verdict))) return ["slack", "It goes in, but it is slack."];
  if (!check.works) return ["no", check.words];
  if (chance < SURE) return ["slack", `Perhaps: your ${thing} may just go in.`];
  if (verdicts.every((verdict) => verdict === "snug")) return ["yes", `Yes: your ${thing} fits snugly.`];
  return ["yes", verdicts.includes("snug") ? `Yes: your ${thing} goes in, snugly one way.` : `Yes: your ${thing} goes in easily.`];
}

// sureness says how often it would go in, made and measured as exactly as
// people do.
function sureness(fits) {
  const n = Math.min(99, Math.max(1, Math.round(Math.min(...fits.map(({ chance }) => chance)) * 100)));
  if (fits.every(({ worst_case: [least] }) => least.in >= 0)) return "How sure? Even if every cut and every look at your ruler is a little off, it goes in.";
  if (fits.some(({ worst_case: [, most] }) => most.in < 0)) return "How sure? However kindly the cuts and your ruler err, it does not go in.";
  return `How sure? No cut and no ruler is exact: it would go in about ${n} times in 100.`;
}

// largest says what the kit takes at most.
function largest(check, kit, unit) {
  const sizes = kit.sizes.flatMap(({ label, names }) => {
    const known = names.map((name) => check.greatest[name]).filter(Boolean).sort((a, b) => a.in - b.in);
    return known.length ? [about(known[0], unit, Math.floor) + " " + label.toLowerCase()] : [];
  });
  return `The largest ${kit.thing} for it: ${sizes.join(", ")}.`;
}

// answerIn puts a check into words: what it comes to, a line that says it, and
// the lines that say why.
function answerIn(check, kit, unit) {
  const sizes = kit.sizes.map((size) => ({ ...size, fit: tightest(check, size) })).filter(({ fit }) => fit);
  const fits = sizes.map(({ fit }) => fit);
  const [other, outside] = beyond(check, kit, unit);
  const [mark, title] = headline(check, fits, other, kit.thing);
  const room = sizes.map(({ label, fit }) => `${label}: ${difference(fit.nominal, unit)} ${fit.verdict === "tight" ? "too big" : "of room"}.`);
  return { mark, title, lines: [...room, mark !== "no" && outside, sureness(fits), largest(check, kit, unit)].filter(Boolean) };
}
