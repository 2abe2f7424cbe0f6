/**
 * What one item's script says at this moment: the words of its live fields, when each line is said, and how long it
 * takes. Derived from the plan, so it changes when anybody changes the plan.
 */
import type { ClockRow } from "#lib/clock/clock.ts";
import { fillLiveFields, type LiveMoment } from "#lib/cues/live-fields.ts";
import type { CueTrack } from "#lib/cues/types.ts";
import { FIELD_WORDS, isLiveField } from "#lib/plan/cue-words.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { CueKind, Plan } from "#lib/plan/schema.ts";
import { spokenSeconds } from "#lib/talk/talk.ts";

export interface ItemFacts {
  /** The words of a live field in a line, given as a plan file writes it; the field's own name when it is unknown. */
  fieldSays(name: string, kind: CueKind, line: string): string;
  /** Seconds it takes to say a line; null for a line that is not said. */
  secondsOf(kind: CueKind, line: string): number | null;
  /** When in the class the line of that index begins, in seconds; null for one that is not said. */
  beginsAt(index: number): number | null;
}

/** Facts for an item that is not a move, or has not arrived yet: fields show their names, nothing is counted. */
export const NO_FACTS: ItemFacts = {
  fieldSays: (name) => (isLiveField(name) ? FIELD_WORDS[name] : name),
  secondsOf: () => null,
  beginsAt: () => null,
};

/** A plan with its clock and its cue track. */
export interface TimedPlan {
  readonly plan: Plan;
  readonly rows: readonly ClockRow[];
  readonly total: number;
  readonly track: CueTrack;
}

export function itemFacts({ plan, rows, total, track }: TimedPlan, itemId: string): ItemFacts {
  const item = itemById(plan, itemId);
  const row = rows.find((r) => r.item === itemId);
  if (item?.kind !== "move" || row === undefined) return NO_FACTS;
  const cues = track.cues.filter((cue) => cue.item === itemId);
  const momentOf = (kind: CueKind, line: string): LiveMoment => {
    const first = { plan, item, row, total, at: row.start };
    if (!/\{(seconds|minutes)-left\}/.test(line)) return first;
    const said = cues.find((cue) => cue.kind === kind && fillLiveFields(line, { ...first, at: cue.from }) === cue.text);
    return said ? { ...first, at: said.from } : first;
  };
  return {
    fieldSays: (name, kind, line) => {
      if (!isLiveField(name)) return name;
      // A field at the start of its line gets a capital; the comma shows that any other is not at the start.
      const before = line.trimStart().startsWith(`{${name}}`) ? "" : ", ";
      return fillLiveFields(`${before}{${name}}`, momentOf(kind, line)).slice(before.length);
    },
    secondsOf: (kind, line) =>
      kind === "crew" || line.trim() === "" ? null : spokenSeconds(plan, fillLiveFields(line, momentOf(kind, line))),
    beginsAt: (index) => cues.find((cue) => cue.line === index)?.from ?? null,
  };
}
