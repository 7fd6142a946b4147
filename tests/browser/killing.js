// What the killed browser's page is told to do: an object of functions, put into the page as text.
({
    // Stores a card of which all but one step is done, and returns its id.
    begin: async ({ root, only }) => {
        const { append, remember } = await import(root + "assets/cards/record/store.js");
        const { draft } = await import(root + "assets/cards/record/events.js");
        const card = crypto.randomUUID();
        const does = (who, kind, value) => append(draft({ card, who, kind, value }));
        await remember("initials", "RB");
        const vehicle = {
            family: "kestrel-3", family_title: "Kestrel 3", identification: "Marlow Drover, green",
            tyre: "", axle: "", odometer: "84210 km",
        };
        await does("RB", "start", { vehicle, complaint: "It shifts up late", fault: "" });
        const procedure = await (await fetch(root + "cards/data/set-band.json")).json();
        const { id: job } = await does("RB", "add", { procedure });
        for (const { number, readings, wants_second_check } of procedure.steps) {
            if (number === only) continue;
            const at = { job, step: number };
            for (const { id, when } of readings) {
                await does("RB", "reading", { ...at, reading: id, when, written: "1.5", reason: "" });
            }
            const { id: of } = await does("RB", "tick", at);
            if (wants_second_check) await does("SL", "check", { ...at, of });
        }
        return card;
    },

    // What is on disk of a card, and how its one step stands.
    dump: async ({ root, card, only }) => {
        const { eventsOf, pictureOf } = await import(root + "assets/cards/record/store.js");
        const { foldCard, steps } = await import(root + "assets/cards/record/fold.js");
        const events = await eventsOf(card);
        const hash = async (id) => {
            const picture = await pictureOf(id);
            if (!picture) return "no picture";
            const bytes = await crypto.subtle.digest("SHA-256", await picture.arrayBuffer());
            return [...new Uint8Array(bytes)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
        };
        const brief = events.sort((a, b) => a.clock - b.clock).map(async ({ id, kind, value }) => ({
            id, kind, step: value.step ?? 0, of: value.of ?? "",
            what: value.written ?? value.what ?? "", sha256: value.sha256 ?? "",
            picture: kind === "photo" ? await hash(id) : "",
        }));
        const step = steps(foldCard(events)).find(({ text }) => text.number === only);
        return { events: await Promise.all(brief), shape: step.shape, photos: step.photos.length };
    },

    // Works on the step in hand through the page's own buttons, one act after another, as fast as each
    // is shown as stored, and says so on the console, until it is killed.
    work: (first) => {
        // The guard against a second tap too soon is for thumbs: here the clock it looks at runs ahead.
        const real = performance.now.bind(performance);
        let ahead = 0;
        performance.now = () => real() + (ahead += 1000);

        const find = (selector) => document.querySelector(selector);
        const button = (words) =>
            [...document.querySelectorAll("#cards button")].find((one) => one.textContent === words);
        const tick = find("button.uh-tick");
        const aloud = find(".uh-card__work > [aria-live]");
        const until = (isSo) => new Promise((done) => {
            const look = () => isSo() && (watch.disconnect(), done());
            const watch = new MutationObserver(look);
            watch.observe(find("#cards"), { subtree: true, childList: true, attributes: true, characterData: true });
            look();
        });
        const told = async (act, words) => {
            aloud.textContent = "";
            act();
            await until(() => aloud.textContent.startsWith(words));
        };
        const photo = async (number) => {
            const canvas = new OffscreenCanvas(320, 240);
            const pen = canvas.getContext("2d");
            for (let at = 0; at < 60; at += 1) { // no two alike
                pen.fillStyle = `hsl(${(number * 47 + at * 31) % 360} 80% ${20 + ((number + at) % 60)}%)`;
                pen.fillRect((at * 53 + number) % 320, (at * 37) % 240, 40 + (number % 17), 30);
            }
            pen.fillText(String(number), 20, 20);
            const files = new DataTransfer();
            files.items.add(new File([await canvas.convertToBlob({ type: "image/jpeg" })], "photo.jpg"));
            const input = find(".uh-photo__take input");
            input.files = files.files;
            await told(() => input.dispatchEvent(new Event("change")), "Stored: the photo.");
            return "";
        };
        const reading = async (number) => {
            if (!find(".uh-card__reading input")) button("Change the reading").click();
            const written = (1.3 + (number % 50_000) / 100_000).toFixed(5);
            find(".uh-card__reading input").value = written;
            await told(() => find("form.uh-card__reading").requestSubmit(), "Recorded:");
            return written;
        };
        const finding = async (number) => {
            button("Finding").click();
            const form = find("form.uh-card__ask");
            const what = `Found while working, number ${number}`;
            form.querySelector("textarea").value = what;
            form.querySelector("input[type=radio]").checked = true;
            await told(() => form.requestSubmit(), "Stored: the finding.");
            return what;
        };
        const tickOff = async () => {
            tick.click();
            await until(() => tick.dataset.state === "stored");
            return "";
        };
        const undo = async () => {
            await told(() => button("Undo").click(), "Taken back:");
            return "";
        };
        const acts = { reading, finding, photo };
        const work = async () => {
            for (let number = first; ; number += 1) {
                let kind = ["tick", "reading", "photo", "finding", "undo"][Math.floor(Math.random() * 5)];
                if (kind === "undo" && !button("Undo")) kind = "photo";
                if (kind === "tick" && find(".uh-card__reading input")) kind = "reading"; // it comes before the tick
                if (kind === "tick" && tick.dataset.state === "stored") kind = "undo";
                const what = await (acts[kind] ?? (kind === "tick" ? tickOff : undo))(number);
                console.log(JSON.stringify({ confirmed: kind, what }));
                await new Promise((done) => setTimeout(done, 0));
            }
        };
        void work().catch((error) => console.log(JSON.stringify({ failed: String(error) })));
    },
})
