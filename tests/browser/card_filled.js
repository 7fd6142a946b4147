// Run in the cards' page: stores a whole card through the page's own store, returns its id.
async ({ root, procedures, readings, what }) => {
  const { append, remember } = await import(`${root}assets/cards/record/store.js`);
  const { draft } = await import(`${root}assets/cards/record/events.js`);
  const { isOutside, readNumber } = await import(`${root}assets/cards/record/numbers.js`);
  const card = crypto.randomUUID();
  let seen = 0;

  const does = async (who, kind, value, picture) => {
    const event = await append(draft({ card, who, kind, value }), seen, picture);
    seen = event.clock;
    return event.id;
  };

  const picture = async (fill) => {
    const canvas = new OffscreenCanvas(640, 480);
    const context = canvas.getContext("2d");
    for (const [colour, ...box] of [[fill, 0, 0, 640, 480], ["#888888", 200, 150, 240, 180]]) {
      context.fillStyle = colour;
      context.fillRect(...box);
    }
    const blob = await canvas.convertToBlob({ type: "image/jpeg", quality: 0.7 });
    return { type: blob.type, content: await blob.arrayBuffer() };
  };

  const photo = async (job, step, finding, isKept) => {
    const shot = await picture(finding ? "#222222" : "#dddddd");
    const facts = { type: shot.type, width: 640, height: 480, bytes: shot.content.byteLength, sha256: "" };
    await does("RB", "photo", { job, step, finding, ...facts }, isKept ? shot : undefined);
  };

  const read = async (at, asked, when) => {
    const written = readings[asked.id.split("/").at(-1)] ?? String(asked.low ?? 1);
    const { number } = readNumber(written);
    const wantsReason = number === undefined || isOutside(number, asked);
    const reason = wantsReason ? "=Worn, the owner says" : "";
    await does("RB", "reading", { ...at, reading: asked.id, when, written, reason });
  };

  const work = async ({ id }, job, step) => {
    const at = { job, step: step.number };
    const staysOff = step.puts_back.some((thing) => what.off?.includes(thing));
    if (staysOff || what.skip?.includes(`${id} ${step.number}`)) {
      return does("RB", "not-needed", { ...at, reason: "Not on this vehicle" });
    }
    for (const asked of step.readings) {
      const times = asked.when === "both" ? ["as found", "as left"] : [asked.when];
      for (const when of times) await read(at, asked, when);
    }
    const of = await does("RB", "tick", at);
    const isChecked = step.wants_second_check && !what.unchecked;
    return isChecked ? does("SL", "check", { ...at, of }) : of;
  };

  await remember("initials", "RB");
  await does("RB", "start", { vehicle: what.vehicle, complaint: what.complaint, fault: "" });
  const jobs = [];
  for (const id of procedures) {
    const procedure = await (await fetch(`${root}cards/data/${id}.json`)).json();
    jobs.push([procedure, await does("RB", "add", { procedure })]);
  }
  for (const [procedure, job] of jobs) {
    for (const step of procedure.steps) await work(procedure, job, step);
  }
  const first = jobs[0][1];
  for (const isKept of what.photos ?? []) await photo(first, 1, "", isKept);
  for (const [found, urgency, decision, note] of what.findings ?? []) {
    const finding = await does("RB", "finding", { job: first, step: 1, what: found, urgency });
    if (what.photos) await photo("", 0, finding, true);
    if (decision) await does("SL", "decide", { of: finding, decision, note });
  }
  return card;
}
