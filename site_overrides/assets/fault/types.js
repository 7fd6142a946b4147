// What the fault finding passes on: the manual's data, the results so far, and what Python told.

export {}; // only types

/** @typedef {"good" | "bad" | "not done"} Result */

/** @typedef {{id: string, title: string, url: string}} Way a procedure; its address counts from the site's root */

/**
 * One complaint on one unit family, as `fault/data/` holds it.
 *
 * @typedef {object} FamilyData
 * @property {object} complaint as the engine takes it
 * @property {Record<string, {procedures: Way[], decided_by?: object[]}>} checks
 * @property {Record<string, {procedures: Way[]}>} causes
 * @property {Record<string, {meaning?: string|null, procedure?: Way|null}>} [levels] what each access asks
 */

/**
 * @typedef {object} FaultData
 * @property {string} id
 * @property {string} title
 * @property {string} complaint in the owner's words
 * @property {string} url
 * @property {string} revision
 * @property {{id: string, title: string}[]} families
 * @property {Record<string, FamilyData>} by_family
 */

/**
 * One result: `note` says where it came from, `isFixed` that it is not undone here.
 *
 * @typedef {{check: string, result: Result, note?: string, isFixed?: boolean}} Given
 */

/**
 * @typedef {object} ToldCheck
 * @property {string} id
 * @property {string} name
 * @property {string} access
 * @property {number} minutes its own
 * @property {number} way_minutes to get there, as far as that is not done yet
 * @property {string} reason
 * @property {string} good what a good result would change
 * @property {string} bad
 */

/**
 * Where the search stands: what the engine's door gives.
 *
 * @typedef {object} Told
 * @property {boolean} ok
 * @property {string} wrong
 * @property {string} html
 * @property {{id: string, name: string, share: number, words: string}[]} causes the likeliest first
 * @property {ToldCheck|null} next
 * @property {(ToldCheck & {more_minutes: number|null, instead: string})[]} others
 * @property {string|null} found
 * @property {string[]} open ids of the causes that are not ruled out
 * @property {boolean} ask whether it is time to stop and ask
 * @property {boolean} exact
 * @property {number} gap_minutes
 * @property {string} certainty
 * @property {string} outlook
 */
