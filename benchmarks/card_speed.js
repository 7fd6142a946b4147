// What the measured page is told to do: an object of functions, put into the page as text.
({
    // Stores cards of about so many events each, all in sealed chains, and returns their ids.
    store: async ({ root, cards, events, procedures }) => {
        const { seal, draft } = await import(root + "assets/cards/record/events.js");
        const { takeIn } = await import(root + "assets/cards/record/merge.js");
        const { remember } = await import(root + "assets/cards/record/store.js");
        await remember("initials", "RB");
        const texts = await Promise.all(
            procedures.map(async (id) => (await fetch(root + "cards/data/" + id + ".json")).json()),
        );
        let head = { device: crypto.randomUUID(), sequence: 0, hash: "", clock: 0 };
        const made = [];
        for (let number = 0; number < cards; number += 1) {
            const card = crypto.randomUUID();
            const all = [];
            const does = async (who, kind, value) => {
                const event = await seal(draft({ card, who, kind, value }), head);
                head = { ...head, sequence: event.sequence, hash: event.hash, clock: event.clock };
                all.push(event);
                return event;
            };
            const vehicle = {
                family: "kestrel-3", family_title: "Kestrel 3", identification: `Marlow Drover ${number}`,
                tyre: "", axle: "", odometer: "84210 km",
            };
            await does("RB", "start", { vehicle, complaint: "It shifts up late", fault: "" });
            const jobs = [];
            for (const procedure of texts) jobs.push((await does("RB", "add", { procedure })).id);
            const places = texts.flatMap((text, at) => text.steps.map((step) => [jobs[at], step]));
            for (let turn = 0; all.length < events; turn += 1) {
                const [job, step] = places[turn % places.length];
                const at = { job, step: step.number };
                for (const { id, when, low } of step.readings) {
                    const time = when === "both" ? "as found" : when;
                    await does("RB", "reading", { ...at, reading: id, when: time, written: String(low ?? 1), reason: "" });
                }
                if (turn % 9 === 0) await does("RB", "finding", { ...at, what: `Worn, ${turn}`, urgency: "this visit" });
                if (turn % 13 === 0) await does("RB", "photo", { ...at, finding: "", type: "image/jpeg", sha256: "0".repeat(64), width: 8, height: 8, bytes: 9 });
                const { id: of } = await does("RB", "tick", at);
                if (step.wants_second_check) await does("SL", "check", { ...at, of });
                if (all.length < events) await does("RB", "undo", { of });
            }
            await takeIn(all);
            made.push({ card, events: all.length, steps: places.length });
        }
        return made;
    },

    // Goes to an address of the page and waits until what the selector names is painted.
    go: ({ hash, selector }) => new Promise((done) => {
        const began = performance.now();
        location.hash = hash;
        const look = () => {
            if (!document.querySelector(selector)) return requestAnimationFrame(look);
            requestAnimationFrame(() => setTimeout(() => done(performance.now() - began)));
        };
        requestAnimationFrame(look);
    }),

    // Ticks the step in hand: until the tick shows that it is being stored, and until it is stored.
    // Fails where there is nothing to tick, or where the page refuses: neither would ever end.
    tick: () => new Promise((done, fail) => {
        const LONGEST = 30_000;
        const tick = document.querySelector("button.uh-tick");
        if (tick.dataset.state !== "todo") throw new Error(`this step cannot be ticked: ${tick.dataset.state}`);
        const word = () => tick.getAttribute("aria-label") + tick.dataset.state;
        const before = word();
        const began = performance.now();
        let shown = 0;
        tick.click();
        requestAnimationFrame(() => setTimeout(() => { shown = performance.now() - began; }));
        const look = () => {
            const there = word() !== before && tick.dataset.state !== "storing";
            if (there) setTimeout(() => done({ shown, stored: performance.now() - began }));
            else if (performance.now() - began > LONGEST) fail(new Error("the tick was not stored"));
            else requestAnimationFrame(look);
        };
        requestAnimationFrame(look);
    }),

    // The text of a card's file.
    file: async ({ root, card }) => {
        const { fileOf } = await import(root + "assets/cards/share/exchange.js");
        return await fileOf(card, "Measured", false);
    },

    // Presses a button by its words, and waits until what the selector names says something else.
    press: ({ words, selector, then }) => new Promise((done) => {
        const began = performance.now();
        [...document.querySelectorAll("#cards button")].find((one) => one.textContent === words).click();
        const look = () => {
            const there = document.querySelector(selector)?.textContent.startsWith(then);
            if (there) done(performance.now() - began);
            else requestAnimationFrame(look);
        };
        look();
    }),
})
