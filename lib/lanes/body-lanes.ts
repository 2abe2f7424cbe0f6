/** What the class asks of bodies: breath and repetitions, one lane per muscle group, one per caution. */

import type { Balance } from "#lib/balance/balance.ts";
import { EXPECTED_GUIDANCE } from "#lib/cautions/expected.ts";
import { cycleSeconds } from "#lib/clock/clock.ts";
import { percent, percentOf } from "#lib/formats/percent.ts";
import { CAUTION_WORDS } from "#lib/library/move-words.ts";
import { NOISE } from "#lib/numbers/round.ts";
import { moverWords, plainNumber, repsWords, tagWords } from "#lib/plan/format.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import { GROUPS, MOVE_CAUTIONS, type Move, type MoveCaution, type Plan } from "#lib/plan/schema.ts";
import { cellOf } from "./columns.ts";
import type { LaneMove } from "./setup-lanes.ts";
import type { BreathCell, Lane, WeightCell } from "./types.ts";

export function breathLane(plan: Plan, moves: readonly LaneMove[]): Lane {
  const cells = moves.flatMap((p): BreathCell[] => {
    const move = moveOf(plan, p.item);
    if (!move) return [];
    const { reps } = p.row;
    const exhaleOn = move.exhaleOn ?? null;
    return [{ ...cellOf(p, breathWords(move, reps)), reps, cycle: cycleOf(move), exhaleOn }];
  });
  return { id: "breath", kind: "breath", name: "Breath, reps", cells };
}

function cycleOf({ tempo }: Move): BreathCell["cycle"] {
  if ("holdSeconds" in tempo) return null;
  return [tempo.outSeconds, tempo.outHoldSeconds ?? 0, tempo.backSeconds, tempo.backHoldSeconds ?? 0];
}

function breathWords(move: Move, reps: number | null): string {
  const cycle = cycleSeconds(move);
  if (reps === null || cycle === null) return "hold";
  const out = move.exhaleOn ? `, breathe out on the way ${move.exhaleOn}` : "";
  return `${repsWords(reps)} of ${plainNumber(cycle)} s${out}`;
}

/** One lane per muscle group that the class trains, in the library's order, with its share next to the name. */
export function muscleLanes(plan: Plan, moves: readonly LaneMove[], { groups }: Balance): Lane[] {
  return GROUPS.flatMap((group): Lane[] => {
    const cells = moves.flatMap((p): WeightCell[] => {
      const weight = moveOf(plan, p.item)?.muscles[group] ?? 0;
      return weight > 0 ? [{ ...cellOf(p, `${tagWords(group)}, ${moverWords(weight)}`), weight }] : [];
    });
    const note = shareWords(groups[group]?.share ?? 0, plan.theme?.shares?.[group]);
    return cells.length > 0
      ? [{ id: `muscle:${group}`, kind: "muscle", group, name: tagWords(group), note, cells }]
      : [];
  });
}

/** "17%", or "17% of 25%" when the class falls short of its theme. */
const shareWords = (share: number, wanted = 0): string =>
  share >= wanted - NOISE ? percent(share) : percentOf(share, wanted);

/** One lane per caution of the moves. Says when somebody whom it concerns is expected. */
export function cautionLanes(plan: Plan, moves: readonly LaneMove[]): Lane[] {
  return MOVE_CAUTIONS.flatMap((caution): Lane[] => {
    const name = CAUTION_WORDS[caution];
    const asking = moves.filter((p) => moveOf(plan, p.item)?.cautions?.includes(caution));
    const concerned = concernedBy(plan, caution);
    const note = concerned.length > 0 ? `expected: ${concerned.join(", ")}` : undefined;
    const cells = asking.map((p) => cellOf(p, note === undefined ? name : `${name}; ${note}`));
    if (cells.length === 0) return [];
    const head = { id: `caution:${caution}`, kind: "caution", caution, name, cells } as const;
    return [{ ...head, expected: note !== undefined, ...(note === undefined ? {} : { note }) }];
  });
}

function concernedBy(plan: Plan, caution: MoveCaution): string[] {
  const concerned = EXPECTED_GUIDANCE.filter(
    ({ condition, concerns }) => plan.expected?.includes(condition) && concerns.includes(caution),
  );
  return concerned.map(({ condition }) => tagWords(condition));
}
