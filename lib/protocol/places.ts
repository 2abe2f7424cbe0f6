/** The names of pages, for menus, the floor and messages that send somebody there. */

/** Where a manager makes pairing codes: a part of the page that the menu calls `under`. */
export const DEVICES_PLACE = { under: "Studio", name: "Cue devices", href: "/studio#devices" } as const;

/** As written in a sentence: "Studio, Cue devices". */
export const DEVICES_WORDS = `${DEVICES_PLACE.under}, ${DEVICES_PLACE.name}`;

/** Behind the # of the floor's address: the pairing code that a QR code carries. */
export const FLOOR_CODE_KEY = "pair";

/** Where a manager sets up a room. */
export const roomAddress = (id: string): string => `/studio#${roomPartId(id)}`;
export const roomPartId = (id: string): string => `room-${id}`;

/** Behind the address of a month's page: its holidays, for the sake of that day. */
export const HOLIDAY_MARK = "#holiday=";
export const holidayAddress = (date: string): string => HOLIDAY_MARK + date;

/** Behind the address of a plan's page: an item of it, or one line of its script by its index. */
export const lineAddress = (itemId: string, line: number | null): string =>
  `#line-${encodeURIComponent(itemId)}${line === null ? "" : `:${line}`}`;

/** Likewise: a field of the class as a whole, and of its notes a paragraph by its index. */
export const classFieldAddress = (field: ClassField, line: number): string => `#line-:${field}:${line}`;

export type ClassField = "theme" | "notes";

export type NamedLine =
  | { readonly itemId: string; readonly line: number | null }
  | { readonly field: ClassField; readonly line: number };

/** What `lineAddress` or `classFieldAddress` wrote; null for anything else. */
export function placeOfLineAddress(hash: string): NamedLine | null {
  const [, field, nth] = /^#line-:(theme|notes):(\d{1,4})$/.exec(hash) ?? [];
  if (field === "theme" || field === "notes") return { field, line: Number(nth) };
  const [, itemId, line] = /^#line-([a-z0-9-]+)(?::(\d{1,4}))?$/.exec(hash) ?? [];
  return itemId === undefined ? null : { itemId, line: line === undefined ? null : Number(line) };
}
