// svgFrom builds a picture of the service from its text, tag by tag: pages that
// demand Trusted Types have no parser of markup. Nothing that runs or styles is
// built.
function svgFrom(text) {
  const plain = (part) => part.replace(/&(?:#(\d+)|(\w+));/g, (_, code, name) => (code ? String.fromCodePoint(code) : { lt: "<", gt: ">", amp: "&", quot: '"', apos: "'" }[name]));
  let root, at;
  for (const [, close, tag, attributes, empty, words] of text.matchAll(/<(\/?)([a-zA-Z]+)((?:\s+[\w:-]+="[^"]*")*)\s*(\/?)>|([^<]+)/g)) {
    if (words) {
      if (at && words.trim()) at.append(plain(words));
    } else if (close) {
      at = at?.parentNode;
    } else if (/^(script|style|foreignObject)$/i.test(tag)) {
      return null; // the service draws without
    } else {
      const made = document.createElementNS("http://www.w3.org/2000/svg", tag);
      for (const [, name, value] of attributes.matchAll(/([\w:-]+)="([^"]*)"/g)) if (!/^(on|xmlns)/.test(name)) made.setAttribute(name, plain(value));
      if (at) at.append(made);
      else root ??= made;
      if (!empty) at = made;
    }
  }
  return root?.localName === "svg" ? root : null;
}
