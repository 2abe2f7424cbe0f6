/** The sentences of what holds an item in place, apart from those of the dialog: they are part of the page's first script. */

/** Why an item has no move to stay next to. */
export const NO_ABOVE = {
  pause: "A pause is above it, so there is no move to stay next to.",
  heading: "It is the first item of its block, so there is no move to stay next to.",
  top: "It is the first item of the class, so there is no move to stay next to.",
} as const;

export const tiedWords = (name: string, other: string, on: boolean): string =>
  on ? `${name} stays next to ${other}.` : `${name} need not stay next to ${other}.`;

export const untiedWords = (name: string): string => `${name} is no longer tied to another move.`;

export const afterWords = (name: string, earlier: string, on: boolean): string =>
  on ? `${name} comes after ${earlier}.` : `${name} need not come after ${earlier}.`;
