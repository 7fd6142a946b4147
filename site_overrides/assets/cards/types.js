// The words of the job card as types. Nothing runs here.

/**
 * Something that happened on a card. Never changed and never deleted once stored.
 *
 * @typedef {object} CardEvent
 * @property {string} id UUID, made on the phone before the first attempt to store it
 * @property {number} schema version of this shape, from 1
 * @property {string} device UUID of the phone's store
 * @property {number} sequence from 1, without a gap, on its device
 * @property {number} clock one more than the greatest that its phone had seen; sets the order of events
 * @property {string} previous hash of the device's event before it, "" for the first
 * @property {string} hash SHA-256 of all the rest, as hexadecimal
 * @property {string} at wall clock, ISO 8601 in UTC; shown, never used to order
 * @property {string} who initials
 * @property {string} card UUID of the card
 * @property {string} kind one of `KINDS` in events.js, or a newer one that this page does not know
 * @property {Record<string, unknown>} value what the kind needs
 * @property {string} revision revision of the procedure it is about, "" where it is about none
 */

/**
 * What a view wants stored; the store adds the device, the sequence and the hashes.
 *
 * @typedef {Pick<CardEvent, "id"|"at"|"who"|"card"|"kind"|"value"|"revision">} Draft
 */

/**
 * @typedef {object} ReadingAsked
 * @property {string} id
 * @property {string} name
 * @property {string} unit
 * @property {string} unit_words
 * @property {"as found"|"as left"|"both"} when
 * @property {number|null} low in `unit`, included
 * @property {number|null} high in `unit`, included
 * @property {string} limits_text
 * @property {""|"in"|"out"} fluid whether it counts as fluid put in or come out
 */

/**
 * @typedef {object} Caution
 * @property {string} id
 * @property {"danger"|"warning"|"caution"|"notice"} word
 * @property {string} harm
 * @property {string} avoid
 */

/**
 * @typedef {object} StepText
 * @property {number} number from 1
 * @property {string} html
 * @property {string} text
 * @property {{id: string, name: string, value: string}[]} torques value with its unit in words
 * @property {Caution[]} cautions
 * @property {ReadingAsked[]} readings
 * @property {boolean} wants_second_check
 * @property {string[]} takes_off what this step takes off the vehicle
 * @property {string[]} puts_back what it puts back on
 */

/** @typedef {{id: string, name: string}} Named */

/**
 * A part, and how its look-alikes are told apart.
 *
 * @typedef {object} PartAsked
 * @property {string} id
 * @property {string} name
 * @property {{name: string, tell: string, measures: string[]}[]} variants none where there is but one
 */

/**
 * A procedure as it stood when the card took it.
 *
 * @typedef {object} ProcedureText
 * @property {number} format
 * @property {string} id
 * @property {string} title
 * @property {string} revision
 * @property {string} date day on which the revision was first built, ISO 8601; "" where nobody knows
 * @property {string} author initials, ""
 * @property {string} url relative to the site's root
 * @property {string[]} family
 * @property {string} area
 * @property {number} minutes
 * @property {string} who
 * @property {string[]} before
 * @property {string[]} after
 * @property {Named[]} tools
 * @property {PartAsked[]} parts
 * @property {string[]} consumables
 * @property {string[]} fluids
 * @property {Caution[]} cautions
 * @property {(Named & {url: string})[]} calculators addresses count from the cards' page
 * @property {StepText[]} steps
 */

/**
 * @typedef {object} Vehicle
 * @property {string} family id of the unit family
 * @property {string} family_title
 * @property {string} identification
 * @property {string} tyre
 * @property {string} axle
 * @property {string} odometer
 * @property {string} [between_marks] fluid between the marks of its family's dipstick, such as "0.5 L"
 */

/** @typedef {"todo"|"storing"|"stored"|"checked"|"not-needed"|"handed-back"} Shape */

/** @typedef {{event: string, who: string, at: string}} Mark who did something, when */

/**
 * @typedef {object} ReadingTaken
 * @property {Mark} mark
 * @property {string} written as it was typed, "" where it could not be read
 * @property {number|null} number null where it could not be read
 * @property {boolean} outside the limits that the card began with
 * @property {string} reason
 * @property {string} from address of the calculator that it came from, "" where it was read
 * @property {Calculation|null} answer what that calculator made of its entries, where it told
 */

/**
 * @typedef {object} ReadingState
 * @property {string} key `<reading id>|<as found or as left>`
 * @property {ReadingAsked} asked
 * @property {"as found"|"as left"} when
 * @property {ReadingTaken|null} taken
 */

/**
 * @typedef {object} StepState
 * @property {string} key `<job id>|<step number>`
 * @property {string} job
 * @property {StepText} text
 * @property {Shape} shape
 * @property {Mark|null} done
 * @property {Mark|null} check
 * @property {(Mark & {reason: string})|null} notNeeded
 * @property {(Mark & {question: string})|null} question
 * @property {(Mark & {answer: string})|null} answer
 * @property {ReadingState[]} readings
 * @property {Photo[]} photos
 * @property {{event: string, what: string}|null} last what undo would take back
 */

