/**
 * What a plan brought with its file that differs from its studio: findings are based on it, so whoever signs the plan
 * is told. Standards in a file never count and are not listed here.
 */
import type * as Y from "yjs";
import { moveChanges } from "#lib/library/changes.ts";
import type { SpringNames } from "#lib/library/move-words.ts";
import { percent, plainNumber, secondsWords } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import { ACTIONS, type Equipment, type Spring } from "#lib/plan/schema.ts";
import { carriedEquipment, carriedMoves, type StudioContext, withinEquipment } from "./from-studio.ts";
import { planParts } from "./layout.ts";
import { movesUsed } from "./read.ts";

/** One difference, in words. */
interface Difference {
  readonly label: string;
  readonly plan: string;
  readonly studio: string;
}
export interface FromFile {
  /** `stranger`: a move the library does not have, so there is nothing to compare it with. */
  readonly kind: "machines" | "move" | "stranger";
  readonly name: string;
  /** Empty only for a stranger. */
  readonly differences: readonly Difference[];
}

/**
 * Machines first, then moves by name; only what is used and differs. Empty for a plan that did not come from a file.
 */
export function fromFile(doc: Y.Doc, studio: StudioContext): FromFile[] {
  const { carried } = planParts(doc);
  const equipment = carriedEquipment(carried);
  const machines = equipment ? machineDifferences(equipment, studio.equipment) : [];
  const moves = movesFromFile(doc, studio, equipment ?? studio.equipment);
  if (!equipment || machines.length === 0) return moves;
  return [{ kind: "machines", name: equipment.name, differences: machines }, ...moves];
}

function movesFromFile(doc: Y.Doc, studio: StudioContext, equipment: Equipment): FromFile[] {
  const used = movesUsed(doc);
  const names: SpringNames = new Map(equipment.springs.map(({ id, label }) => [id, label]));
  return Object.entries(carriedMoves(planParts(doc).carried))
    .filter(([id]) => used.has(id))
    .flatMap(([id, move]): FromFile[] => {
      const ours = own(studio.moves, id);
      if (!ours) return [{ kind: "stranger", name: move.name, differences: [] }];
      // The library's limits on springs that these machines do not have are left out of the comparison.
      const differences = moveChanges(withinEquipment(ours, equipment), move, names).map(
        ({ label, before, after }) => ({
          label,
          plan: after,
          studio: before,
        }),
      );
      return differences.length === 0 ? [] : [{ kind: "move", name: move.name, differences }];
    })
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

const mm = (n: number): string => `${plainNumber(n)} mm`;

function machineDifferences(plan: Equipment, studio: Equipment): Difference[] {
  const times = ["base" as const, ...ACTIONS].flatMap((action) =>
    differing(
      `time for ${action.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)}`,
      secondsOf(plan.actionSeconds?.[action]),
      secondsOf(studio.actionSeconds?.[action]),
    ),
  );
  return [
    ...differing("machines", plan.name, studio.name),
    ...differing("carriage travel", mm(plan.carriageTravelMm), mm(studio.carriageTravelMm)),
    ...springDifferences(plan.springs, studio.springs),
    ...times,
    ...differing("spread in a change", shareOf(plan.spreadShare), shareOf(studio.spreadShare)),
  ];
}

const shareOf = (share: number | undefined): string => (share === undefined ? "the usual" : percent(share));
const secondsOf = (seconds: number | undefined): string =>
  seconds === undefined ? "the usual" : secondsWords(seconds);

function springDifferences(plan: readonly Spring[], studio: readonly Spring[]): Difference[] {
  const ids = [...new Set([...plan, ...studio].map((spring) => spring.id))];
  return ids.flatMap((id) => {
    const [theirs, ours] = [plan, studio].map((springs) => springs.find((spring) => spring.id === id));
    return differing(`spring ${theirs?.label ?? ours?.label ?? id}`, springFacts(theirs), springFacts(ours));
  });
}

const springFacts = (spring: Spring | undefined): string =>
  spring ? `${spring.label}, ${spring.count} of them, ${spring.stiffnessNPerMm} N/mm, ${spring.preloadN} N` : "none";

const differing = (label: string, plan: string, studio: string): Difference[] =>
  plan === studio ? [] : [{ label, plan, studio }];
