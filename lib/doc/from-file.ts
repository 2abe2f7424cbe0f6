/**
 * What a plan brought with its file that differs from its studio: findings are based on it, so whoever signs the plan
 * is told. Standards in a file never count and are not listed here.
 */
import type * as Y from "yjs";
import type { Formats } from "#lib/formats/formats.ts";
import { percent } from "#lib/formats/percent.ts";
import { distanceWords, forceWords, stiffnessWords } from "#lib/formats/units.ts";
import { factIn, moveChanges } from "#lib/library/changes.ts";
import type { SpringNames } from "#lib/library/move-words.ts";
import { secondsWords } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import { sameData } from "#lib/plan/same-data.ts";
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
 * `f`: the units of whoever reads them.
 */
export function fromFile(doc: Y.Doc, studio: StudioContext, f: Formats): FromFile[] {
  const { carried } = planParts(doc);
  const equipment = carriedEquipment(carried);
  const machines = equipment ? machineDifferences(equipment, studio.equipment, f) : [];
  const moves = movesFromFile(doc, studio, { equipment: equipment ?? studio.equipment, f });
  if (!equipment || machines.length === 0) return moves;
  return [{ kind: "machines", name: equipment.name, differences: machines }, ...moves];
}

interface Comparing {
  readonly equipment: Equipment;
  readonly f: Formats;
}

function movesFromFile(doc: Y.Doc, studio: StudioContext, { equipment, f }: Comparing): FromFile[] {
  const used = movesUsed(doc);
  const names: SpringNames = new Map(equipment.springs.map(({ id, label }) => [id, label]));
  return Object.entries(carriedMoves(planParts(doc).carried))
    .filter(([id]) => used.has(id))
    .flatMap(([id, move]): FromFile[] => {
      const ours = own(studio.moves, id);
      if (!ours) return [{ kind: "stranger", name: move.name, differences: [] }];
      // The library's limits on springs that these machines do not have are left out of the comparison.
      const differences = moveChanges(withinEquipment(ours, equipment), move, names).map(
        ({ key, label, before, after }) => ({ label, plan: factIn(key, after, f), studio: factIn(key, before, f) }),
      );
      return differences.length === 0 ? [] : [{ kind: "move", name: move.name, differences }];
    })
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

function machineDifferences(plan: Equipment, studio: Equipment, f: Formats): Difference[] {
  const travel = ({ carriageTravelMm }: Equipment): string => distanceWords(carriageTravelMm, f, true);
  const times = ["base" as const, ...ACTIONS].flatMap((action) =>
    differing(
      `time for ${action.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)}`,
      secondsOf(plan.actionSeconds?.[action]),
      secondsOf(studio.actionSeconds?.[action]),
    ),
  );
  return [
    ...differing("machines", plan.name, studio.name),
    ...differing("carriage travel", travel(plan), travel(studio), plan.carriageTravelMm === studio.carriageTravelMm),
    ...springDifferences(plan.springs, studio.springs, f),
    ...times,
    ...differing("spread in a change", shareOf(plan.spreadShare), shareOf(studio.spreadShare)),
  ];
}

const shareOf = (share: number | undefined): string => (share === undefined ? "the usual" : percent(share));
const secondsOf = (seconds: number | undefined): string =>
  seconds === undefined ? "the usual" : secondsWords(seconds);

function springDifferences(plan: readonly Spring[], studio: readonly Spring[], f: Formats): Difference[] {
  const ids = [...new Set([...plan, ...studio].map((spring) => spring.id))];
  return ids.flatMap((id) => {
    const [theirs, ours] = [plan, studio].map((springs) => springs.find((spring) => spring.id === id));
    return differing(
      `spring ${theirs?.label ?? ours?.label ?? id}`,
      springFacts(theirs, f),
      springFacts(ours, f),
      sameData(theirs, ours),
    );
  });
}

const springFacts = (spring: Spring | undefined, f: Formats): string =>
  spring
    ? `${spring.label}, ${spring.count} of them, ${stiffnessWords(spring.stiffnessNPerMm, f)}, preload ${forceWords(spring.preloadN, f, true)}`
    : "none";

/** `same`: where the words may be rounded. */
const differing = (label: string, plan: string, studio: string, same = plan === studio): Difference[] =>
  same ? [] : [{ label, plan, studio }];
