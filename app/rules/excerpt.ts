/** A rule's example as a small class to read: its items, when they begin, with which springs, and the changes between. Pure. */

import { actionsWords, doTellWords } from "#app/_session/item-words.ts";
import { classClock } from "#lib/clock/clock.ts";
import { readerOf } from "#lib/cues/as-read.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { percent } from "#lib/formats/percent.ts";
import { distanceWords } from "#lib/formats/units.ts";
import { PLAN_DEFAULTS } from "#lib/plan/defaults.ts";
import {
  clockTime,
  itemName,
  plainNumber,
  plural,
  secondsRange,
  secondsWords,
  sentenceCase,
  springWords,
  tagWords,
} from "#lib/plan/format.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import { sameData } from "#lib/plan/same-data.ts";
import type { Move, MoveItem, Plan, PlanItem, ScriptLine } from "#lib/plan/schema.ts";
import { exampleMoves, examplePlan, fullScript } from "#lib/rules/define/example-plan.ts";

export interface ExcerptItem {
  readonly id: string;
  readonly kind: PlanItem["kind"];
  /** When it begins, m:ss. */
  readonly at: string;
  readonly name: string;
  /** How long it lasts; empty for a heading. */
  readonly lasts: string;
  /** "one light · 9 repetitions · kneeling, facing back"; empty where nothing is to be said. */
  readonly details: string;
  /** The change into it: "8 s: spring on, carriage home"; empty where there is none. */
  readonly change: string;
  /** What is said in it, where the rule is about that. */
  readonly lines: readonly ScriptLine[];
}
interface Excerpt {
  /** What the example sets for the whole class, where that is not the usual. */
  readonly facts: readonly string[];
  readonly items: readonly ExcerptItem[];
}

/** `lines`: show what is said. */
export function excerptOf(plan: Plan, lines: boolean, f: Formats): Excerpt {
  const clock = classClock(plan);
  const { rows } = clock;
  const asRead = readerOf(plan, clock);
  const items = plan.items.map((item, i): ExcerptItem => {
    const row = rows[i];
    return {
      id: item.id,
      kind: item.kind,
      at: clockTime(row?.start ?? 0),
      name: sentenceCase(titleOf(item) || itemName(plan, item)),
      lasts: item.kind === "heading" ? "" : secondsWords(item.seconds),
      details: item.kind === "move" ? moveDetails(plan, item, row?.reps ?? null, f) : "",
      change: row && item.kind === "move" ? changeWords(row.transition) : "",
      lines:
        item.kind === "move" && lines
          ? (item.script ?? []).map(({ kind, text }) => ({ kind, text: asRead(item, text) }))
          : [],
    };
  });
  return { facts: classFacts(plan), items };
}

/** Does any move of these examples have other words than the usual script? Then the rule is about what is said. */
export const saysSomethingElse = (plans: readonly Plan[]): boolean =>
  plans.some((plan) => plan.items.some((item) => item.kind === "move" && !sameData(item.script, fullScript)));

/** The item's own title, where it has one. */
const titleOf = (item: PlanItem): string | undefined =>
  item.kind === "heading" ? item.title : item.kind === "pause" ? item.text || "Pause" : undefined;

function changeWords(transition: ReturnType<typeof classClock>["rows"][number]["transition"]): string {
  const { planned, actions } = transition;
  const [what, apart] = [actionsWords(actions), doTellWords(transition)];
  const takes = [what, apart && `about ${apart}`].filter(Boolean).join(", ");
  if (planned !== null) return `${secondsWords(planned)} planned${takes ? `: ${takes}` : ""}`;
  return takes;
}

function moveDetails(plan: Plan, item: MoveItem, reps: number | null, f: Formats): string {
  const move = moveOf(plan, item);
  const parts = [
    move?.resistance === "bodyweight" ? "" : springWords(plan.equipment, item.springs),
    item.offsetMm ? `${distanceWords(item.offsetMm, f)} from the anchor` : "",
    reps === null ? "" : `${plainNumber(reps)} repetitions`,
    item.locked ? "locked" : "",
    item.range ? `from ${secondsRange(...item.range)}` : "",
    item.keep ? "kept together" : "",
    ...(move ? moveFacts(plan, move, item) : ["its move is missing"]),
  ];
  return parts.filter(Boolean).join(" · ");
}

