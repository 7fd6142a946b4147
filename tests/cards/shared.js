// A card that is fit to be shared: its ids are UUIDs, as a phone makes them.

import { createHash } from "node:crypto";

import { PROCEDURE, Phone, VEHICLE } from "./helpers.js";

export const CARD = "11111111-1111-4111-8111-111111111111";
export const FIRST = "aaaaaaaa-aaaa-4aaa-8aaa-aaaaaaaaaaaa";
export const SECOND = "bbbbbbbb-bbbb-4bbb-8bbb-bbbbbbbbbbbb";

/** A JPEG's beginning, a frame header of so many pixels and its end, which is all that is looked at. */
export const jpegOf = (width, height) =>
  Uint8Array.from([
    ...[0xff, 0xd8, 0xff, 0xe0, 0, 7, 74, 70, 73, 70, 0],
    ...[0xff, 0xc0, 0, 11, 8, height >> 8, height & 255, width >> 8, width & 255, 1, 1, 0x11, 0, 0xff, 0xd9],
  ]); // prettier-ignore
export const JPEG = jpegOf(4, 3);

/** A phone whose card has one procedure, a tick and a reading; and its file. */
export async function sharedCard(device = FIRST) {
  const phone = new Phone(device);
  const does = (kind, value) => phone.does("RB", kind, value, { card: CARD });
  await does("start", { vehicle: VEHICLE, complaint: "Shifts up late", fault: "" });
  const job = (await does("add", { procedure: PROCEDURE })).id;
  await does("tick", { job, step: 1 });
  const reading = { reading: "set-band/turns-to-seat", when: "as found", written: "2", reason: "" };
  await does("reading", { job, step: 2, unit: "turn", ...reading });
  const file = { card: CARD, name: "Marlow Drover, green", events: phone.seen, elsewhere: [], pictures: new Map() };
  return { phone, job, file };
}

/** The same with a photo. */
export async function withPhoto(type = "image/jpeg", bytes = JPEG) {
  const { phone, job, file } = await sharedCard();
  const sha256 = createHash("sha256").update(bytes).digest("hex");
  const value = { job, step: 1, finding: "", type, width: 4, height: 3, bytes: bytes.length, sha256 };
  const photo = await phone.does("RB", "photo", value, { card: CARD });
  const pictures = new Map([[photo.id, { type, content: bytes.buffer.slice(0) }]]);
  return { phone, photo, file: { ...file, pictures } };
}
