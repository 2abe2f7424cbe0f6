/** The open class in the page's address, so that going to its plan and back leads to the same place. */

const MARK = "#class=";

export function placeInAddress(): string | null {
  const { hash } = window.location;
  return hash.startsWith(MARK) ? decodeURIComponent(hash.slice(MARK.length)) : null;
}

export function writeAddress(slot: string | null): void {
  const { pathname, search, hash } = window.location;
  const next = slot === null ? "" : MARK + encodeURIComponent(slot);
  if (next !== hash) window.history.replaceState(window.history.state, "", pathname + search + next);
}
