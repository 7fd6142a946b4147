/** One page at a time, chosen by the address. Without this script the file is one long page. */

/** What the address asks for: "#kestrel-3/set-band.step-3", with "?field=value" for a calculator. */
function asked() {
  const hash = location.hash.slice(1);
  const mark = hash.indexOf("?");
  const name = mark < 0 ? hash : hash.slice(0, mark);
  return { name: decoded(name) || "contents", given: new URLSearchParams(mark < 0 ? "" : hash.slice(mark + 1)) };
}

/** @param {string} name */
function decoded(name) {
  try {
    return decodeURIComponent(name);
  } catch {
    return name;
  }
}

export class Pages {
  /** @param {(page: HTMLElement, given: URLSearchParams) => void} opened is told of every page that is opened */
  constructor(opened) {
    this.opened = opened;
    this.manual = document.title;
    /** @type {HTMLElement | null} */
    this.page = null;
    for (const page of pages()) hide(page);
    addEventListener("hashchange", () => this.open());
    // What the browser's own search finds on another page becomes the page.
    document.addEventListener("beforematch", ({ target }) => {
      const page = /** @type {HTMLElement} */ (target).closest("[data-page]");
      if (page instanceof HTMLElement) this.show(page);
    });
    // The same link twice changes no address, yet whoever taps it wants to go there.
    document.addEventListener("click", ({ target }) => {
      const link = target instanceof Element && target.closest("a[href^='#']");
      if (link && link.getAttribute("href") === location.hash) this.open();
    });
    this.open();
  }

  open() {
    const { name, given } = asked();
    const place = document.getElementById(name) ?? document.getElementById("contents");
    const page = /** @type {HTMLElement | null | undefined} */ (place?.closest("[data-page]"));
    if (!place || !page) return;
    this.show(page);
    if (place === page) scrollTo(0, 0);
    else place.scrollIntoView();
    page.querySelector("h1")?.focus({ preventScroll: true });
    this.opened(page, given);
  }

  /** @param {HTMLElement} page */
  show(page) {
    if (this.page && this.page !== page) hide(this.page);
    page.hidden = false;
    this.page = page;
    const title = page.querySelector("h1")?.textContent;
    document.title = title ? `${title} - ${this.manual}` : this.manual;
  }
}

const pages = () => /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("[data-page]"));

/** @param {HTMLElement} page */
const hide = (page) => page.setAttribute("hidden", "until-found");
