/** What is timed for each action of a change, and typical changes with how long they take. Pure. */
import { percent } from "#lib/formats/percent.ts";
import { plainNumber, plural, springWords } from "#lib/plan/format.ts";
import type { Action, Equipment, Plan } from "#lib/plan/schema.ts";
import type { StudioSecond } from "#lib/timings/studio-seconds.ts";
import { changeBetween, type Setup } from "#lib/transitions/transitions.ts";

export type Timed = Action | "base";

/** In the order of the page. */
export const TIMED_WORDS: readonly (readonly [Timed, string])[] = [
  ["base", "Any change: hearing it and starting"],
  ["springOn", "One spring on"],
  ["springOff", "One spring off"],
  ["carriageHome", "The carriage brought home before springs are changed"],
  ["quarterTurn", "A quarter turn"],
  ["positionChange", "Another position, such as kneeling to plank"],
  ["stationChange", "To another part of the machine"],
  ["handleUp", "One handle taken up"],
  ["handleDown", "One handle hung back"],
  ["handlesCross", "Both handles crossed or uncrossed"],
  ["strapOn", "A foot into its strap"],
  ["strapOff", "A foot out of its strap"],
  ["gripChange", "The hands to another place, with no handle held"],
  ["sideChange", "The other leg or arm, with no handle or strap to change"],
];

interface TypicalChange {
  readonly words: string;
  readonly before: Setup;
  readonly after: Setup;
}

const KNEELING: Setup = {
  springs: {},
  station: "carriage",
  position: "kneeling",
  facing: "front",
  hands: "handles",
  feet: "carriage",
  side: "both",
};

/** With the room's own springs, the first and the last of its list. */
export function typicalChanges(equipment: Equipment): TypicalChange[] {
  const light = equipment.springs[0]?.id;
  const firm = equipment.springs.at(-1)?.id;
  const one = (id: string | undefined): Record<string, number> => (id === undefined ? {} : { [id]: 1 });
  const lightly = { ...KNEELING, springs: one(light) };
  const swap = { ...lightly, springs: one(firm) };
  const swapWords = `${springWords(equipment, one(light))} off, ${springWords(equipment, one(firm))} on`;
  const row: Setup = { ...lightly, hands: "one-handle", side: "left" };
  const strap: Setup = { ...lightly, hands: "front-bars", feet: "back-strap", position: "plank" };
  return [
    ...(light === undefined || light === firm
      ? []
      : [{ words: `Only springs: ${swapWords}`, before: lightly, after: swap }]),
    { words: "A one-handed row, the other side", before: row, after: { ...row, side: "right" } },
    {
      words: "Handles down, from kneeling to a plank on the front bars",
      before: lightly,
      after: { ...lightly, hands: "front-bars", position: "plank" },
    },
    {
      words: "Kneeling, turned round to face the back",
      before: lightly,
      after: { ...lightly, facing: "back" },
    },
    { words: "Off the bars, a foot out of its strap, onto the back", before: strap, after: supine(strap) },
  ];
}

const supine = (from: Setup): Setup => ({ ...from, hands: "free", feet: "carriage", position: "supine" });

/** Whole seconds, and the actions they are made of, in a room with these timings, for so many people at once. */
export function changeCost(change: TypicalChange, equipment: Equipment, people = 1) {
  return changeBetween(planIn(equipment, people), change.before, change.after);
}

const planIn = (equipment: Equipment, people: number): Plan => ({
  format: "springline.plan/1",
  title: "",
  lengthSeconds: 60,
  people,
  equipment,
  moves: {},
  items: [],
});

/** Below this share the usual seconds weigh more than the classes. */
const MOSTLY_USUAL = 0.5;

export const isMostlyUsual = ({ share }: Pick<StudioSecond, "share">): boolean => share < MOSTLY_USUAL;

/** "12 changes; 80% from your classes", "only 2 changes: still mostly the usual". */
export function sureWords({ seenIn, share }: Pick<StudioSecond, "seenIn" | "share">): string {
  if (seenIn === 0) return "no change timed: the usual";
  const changes = plural(seenIn, "change");
  if (isMostlyUsual({ share })) return `only ${changes}: still mostly the usual`;
  return `${changes}; ${percent(share)} from your classes`;
}

/** "3.1 to 4.5 s": the range it is in 19 times out of 20, never below 0. */
export function likelyRangeWords({ seconds, give }: Pick<StudioSecond, "seconds" | "give">): string {
  const tenth = (x: number) => plainNumber(Math.round(x * 10) / 10);
  return `${tenth(Math.max(0, seconds - 2 * give))} to ${tenth(seconds + 2 * give)} s`;
}
