/** A room as it is typed: texts until it is sent, so that half a number is kept while it is being written. Pure. */

import type { Formats } from "#lib/formats/formats.ts";
import {
  distanceNumber,
  distanceWords,
  FORCE_NAMES,
  LENGTH_NAMES,
  stiffnessNumber,
  stiffnessUnit,
  toMm,
  toNewtons,
  toNPerMm,
  typedForce,
  typedLength,
} from "#lib/formats/units.ts";
import type { Equipment, Spring } from "#lib/plan/schema.ts";

export interface RoomSpringDraft {
  /** Empty for a spring that is new. */
  readonly id: string;
  readonly row: number;
  readonly label: string;
  readonly count: string;
  readonly stiffness: string;
  readonly preload: string;
}
export type RoomUnits = Pick<Formats, "force" | "length">;
export interface RoomDraft {
  readonly name: string;
  /** Of the carriage. */
  readonly travel: string;
  /** In which travel, stiffness and preload are typed. */
  readonly units: RoomUnits;
  readonly springs: readonly RoomSpringDraft[];
}

/** A length outside these was typed in another unit. */
const SHORTEST_MM = 200;
const LONGEST_MM = 5000;

/** What the form of a new room begins with. The travel is common practice, no source. */
export const EMPTY_ROOM: Equipment = { name: "", carriageTravelMm: 900, springs: [] };

export function roomDraftOf(name: string, equipment: Equipment, { force, length }: RoomUnits): RoomDraft {
  const units = { force, length };
  return {
    units,
    name,
    travel: travelText(equipment.carriageTravelMm, units),
    springs: equipment.springs.map((spring, row) => ({
      id: spring.id,
      row,
      label: spring.label,
      count: String(spring.count),
      stiffness: stiffnessText(spring.stiffnessNPerMm, units),
      preload: preloadText(spring.preloadN, units),
    })),
  };
}

export const emptySpring = (row: number): RoomSpringDraft => ({
  id: "",
  row,
  label: "",
  count: "1",
  stiffness: "",
  preload: "",
});

type DraftRead =
  | { readonly ok: true; readonly name: string; readonly equipment: Equipment }
  | { readonly ok: false; readonly say: string };

/** Numbers may be written with a point or a comma. `base` keeps what the form does not show (timings). */
export function readRoomDraft(draft: RoomDraft, base: Equipment | null): DraftRead {
  const { units } = draft;
  const travel = number(draft.travel);
  if (travel === null || travel <= 0)
    return { ok: false, say: `Type how far the carriage travels, in ${LENGTH_NAMES[units.length]}.` };
  const mm = draft.travel === (base && travelText(base.carriageTravelMm, units)) ? base?.carriageTravelMm : undefined;
  const typedMm = mm ?? toMm(travel, units.length);
  if (typedMm < SHORTEST_MM || typedMm > LONGEST_MM) {
    return {
      ok: false,
      say: `A carriage travels between ${distanceNumber(SHORTEST_MM, units)} and ${distanceWords(LONGEST_MM, units)}, and this says ${travel}. Check the unit.`,
    };
  }
  const springs: Spring[] = [];
  for (const typed of draft.springs) {
    const spring = readSpring(typed, springs, { units, base });
    if (typeof spring === "string") return { ok: false, say: spring };
    springs.push(spring);
  }
  const name = draft.name.trim();
  const equipment = { ...base, name: base?.name ?? name, carriageTravelMm: typedMm, springs };
  return { ok: true, name, equipment };
}

interface SpringGround {
  readonly units: RoomUnits;
  readonly base: Equipment | null;
}

/** A number that reads as the room's own does is the room's own: what was not typed anew is never converted. */
function readSpring(typed: RoomSpringDraft, before: readonly Spring[], { units, base }: SpringGround): Spring | string {
  const label = typed.label.trim();
  if (label === "") return "Every spring needs a name. Use your studio’s own.";
  const [count, stiffness, preload] = [typed.count, typed.stiffness, typed.preload].map(number);
  if (count === null || count === undefined || !Number.isInteger(count) || count < 0) {
    return `Type how many ${label} springs each machine has, as a whole number.`;
  }
  if (stiffness === null || stiffness === undefined || stiffness <= 0)
    return `Type the stiffness of ${label} in ${stiffnessUnit(units)}. It is above 0: a spring pulls harder the further it is stretched.`;
  if (preload === null || preload === undefined || preload < 0)
    return `Type the preload of ${label} in ${FORCE_NAMES[units.force]}, 0 or more.`;
  const id = typed.id || freshId(label, before);
  const was = base?.springs.find((spring) => spring.id === typed.id);
  const asWas = (text: string, shown: string | undefined) => text.trim() === shown;
  return {
    ...{ id, label, count },
    stiffnessNPerMm:
      was && asWas(typed.stiffness, stiffnessText(was.stiffnessNPerMm, units))
        ? was.stiffnessNPerMm
        : toNPerMm(stiffness, units.force),
    preloadN:
      was && asWas(typed.preload, preloadText(was.preloadN, units)) ? was.preloadN : toNewtons(preload, units.force),
  };
}

const travelText = (mm: number, units: RoomUnits): string => String(typedLength(mm, units));
const preloadText = (newtons: number, units: RoomUnits): string => String(typedForce(newtons, units));
const stiffnessText = (nPerMm: number, units: RoomUnits): string =>
  String(units.force === "N" ? nPerMm : stiffnessNumber(nPerMm, units));

function number(text: string): number | null {
  const plain = text.trim().replace(",", ".");
  const value = plain === "" ? Number.NaN : Number(plain);
  return Number.isFinite(value) ? value : null;
}

/** Ids are for files: small letters, digits, hyphens. */
function freshId(label: string, before: readonly Spring[]): string {
  const stem =
    label
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, "-")
      .replace(/^-+|-+$/g, "")
      .slice(0, 40) || "spring";
  let id = stem;
  for (let n = 2; before.some((spring) => spring.id === id); n++) id = `${stem}-${n}`;
  return id;
}
