// Runs before the first paint, so that a page never flashes in the wrong paper. Kept small for that reason.
(() => {
  const KEY = "paper";
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

  lay(chosen());
  addEventListener("storage", () => lay(chosen()));
  addEventListener("pageshow", () => lay(chosen()));
  addEventListener("beforeprint", () => {
    const printed = document.getElementById("printed");
    const today = new Intl.DateTimeFormat("en-GB", { dateStyle: "long" }).format(new Date());
    if (printed) printed.textContent = today;
  });
  addEventListener("DOMContentLoaded", () => {
    const button = document.getElementById("paper");
    if (!button) return;
    button.hidden = false;
    button.addEventListener("click", turn);
    lay(chosen());
  });
})();