function moveFacts(plan: Plan, move: Move, item: MoveItem): string[] {
  const base = Object.hasOwn(exampleMoves, item.move)
    ? exampleMoves[item.move as keyof typeof exampleMoves] // its own key, just asked
    : exampleMoves.squat;
  const setup = [
    tagWords(move.position),
    `facing ${item.facing ?? move.facing}`,
    move.hands === "free" ? "" : `hands on ${tagWords(move.hands)}`,
    move.feet === "carriage" || move.feet === "free" ? "" : `feet: ${tagWords(move.feet)}`,
    move.station === "carriage" ? "" : `at the ${move.station}`,
  ];
  return [setup.filter(Boolean).join(", "), muscles(move), cautions(move), ...unusual(plan, move, base)];
}

const muscles = (move: Move): string =>
  Object.entries(move.muscles)
    .map(([group, weight]) => `${tagWords(group)}${weight === 1 ? "" : ` ${plainNumber(weight ?? 0)}`}`)
    .join(", ");

const cautions = (move: Move): string =>
  move.cautions?.length ? `asks for care: ${move.cautions.map(tagWords).join(", ")}` : "";

/** What the example changed in the move, besides what is always shown. */
function unusual(plan: Plan, move: Move, base: Move): string[] {
  const differs = (key: keyof Move): boolean => move[key] !== undefined && !sameData(move[key], base[key]);
  const { min = {}, max = {} } = move.springs ?? {};
  return [
    Object.keys(min).length > 0 ? `meant for at least ${springWords(plan.equipment, min)}` : "",
    Object.keys(max).length > 0 ? `at most ${springWords(plan.equipment, max)}` : "",
    move.seconds ? `meant for ${secondsRange(...move.seconds)}` : "",
    differs("spine") ? `spine: ${(move.spine ?? []).map(tagWords).join(", ")}` : "",
    differs("travelMm") && move.travelMm ? `travel ${move.travelMm[0]} to ${move.travelMm[1]} mm` : "",
    differs("resistance") ? move.resistance : "",
    differs("tempo") ? tempoWords(move.tempo) : "",
    move.easier?.length ? "the library has an easier way" : "",
  ];
}

function tempoWords(tempo: Move["tempo"]): string {
  if ("holdSeconds" in tempo) return "held";
  const { outSeconds, outHoldSeconds = 0, backSeconds, backHoldSeconds = 0 } = tempo;
  return `${plainNumber(outSeconds + outHoldSeconds + backSeconds + backHoldSeconds)} s a repetition`;
}

const USUAL = examplePlan([]);

function classFacts(plan: Plan): string[] {
  const heads = [
    ["opening", plan.openingSeconds, PLAN_DEFAULTS.openingSeconds],
    ["closing", plan.closingSeconds, PLAN_DEFAULTS.closingSeconds],
    ["heads-up", plan.headsUpSeconds, PLAN_DEFAULTS.headsUpSeconds],
    ["count-in", plan.countInSeconds, PLAN_DEFAULTS.countInSeconds],
    ["grid", plan.gridSeconds, PLAN_DEFAULTS.gridSeconds],
  ] as const;
  const shares = Object.entries(plan.theme?.shares ?? {}).map(
    ([group, share]) => `${percent(share ?? 0)} ${tagWords(group)}`,
  );
  return [
    plan.lengthSeconds === USUAL.lengthSeconds ? "" : `a class of ${secondsWords(plan.lengthSeconds)}`,
    ...heads.map(([name, seconds, usual]) =>
      seconds === undefined || seconds === usual ? "" : `${name} ${secondsWords(seconds)}`,
    ),
    plan.theme ? `theme ${[plan.theme.name, ...shares].join(", ")}` : "",
    plan.level ? `level ${tagWords(plan.level)}` : "",
    plan.expected?.length ? `expected: ${plan.expected.map(tagWords).join(", ")}` : "",
    sameData(plan.equipment, USUAL.equipment) ? "" : machinesWords(plan),
  ].filter(Boolean);
}

const machinesWords = ({ equipment }: Plan): string =>
  `machines with ${equipment.springs.map((s) => plural(s.count, s.label, s.label)).join(", ") || "no springs"}`;
