/** Keeps the answer's first line in sight while the fields above it are filled in on a phone. */

/** A line at the bottom of the screen, there only while the answer itself is further down. */
export class AnswerStrip {
  /**
   * @param {HTMLElement} answer
   * @param {string} name the calculator's: a file that holds them all has an answer of each
   */
  constructor(answer, name) {
    answer.id ||= `answer-${name}`;
    this.answer = answer;
    this.isBelow = false;
    this.link = Object.assign(document.createElement("a"), { href: `#${answer.id}` });
    this.link.addEventListener("click", (event) => this.go(event));
    this.strip = Object.assign(document.createElement("p"), { className: "uh-answer__now", hidden: true });
    this.strip.append(this.link);
    answer.parentElement?.append(this.strip);
    new IntersectionObserver(([entry]) => this.moved(entry)).observe(answer);
  }

  /** The answer changed, or first belongs to what was entered. */
  update() {
    this.link.textContent = this.answer.querySelector(".uh-answer__summary")?.textContent ?? "";
    this.show();
  }

  /**
   * Shows the answer; the address stays, for it may hold what was entered.
   * @param {Event} event
   */
  go(event) {
    event.preventDefault();
    this.answer.scrollIntoView();
  }

  /** @param {IntersectionObserverEntry | undefined} entry */
  moved(entry) {
    this.isBelow = !!entry && !entry.isIntersecting && entry.boundingClientRect.top > 0;
    this.show();
  }

  show() {
    this.strip.hidden = !this.isBelow || !this.link.textContent;
  }
}
