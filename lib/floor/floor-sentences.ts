/** What the floor says to people, in one place. Times with a unit come in as words. Key words stand in `keys.ts`. */
import { plural } from "#lib/plan/format.ts";

export const FLOOR_SENTENCES = {
  // End on time
  endsOnTime: "Ends on time.",
  stillLate: (by: string) => `Still ends ${by} late.`,
  alreadyOnTime: "Nothing to change: the class ends on time.",
  nothingToShorten: (by: string) => `Nothing left can be shortened: the class ends ${by} late.`,
  atBestLate: (by: string) => `The class cannot end on time any more. At best it ends ${by} late.`,
  leftOut: (name: string) => `Left out: ${name}.`,
  sidesDiffer: (name: string, left: string, right: string) => `Sides differ: ${name}, left ${left}, right ${right}.`,
  unlocked: (name: string) => `Locked time changes too: ${name}.`,
  itemsGet: (items: number, seconds: string, than: "less" | "more") =>
    `${plural(items, "item gets", "items get")} ${seconds} s ${than}.`,
  closingLess: (seconds: number) => `The closing gets ${seconds} s less.`,
  closedForChange: "End on time closed because a change is coming. Nothing was changed.",
  closedUntouched: (seconds: number) => `End on time closed after ${seconds} s without a touch. Nothing was changed.`,
  // What a touch did, next to its undo
  newTimes: "The rest of the class has new times.",
  closingIs: (seconds: number) => `The closing gets ${seconds} s.`,
  longer: (of: { name: string; to: number; signed: number; longest: number | null }) => {
    const over = of.longest === null ? "" : ` Its longest time is ${of.longest} s.`;
    return `${of.name}: ${of.to} s instead of ${of.signed} s.${over}`;
  },
  // Screens and cards
  tooSmall: (wantedM: number, readableM: number) =>
    `This screen is too small for ${wantedM} m: a move's name can be read from about ${readableM} m. Stand nearer or use a larger screen.`,
  readableFrom: (readableM: number, wantedM: number) => `Readable from ${readableM} m, not from ${wantedM} m.`,
  noRoom: (parts: readonly string[]) => `No room for ${parts.join(", ")}.`,
  olderEdition: "It is an older edition than the one on this device.",
  // Where a class that was taught gained or lost time: parts of a sentence
  wasLeftOut: (name: string, seconds: string) => `${name} was left out: ${seconds} less`,
  wasHeld: (name: string, seconds: string) => `held for ${seconds} at ${name}`,
  tookOther: (what: string, seconds: string, than: "less" | "more") => `${what} took ${seconds} ${than} than planned`,
  allElse: "all else together",
} as const;
