/** What a page is called wherever somebody is sent to it: in menus, on the floor, in errors. */

/** Where a manager makes pairing codes: a part of the page that the menu calls `under`. */
export const DEVICES_PLACE = { under: "Studio", name: "Cue devices", href: "/studio#devices" } as const;

/** As it stands in a sentence: "Studio, Cue devices". */
export const DEVICES_WORDS = `${DEVICES_PLACE.under}, ${DEVICES_PLACE.name}`;
