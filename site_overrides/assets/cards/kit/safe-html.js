// Text as the build made it, let in by an allow-list: a card may hold any text that was stored on, or
// brought to, this phone, and a draft any text that was pasted.

const TAGS = new Set(
  ("A ASIDE B BLOCKQUOTE BR CAPTION CODE DATA DD DIV DL DT EM FIGCAPTION FIGURE FOOTER H1 H2 H3 H4 H5 H6 HR I IMG " +
    "KBD LI OL P PATH PRE S SECTION SMALL SPAN STRONG SUB SUP SVG TABLE TBODY TD TH THEAD TR UL").split(" "),
);

const ATTRIBUTES = new Set(
  "alt aria-hidden aria-label colspan d data-label fill-rule focusable height role scope value viewBox width".split(
    " ",
  ),
);

/** Tags whose text goes as well: it was never meant to be read. */
const WHOLE = new Set("IFRAME MATH NOSCRIPT OBJECT SCRIPT STYLE TEMPLATE TEXTAREA TITLE".split(" "));

/**
 * @param {string} html
 * @param {URL} base what its links count from
 * @returns {DocumentFragment}
 */
export function safeFragment(html, base) {
  const parsed = new DOMParser().parseFromString(html, "text/html"); // runs and loads nothing
  const fragment = document.createDocumentFragment();
  for (const node of parsed.body.childNodes) fragment.append(...copied(node, base));
  return fragment;
}

/**
 * @param {Node} node
 * @param {URL} base
 * @returns {Node[]}
 */
function copied(node, base) {
  if (node instanceof Text) return [document.createTextNode(node.data)];
  if (!(node instanceof Element)) return [];
  const tag = node.localName.toUpperCase();
  if (WHOLE.has(tag)) return [];
  const children = [...node.childNodes].flatMap((child) => copied(child, base));
  if (!TAGS.has(tag)) return children;
  const copy = document.createElementNS(node.namespaceURI, node.localName);
  for (const { name, value } of node.attributes) copyAttribute(copy, name, value, base);
  copy.append(...children);
  return [copy];
}

/**
 * @param {Element} copy
 * @param {string} name
 * @param {string} value
 * @param {URL} base
 */
function copyAttribute(copy, name, value, base) {
  if (name === "class") {
    const ours = value.split(/\s+/).filter((word) => word.startsWith("uh-"));
    if (ours.length > 0) copy.setAttribute("class", ours.join(" "));
  } else if (name === "href" || name === "src") {
    const wanted = copy.localName === (name === "href" ? "a" : "img");
    const address = wanted ? addressOf(value, base) : null;
    if (address?.origin === location.origin) copy.setAttribute(name, address.href);
  } else if (ATTRIBUTES.has(name)) {
    copy.setAttribute(name, value);
  }
}

/**
 * @param {string} value
 * @param {URL} base
 */
function addressOf(value, base) {
  try {
    return new URL(value, base);
  } catch {
    return null;
  }
}
