/** The names of pages, for menus, the floor and messages that send somebody there. */

/** Where a manager makes pairing codes: a part of the page that the menu calls `under`. */
export const DEVICES_PLACE = { under: "Studio", name: "Cue devices", href: "/studio#devices" } as const;

/** As written in a sentence: "Studio, Cue devices". */
export const DEVICES_WORDS = `${DEVICES_PLACE.under}, ${DEVICES_PLACE.name}`;

/** Behind the # of the floor's address: the pairing code that a QR code carries. */
export const FLOOR_CODE_KEY = "pair";
