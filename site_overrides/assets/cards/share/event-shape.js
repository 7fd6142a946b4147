// What an event from outside must hold: the envelope whole, and what its kind needs.

import { KINDS, SCHEMA, isWhole } from "../record/events.js";
import { isReadable } from "../record/formats.js";
import { procedure } from "./procedure-shape.js";
import { Refusal } from "./refusal.js";
import { group, listOf, maybe, number, text, textLike, whole } from "./shape.js";

/** @import { CardEvent } from "../types.js" */
/** @import { Check } from "./shape.js" */

const UUID = textLike(/^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/, "a UUID");
const HASH = textLike(/^[0-9a-f]{64}$/, "a hash of 64 hexadecimal digits");

const ENVELOPE = group({
  id: UUID,
  schema: whole(1, 1000),
  device: UUID,
  sequence: whole(1),
  clock: whole(1),
  previous: textLike(/^([0-9a-f]{64})?$/, "a hash of 64 hexadecimal digits or an empty text"),
  hash: HASH,
  at: moment,
  who: text(40),
  card: UUID,
  kind: textLike(/^[a-z][a-z-]{0,39}$/, "a kind of event"),
  value: group({}),
  revision: textLike(/^[\w-]*$/, "a revision"),
});

const ENVELOPE_KEYS = new Set(
  "id schema device sequence clock previous hash at who card kind value revision".split(" "),
);

const VEHICLE = group({
  family: text(200),
  family_title: text(200),
  identification: text(),
  tyre: maybe(text(200)),
  axle: maybe(text(200)),
  odometer: maybe(text(200)),
});

/** What any kind may hold beside its own. */
const COMMON = group({ step: maybe(number), from: maybe(text()), unit: maybe(text(80)) });

const CODE = text(80);

/** What a calculator made of its entries. */
const ANSWER = group({ calculator: CODE, pattern: CODE, rivals: listOf(CODE, 40) });

/** What the kinds hold beyond their texts. @type {Record<string, Check>} */
const VALUES = {
  start: group({ vehicle: VEHICLE }),
  vehicle: group({ vehicle: VEHICLE }),
  photo: group({ sha256: HASH }),
  renew: group({ words: listOf(text()) }),
  reading: group({ answer: maybe(ANSWER) }),
  calculation: ANSWER,
  "hand-back": group({ fault: maybe(text(200)) }),
  finding: group({ fault: maybe(text(200)), cause: maybe(text(200)), name: maybe(text()), likely: maybe(text(200)) }),
  result: group({ name: maybe(text()), minutes: maybe(number), note: maybe(text()) }),
};

/**
 * Refuses an event that the record cannot hold. Kinds of a newer version pass: they are kept.
 *
 * @param {unknown} value
 * @param {string} where
 * @returns {CardEvent}
 */
export function checkEvent(value, where) {
  ENVELOPE(value, where);
  const event = /** @type {CardEvent} */ (value);
  const place = `${where} (${event.kind})`;
  const extra = Object.keys(event).find((key) => !ENVELOPE_KEYS.has(key));
  if (extra !== undefined && event.schema <= SCHEMA) {
    throw new Refusal(place, `“${extra.slice(0, 40)}” is no part of an event.`);
  }
  if (!Object.hasOwn(KINDS, event.kind)) return event;
  if (!isWhole(event)) throw new Refusal(place, "It does not hold what an event of this kind needs.");
  COMMON(event.value, `${place}, value`);
  VALUES[event.kind]?.(event.value, `${place}, value`);
  const kept = event.value.procedure;
  const isText = event.kind === "add" || event.kind === "renew";
  if (isText && isReadable(kept)) procedure(kept, `${place}, procedure`);
  return event;
}

/**
 * A day and time in UTC as this page writes them.
 *
 * @param {unknown} value
 * @param {string} where
 */
function moment(value, where) {
  textLike(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,3})?Z$/, "a date and time")(value, where);
  if (Number.isNaN(Date.parse(String(value)))) throw new Refusal(where, `“${value}” is no date.`);
}
