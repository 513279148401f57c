// Products as a shop has them: structured data of its own pages, or an export. Both
// become { id, title, price, width, height, thickness }, sizes with their units.

// Unit codes of UN/CEFACT Recommendation 20, which schema.org uses.
const UNITS = { MMT: "mm", CMT: "cm", MTR: "m", INH: "in" };

// size writes a QuantitativeValue; a plain text stays as it is.
function size(value) {
  if (typeof value === "string") return value;
  if (!value) return "";
  const unit = UNITS[value.unitCode] ?? value.unitText;
  return unit ? `${value.value} ${unit}` : "";
}

// fromStructuredData lists the products that a page describes (schema.org, JSON-LD).
export function fromStructuredData(page) {
  const found = [];
  const visit = (node) => {
    if (Array.isArray(node)) return node.forEach(visit);
    if (!node || typeof node !== "object") return;
    if ([node["@type"]].flat().includes("Product")) {
      const [width, height, thickness] = [node.width, node.height, node.depth].map(size);
      const offer = [node.offers].flat()[0];
      found.push({ id: String(node.sku ?? node.gtin ?? node.name), title: node.name, price: offer ? `${offer.price} ${offer.priceCurrency ?? ""}`.trim() : "", width, height, thickness });
      return;
    }
    Object.values(node).forEach(visit);
  };
  for (const script of page.querySelectorAll('script[type="application/ld+json"]')) {
    try {
      visit(JSON.parse(script.textContent));
    } catch {
      // What is no JSON describes no product.
    }
  }
  return found.filter(({ width }) => width);
}

// COLUMNS are the headings that exports use for what is needed, the usual ones first.
const COLUMNS = {
  id: /^(id|sku|item[ _]?(no|number)|gtin|ean|artikelnummer)$/,
  title: /^(title|name|product|bezeichnung|titel)$/,
  price: /^(price|preis)/,
  width: /^(inner[ _]?|product[ _]?)?(width|breite)/,
  height: /^(inner[ _]?|product[ _]?)?(height|length|höhe|länge)/,
  thickness: /^(inner[ _]?|product[ _]?)?(thickness|depth|tiefe|dicke)/,
};

// fromExport lists the products of a table that a shop exports.
export function fromExport(text) {
  const [header = [], ...rows] = cells(text.replace(/^\ufeff/, ""));
  const names = header.map((heading) => heading.trim().toLowerCase());
  const at = Object.fromEntries(Object.entries(COLUMNS).map(([name, heading]) => [name, names.findIndex((n) => heading.test(n))]));
  // A unit may stand in the heading alone: width (mm).
  const withUnit = (name, cell) => (/[a-z"]/i.test(cell) ? cell : cell && `${cell} ${/\b(mm|cm|in)\b/.exec(names[at[name]])?.[1] ?? ""}`.trim());
  return rows.map((row) => Object.fromEntries(Object.entries(at).map(([name, i]) => {
    const cell = (row[i] ?? "").trim();
    return [name, ["width", "height", "thickness"].includes(name) ? withUnit(name, cell) : cell];
  }))).filter(({ id, width }) => id && width);
}

// cells reads a table as RFC 4180 has it, whatever its separator.
function cells(text) {
  const first = text.slice(0, text.search(/\r|\n|$/));
  const separator = [";", "\t", ","].find((mark) => first.includes(mark)) ?? ",";
  const rows = [[""]];
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const c = text[i];
    const row = rows.at(-1);
    if (quoted && c === '"' && text[i + 1] === '"') row[row.length - 1] += text[++i];
    else if (c === '"' && (quoted || row.at(-1) === "")) quoted = !quoted;
    else if (quoted) row[row.length - 1] += c;
    else if (c === separator) row.push("");
    else if (c === "\n" || c === "\r") { if (row.length > 1 || row[0]) rows.push([""]); }
    else row[row.length - 1] += c;
  }
  return rows.filter((row) => row.length > 1 || row[0]);
}
