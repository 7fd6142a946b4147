/** Draws again only what differs: what stands on the page already is neither laid out nor painted anew. */

/**
 * Makes a place hold what a fresh one holds. Equal nodes stay, with their listeners and the reader's
 * focus; the fresh place gives away the others.
 * @param {Node} place
 * @param {Node} fresh
 */
export function redraw(place, fresh) {
  const [old, now] = [[...place.childNodes], [...fresh.childNodes]];
  const head = alike(old, now);
  const tail = alike(old.slice(head).reverse(), now.slice(head).reverse());
  const after = old[old.length - tail] ?? null;
  const [gone, come] = [old.slice(head, old.length - tail), now.slice(head, now.length - tail)];
  if (gone.length === come.length) {
    gone.forEach((each, at) => redrawOne(each, come[at]));
    return;
  }
  for (const each of gone) each.remove();
  for (const each of come) place.insertBefore(each, after);
}

/**
 * How many of the first nodes are equal.
 * @param {Node[]} old
 * @param {Node[]} now
 */
function alike(old, now) {
  const differs = old.findIndex((each, at) => !each.isEqualNode(now[at] ?? null));
  return differs < 0 ? old.length : differs;
}

/**
 * Keeps an element if only what is in it differs.
 * @param {ChildNode} old
 * @param {ChildNode} now
 */
function redrawOne(old, now) {
  const isSame = old instanceof Element && now instanceof Element && old.cloneNode(false).isEqualNode(now.cloneNode(false));
  if (isSame) redraw(old, now);
  else old.replaceWith(now);
}
