/** The names of pages, for menus, the floor and messages that send somebody there. */

/** Where a manager makes pairing codes: a part of the page that the menu calls `under`. */
export const DEVICES_PLACE = { under: "Studio", name: "Cue devices", href: "/studio#devices" } as const;

/** As written in a sentence: "Studio, Cue devices". */
export const DEVICES_WORDS = `${DEVICES_PLACE.under}, ${DEVICES_PLACE.name}`;

/** Behind the # of the floor's address: the pairing code that a QR code carries. */
export const FLOOR_CODE_KEY = "pair";

/** Behind the address of a plan's page: an item of it, or one line of its script by its index. */
export const lineAddress = (itemId: string, line: number | null): string =>
  `#line-${encodeURIComponent(itemId)}${line === null ? "" : `:${line}`}`;

/** What `lineAddress` wrote; null for anything else. */
export function placeOfLineAddress(hash: string): { readonly itemId: string; readonly line: number | null } | null {
  const [, itemId, line] = /^#line-([a-z0-9-]+)(?::(\d{1,4}))?$/.exec(hash) ?? [];
  return itemId === undefined ? null : { itemId, line: line === undefined ? null : Number(line) };
}
