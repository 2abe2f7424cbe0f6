/** Goes to a place of the plan's page by its address, as a link from a notice does: opened, in sight, with the keyboard. Client only. */

/** The first thread that is open, in the order of the class. */
export const OPEN_THREADS = "#threads";

export const placeOfThread = (threadId: string): string => `#thread-${encodeURIComponent(threadId)}`;

/** Also where the address names the place already. */
export function goToPlace(place: string): void {
  if (location.hash === place) dispatchEvent(new Event("hashchange"));
  else location.replace(place);
}
