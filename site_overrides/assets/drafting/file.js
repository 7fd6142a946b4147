// The draft as a file, out of the browser: handed on where the device offers that, or saved.

/**
 * @param {string} path in the manual's folder
 * @param {string} text
 */
export function fileOf(path, text) {
  const name = path.split("/").at(-1) ?? path;
  return new File([text], name, { type: "text/markdown" });
}

/**
 * Whether the device hands files of this sort on.
 *
 * @param {File} file
 */
export const canShare = (file) => navigator.canShare?.({ files: [file] }) ?? false;

/**
 * @param {File} file
 * @returns {Promise<boolean>} false where it was called off
 */
export async function share(file) {
  try {
    await navigator.share({ files: [file] });
    return true;
  } catch (error) {
    if (error instanceof DOMException && error.name === "AbortError") return false;
    throw error;
  }
}

/** @param {File} file */
export function save(file) {
  const address = URL.createObjectURL(file);
  const link = Object.assign(document.createElement("a"), { href: address, download: file.name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000); // some browsers read it late
}
