/** Which version this is; the build fills in what stands in __…__. */

/** The hash of this version's list of files. A changed page changes it, and so this script. */
export const VERSION = "__VERSION__";
export const FILES = Number("__FILES__");
/** Bytes, unpacked. */
export const SIZE = Number("__SIZE__");
