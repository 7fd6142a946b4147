// What the drafting page's modules hand to one another.

/**
 * A page that is being written, as the device keeps it.
 * @typedef {object} Draft
 * @property {string} id
 * @property {string} file where it goes in the manual's folder, such as kestrel-3/set-band.md
 * @property {string} text
 * @property {string} begun as ISO 8601
 * @property {string} changed as ISO 8601
 * @property {number} count how often it was stored
 * @property {string} change id of the last change, so that storing it twice changes nothing
 * @property {string | null} basis the manual's page when it was begun; null where there was none
 * @property {string} removed when it was taken off the list, or ""
 */

/**
 * How a draft was at an earlier time.
 * @typedef {{id: string, draft: string, at: string, why: string, text: string}} Version
 */

/** @typedef {{file: string, line: number, column: number, end_line: number, end_column: number, text: string}} Edit */

/**
 * @typedef {object} Finding
 * @property {string} file
 * @property {number} line from 1
 * @property {number} column from 1, in whole signs
 * @property {string} code
 * @property {"stop" | "look"} severity
 * @property {string} written
 * @property {string} wrong
 * @property {string} mend
 * @property {Edit | null} edit
 */

/** @typedef {{own: Finding[], elsewhere: Finding[]}} Looked */
/** @typedef {{html: string, address: string}} Shown */
/** @typedef {{scheme: string, id: string, title: string}} Name */
/** @typedef {{kind: string, title: string, folder: string, text: string}} Kind */

/**
 * The manual's texts: `drafting/manual.json`.
 * @typedef {{name: string, pages: Record<string, string>, paragraphs: string[], kinds: Kind[]}} Manual
 */

export {};
