// Runs before the first paint, so that a page never flashes in the wrong paper. Kept small for that reason.
(() => {
  const KEY = "paper";
  const SAFETY = "follow the vehicle maker's manual and local law";
  const COLOURS = { light: "#fbf8f1", dark: "#101b21" };
  const root = document.documentElement;

  /** The reader's choice; light where there is none or where the browser keeps nothing. */
  function chosen() {
    try {
      return localStorage.getItem(KEY) === "dark" ? "dark" : "light";
    } catch {
      return "light";
    }
  }

  /** @param {"light" | "dark"} paper */
  function lay(paper) {
    root.dataset.paper = paper;
    document.querySelector('meta[name="theme-color"]')?.setAttribute("content", COLOURS[paper]);
    const button = document.getElementById("paper");
    if (button) button.textContent = paper === "dark" ? "Light paper" : "Dark paper";
  }

  function turn() {
    const paper = root.dataset.paper === "dark" ? "light" : "dark";
    lay(paper);
    try {
      localStorage.setItem(KEY, paper);
    } catch {
      // The choice then lasts for this page only.
    }
  }

  /** Gives every link into the manual its page's code, such as "kestrel-3/set-band", for paper. */
  function codeLinks() {
    const site = new URL(`${root.querySelector('meta[name="uh-root"]')?.getAttribute("content")}/`, location.href);
    const inText = "main :is(li, p) a:not(.uh-chip, .uh-fetch a, .uh-facts a, [href^='#'])";
    for (const link of document.querySelectorAll(inText)) {
      const { href } = /** @type {HTMLAnchorElement} */ (link);
      if (!href.startsWith(site.href)) continue;
      const code = href.slice(site.href.length).replace(/[?#].*$/, "").replace(/\/$/, "");
      if (code) link.setAttribute("data-code", code);
    }
  }

  lay(chosen());
  addEventListener("storage", () => lay(chosen()));
  addEventListener("pageshow", () => lay(chosen()));
  addEventListener("beforeprint", () => {
    const today = new Intl.DateTimeFormat("en-GB", { dateStyle: "long" }).format(new Date());
    const printed = document.getElementById("printed");
    if (printed) printed.textContent = today;
    const revision = document.getElementById("revision")?.textContent;
    const foot = [document.title, revision && `revision ${revision}`, `printed ${today}`, SAFETY];
    root.style.setProperty("--foot", JSON.stringify(foot.filter(Boolean).join(" · ")));
    codeLinks();
  });
  addEventListener("DOMContentLoaded", () => {
    const button = document.getElementById("paper");
    if (!button) return;
    button.hidden = false;
    button.addEventListener("click", turn);
    lay(chosen());
  });
})();
