// Loads the page anew when it reads otherwise, and stays at the same spot of it.

const KEY = "preview-place";
const here = location.pathname;

/** Go back to the spot that was shown before the page was loaded anew. */
function returnToPlace() {
  const kept = sessionStorage.getItem(KEY);
  sessionStorage.removeItem(KEY);
  if (!kept) return;
  const [page, down] = kept.split("\n");
  if (page === here) scrollTo({ top: Number(down), behavior: "instant" });
}

/** @param {EventSource} source */
function follow(source) {
  let seen = "";
  /** @param {MessageEvent<string>} event */
  const read = (event) => {
    if (seen && event.data !== seen) {
      sessionStorage.setItem(KEY, `${here}\n${scrollY}`);
      source.close();
      location.reload();
    }
    seen = event.data;
  };
  source.addEventListener("now", read);
  source.addEventListener("message", read);
  addEventListener("pagehide", () => source.close());
}

history.scrollRestoration = "manual";
returnToPlace();
document.fonts.ready.then(returnToPlace);
follow(new EventSource(`/_preview/changes?page=${encodeURIComponent(here)}`));