/**
 * @typedef {object} Photo
 * @property {string} id of the event, and of the picture in the store
 * @property {Mark} mark
 * @property {string} type such as image/jpeg
 * @property {number} width
 * @property {number} height
 * @property {number} bytes
 * @property {string} sha256 of the picture, as hexadecimal
 */

/**
 * The picture itself. A buffer rather than a blob: some browsers lose blobs from their databases.
 *
 * @typedef {{type: string, content: ArrayBuffer}} Picture
 */

/** @typedef {"before driving"|"this visit"|"next service"|"to know"} Urgency */

/**
 * Something that was found and that the owner should know.
 *
 * @typedef {object} FindingState
 * @property {string} id the id of its event
 * @property {Mark} mark
 * @property {string} job the job it was found in, "" for none
 * @property {number} step its step there, 0 for none
 * @property {string} what
 * @property {Urgency} urgency
 * @property {(Mark & {decision: "done"|"advised"|"declined", note: string})|null} decision
 * @property {Photo[]} photos
 * @property {NamedCause|null} cause where it is the cause of a complaint
 */

/** @typedef {{fault: string, id: string, name: string, likely: string}} NamedCause `likely` as "about 93 in 100" */

/** @typedef {{mark: Mark, from: string, to: string, words: string[]}} Renewal */

/**
 * A complaint of the manual on a card, with what the people said of its checks.
 *
 * @typedef {object} FaultState
 * @property {string} id of the fault's page
 * @property {Mark} taken the start of the card, or what took it up later
 * @property {string} complaint in the owner's words, or as the manual says it
 * @property {Map<string, CheckResult>} results by the id of the check; the latest of each
 * @property {(Mark & {question: string})|null} question for the senior tech, where the list leads no further
 * @property {(Mark & {answer: string})|null} answer
 */

/**
 * @typedef {object} CheckResult
 * @property {Mark} mark
 * @property {"good"|"bad"|"not done"} result
 * @property {string} name what is looked at, "" where the manual did not say
 * @property {number} minutes 0 where it did not say
 * @property {string} note
 */

/**
 * What a calculator made of its entries, kept because a check's result can follow from it.
 *
 * @typedef {object} Calculation
 * @property {Mark} mark
 * @property {string} calculator its id
 * @property {string} pattern its code for what the entries show
 * @property {string[]} rivals codes that the entries do not tell from it
 * @property {string} name of the calculator, "" for one that came with a reading
 * @property {string} summary
 * @property {string} from address of the calculator with its entries
 * @property {boolean} isOfReading whether it came with a reading, and counts only while that one stands
 */

/**
 * @typedef {object} Job one procedure on a card
 * @property {string} id the id of the event that added it
 * @property {Mark} added
 * @property {number} place sorts the jobs of a card
 * @property {ProcedureText} text
 * @property {StepState[]} steps
 * @property {Renewal[]} renewals newer revisions that were taken on consent, in their order
 * @property {StepState[]} past steps with something on them that a newer revision no longer has
 */

/**
 * @typedef {object} CardState
 * @property {string} id
 * @property {Mark} started
 * @property {Vehicle} vehicle
 * @property {string} complaint
 * @property {string} fault id of the known complaint that was chosen, "" for none
 * @property {Map<string, FaultState>} faults the complaints of the manual on this card, by id
 * @property {Calculation[]} calculations
 * @property {Job[]} jobs
 * @property {FindingState[]} findings
 * @property {Map<string, Mark & {variant: string, how: string}>} identified by the id of the part
 * @property {Map<string, Mark>} fetched by what was fetched
 * @property {(Mark & {reason: string})|null} closed with the reason where something was still off
 * @property {number} unknown events of kinds that this page does not know; kept, not shown
 */

/** @typedef {{id: string, title: string, tyre: string, axle: string, between_marks?: string}} FamilyEntry */

/**
 * @typedef {object} ProcedureEntry
 * @property {string} id
 * @property {string} title
 * @property {string[]} family
 * @property {string} area
 * @property {number} minutes
 * @property {string} url
 * @property {string} revision
 * @property {string[]} before
 * @property {string[]} after
 * @property {number} rank its place among all procedures in the order of the work
 * @property {string[]} with ids of those that come onto a card with it
 */

/**
 * @typedef {object} FaultEntry
 * @property {string} id
 * @property {string} title
 * @property {string} complaint
 * @property {string[]} family
 * @property {string[]} checks ids of procedures, in the order in which the fault's page writes them
 * @property {string[]} mends ids of procedures, those of the likeliest cause first
 */

/**
 * @typedef {object} Index
 * @property {number} format
 * @property {FamilyEntry[]} families
 * @property {ProcedureEntry[]} procedures
 * @property {FaultEntry[]} faults
 */

export {};
