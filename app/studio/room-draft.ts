/** A room as it is typed: texts until it is sent, so that half a number is kept while it is being written. Pure. */
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
export interface RoomDraft {
  readonly name: string;
  readonly travelCm: string;
  readonly springs: readonly RoomSpringDraft[];
}

/** A length outside these was typed in another unit. */
const SHORTEST_CM = 20;
const LONGEST_CM = 500;

export function roomDraftOf(name: string, equipment: Equipment): RoomDraft {
  return {
    name,
    travelCm: String(equipment.carriageTravelMm / 10),
    springs: equipment.springs.map((spring, row) => ({
      id: spring.id,
      row,
      label: spring.label,
      count: String(spring.count),
      stiffness: String(spring.stiffnessNPerMm),
      preload: String(spring.preloadN),
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
  const travel = number(draft.travelCm);
  if (travel === null || travel <= 0) return { ok: false, say: "Type how far the carriage travels, in centimetres." };
  if (travel < SHORTEST_CM || travel > LONGEST_CM) {
    return {
      ok: false,
      say: `A carriage travels between ${SHORTEST_CM} and ${LONGEST_CM} cm, and this says ${travel}. Check the unit.`,
    };
  }
  const springs: Spring[] = [];
  for (const typed of draft.springs) {
    const spring = readSpring(typed, springs);
    if (typeof spring === "string") return { ok: false, say: spring };
    springs.push(spring);
  }
  const name = draft.name.trim();
  const equipment = { ...base, name: base?.name ?? name, carriageTravelMm: Math.round(travel * 10), springs };
  return { ok: true, name, equipment };
}

function readSpring(typed: RoomSpringDraft, before: readonly Spring[]): Spring | string {
  const label = typed.label.trim();
  if (label === "") return "Every spring needs a name. Use your studio’s own.";
  const [count, stiffness, preload] = [typed.count, typed.stiffness, typed.preload].map(number);
  if (count === null || count === undefined || !Number.isInteger(count) || count < 0) {
    return `Type how many ${label} springs each machine has, as a whole number.`;
  }
  if (stiffness === null || stiffness === undefined || stiffness <= 0)
    return `Type the stiffness of ${label} in N per mm. It is above 0: a spring pulls harder the further it is stretched.`;
  if (preload === null || preload === undefined || preload < 0) return `Type the preload of ${label} in N, 0 or more.`;
  const id = typed.id || freshId(label, before);
  return { id, label, count, stiffnessNPerMm: stiffness, preloadN: preload };
}

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
