// A small card to try things on, and events as a phone would make them.

import { draft, seal } from "../../site_overrides/assets/cards/record/events.js";

const step = (number, more = {}) => ({
  number,
  html: `<p class="uh-step__do">Do ${number}.</p>`,
  text: `Do ${number}.`,
  torques: [],
  cautions: [],
  readings: [],
  wants_second_check: false,
  ...more,
});

export const TURNS = {
  id: "set-band/turns-to-seat",
  name: "Turns until the adjuster seats",
  unit: "turn",
  unit_words: "turns",
  when: "as found",
  low: 1.25,
  high: 2,
  limits_text: "1 1/4 to 2 turns",
};

export const PROCEDURE = {
  format: 1,
  id: "set-band",
  title: "Set the front band",
  revision: "0123456789",
  url: "kestrel-3/set-band/",
  family: ["kestrel-3"],
  area: "bands",
  minutes: 25,
  who: "apprentice",
  before: [],
  after: [],
  tools: [],
  parts: [],
  consumables: [],
  fluids: [],
  cautions: [],
  steps: [step(1), step(2, { readings: [TURNS] }), step(3, { wants_second_check: true })],
};

export const VEHICLE = {
  family: "kestrel-3",
  family_title: "Kestrel 3",
  identification: "Marlow Drover, green",
  tyre: "",
  axle: "",
  odometer: "84210 km",
};

/** A phone: seals what happens on it, behind everything it has seen. */
export class Phone {
  constructor(name) {
    this.device = name;
    this.sequence = 0;
    this.hash = "";
    this.seen = [];
  }

  async does(who, kind, value, { card = "card-1", seen = 0, revision = "" } = {}) {
    const clock = Math.max(seen, ...this.seen.map((event) => event.clock));
    const head = { device: this.device, sequence: this.sequence, hash: this.hash, clock };
    const event = await seal(draft({ card, who, kind, value, revision }), head);
    this.sequence = event.sequence;
    this.hash = event.hash;
    this.seen.push(event);
    return event;
  }

  sees(events) {
    const known = new Set(this.seen.map(({ id }) => id));
    this.seen.push(...events.filter(({ id }) => !known.has(id)));
  }
}

/** A phone with a started card that holds one procedure. */
export async function startedPhone(name = "phone-a") {
  const phone = new Phone(name);
  const complaint = "Shifts up late";
  await phone.does("RB", "start", { vehicle: VEHICLE, complaint, fault: "" });
  const job = (await phone.does("RB", "add", { procedure: PROCEDURE })).id;
  return { phone, job };
}

/** Numbers from 0 up to 1, the same for the same seed (mulberry32). */
export function dice(seed) {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
