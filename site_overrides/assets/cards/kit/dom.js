// Makes elements. Text goes in as text: nothing written here can become markup.

/** @typedef {string|number|boolean|null|undefined|((event: any) => void)} Attribute */

/**
 * An element with attributes and children. `true` sets an empty attribute; `false` and null leave it
 * out; a function named `onclick` and the like listens.
 *
 * @template {keyof HTMLElementTagNameMap} T
 * @param {T} tag
 * @param {Record<string, Attribute>} [attributes]
 * @param {...(Node|string|null|false)} children
 * @returns {HTMLElementTagNameMap[T]}
 */
export function el(tag, attributes = {}, ...children) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === "function") made.addEventListener(name.slice(2), value);
    else set(made, name, value);
  }
  made.append(...children.filter((child) => child !== null && child !== false));
  return made;
}

/**
 * A drawing: an `svg` of the given paths, hidden from screen readers, which get the word instead.
 *
 * @param {string} className
 * @param {string} viewBox
 * @param {Record<string, string>} paths `d` by class name
 */
export function drawing(className, viewBox, paths) {
  const space = "http://www.w3.org/2000/svg";
  const svg = document.createElementNS(space, "svg");
  const attributes = { class: className, viewBox, "aria-hidden": "true", focusable: "false" };
  for (const [name, value] of Object.entries(attributes)) svg.setAttribute(name, value);
  for (const [name, d] of Object.entries(paths)) {
    const path = document.createElementNS(space, "path");
    path.setAttribute("class", name);
    path.setAttribute("d", d);
    svg.append(path);
  }
  return svg;
}

/**
 * @param {Element} element
 * @param {string} name
 * @param {Attribute} value
 */
function set(element, name, value) {
  if (/^on/i.test(name)) throw new TypeError(`${name} wants a function`);
  if (value === false || value === null || value === undefined) return;
  element.setAttribute(name, value === true ? "" : String(value));
}
