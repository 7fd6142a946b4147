// What a procedure's text from outside must hold, so that every view can show it.

import { Refusal, shown } from "./refusal.js";
import { group, listOf, maybe, number, oneOf, orNull, text, textLike, whole, yesOrNo } from "./shape.js";

/** @import { Check } from "./shape.js" */

const named = { id: text(200), name: text() };

const caution = group({
  id: text(200),
  word: oneOf(["danger", "warning", "caution", "notice"]),
  harm: text(),
  avoid: text(),
});

const reading = group({
  ...named,
  unit: text(40),
  unit_words: text(80),
  when: oneOf(["as found", "as left", "both"]),
  low: orNull(number),
  high: orNull(number),
  limits_text: text(200),
  fluid: maybe(oneOf(["", "in", "out"])),
});

const step = group({
  number: whole(1, 1000),
  html: text(100_000), // shown only through kit/safe-html.js
  text: text(4000),
  torques: listOf(group({ ...named, value: text(200) })),
  cautions: listOf(caution),
  readings: listOf(reading),
  wants_second_check: yesOrNo,
  takes_off: maybe(listOf(text(200))),
  puts_back: maybe(listOf(text(200))),
});

const variant = group({ name: text(), tell: text(), measures: listOf(text(200)) });

/** Of formats 1 and 2. @type {Check} */
export const procedure = group({
  format: maybe(whole(1)),
  id: textLike(/^[\w-]+$/, "a procedure’s id"),
  title: text(200),
  revision: textLike(/^[\w-]*$/, "a revision"),
  date: maybe(text(40)),
  author: maybe(text(40)),
  url: address,
  family: listOf(text(200)),
  area: text(200),
  minutes: number,
  who: text(200),
  before: listOf(text(200)),
  after: listOf(text(200)),
  tools: listOf(group(named)),
  parts: listOf(group({ ...named, variants: maybe(listOf(variant)) })),
  consumables: listOf(text(200)),
  fluids: listOf(text(200)),
  cautions: listOf(caution),
  calculators: maybe(listOf(group({ ...named, url: address }))),
  steps: listOf(step),
});

/**
 * An address inside the manual: it names no other place and runs nothing.
 *
 * @type {Check}
 */
function address(value, where) {
  text(2000)(value, where);
  // A browser drops control characters and takes \ for /: neither belongs into an address of ours.
  if (/^\s*[a-z][a-z0-9+.-]*:|^\s*\/\/|[\\\p{Cc}]/iu.test(String(value))) {
    throw new Refusal(where, `${shown(value)} leads out of the manual.`);
  }
}
