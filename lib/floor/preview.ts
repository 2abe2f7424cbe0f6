/** What ending on time would change, in rows and sentences, shown before anything is changed. */
import { tenth } from "#lib/numbers/round.ts";
import { moveName, sideWords } from "#lib/plan/format.ts";
import { headSeconds, itemById, sidePairs } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import type { Retimed } from "./end-on-time.ts";
import { FLOOR_SENTENCES } from "./floor-sentences.ts";
import { otherSides } from "./rest-of-class.ts";

interface PreviewRow {
  readonly id: string;
  readonly name: string;
  /** Seconds. */
  readonly from: number;
  readonly to: number;
}
export interface RetimePreview {
  /** True when it would change anything. */
  readonly takes: boolean;
  readonly rows: readonly PreviewRow[];
  /** What it costs: what is left out, which sides differ, which locks give way, how much shorter items get. */
  readonly sentences: readonly string[];
}

/** `plan`: the class in force, for which `answer` was worked out. */
export function previewOf(plan: Plan, answer: Retimed): RetimePreview {
  const rows = rowsOf(plan, answer);
  const closing = headSeconds(plan, "closingSeconds");
  if (Math.abs(closing - answer.closingSeconds) >= 1) {
    rows.push({ id: "closing", name: "Closing", from: closing, to: Math.round(answer.closingSeconds) });
  }
  const takes = rows.length > 0 || answer.dropped.length > 0;
  const shorter = closing - answer.closingSeconds;
  const less = shorter >= 1 ? [FLOOR_SENTENCES.closingLess(Math.round(shorter))] : [];
  const sentences = [...sentencesOf(plan, answer), ...gistOf(answer), ...less];
  return { takes, rows, sentences };
}

/** A pair is one row when both sides change alike. */
function rowsOf(plan: Plan, { changed }: Retimed): PreviewRow[] {
  const others = otherSides(plan);
  const by = new Map(changed.map((change) => [change.item, change]));
  const shown = new Set<string>();
  return changed.flatMap(({ item, from, to }): PreviewRow[] => {
    if (shown.has(item)) return [];
    const other = by.get(others.get(item)?.id ?? "");
    const alike = other !== undefined && other.from === from && other.to === to;
    const planned = itemById(plan, item);
    if (!alike || planned?.kind !== "move") return [{ id: item, name: itemNameById(plan, item), from, to }];
    shown.add(other.item);
    return [{ id: item, name: `${moveName(plan, planned)}, both sides`, from, to }];
  });
}

/** "12 items get 1 to 3 s less." */
function gistOf({ changed }: Retimed): string[] {
  const say = (by: number[], word: "less" | "more"): string[] => {
    if (by.length === 0) return [];
    const [least, most] = [Math.min(...by), Math.max(...by)].map(tenth);
    const span = least === most ? `${least}` : `${least} to ${most}`;
    return [FLOOR_SENTENCES.itemsGet(by.length, span, word)];
  };
  const by = changed.map(({ from, to }) => to - from);
  return [
    ...say(
      by.filter((x) => x < 0).map((x) => -x),
      "less",
    ),
    ...say(
      by.filter((x) => x > 0),
      "more",
    ),
  ];
}

/** "Kneeling one-arm row, left". */
export function itemNameById(plan: Plan, id: string): string {
  const item = itemById(plan, id);
  if (item?.kind === "pause") return item.text || "Pause";
  if (item?.kind !== "move") return "Closing";
  const oneSided = item.side === "left" || item.side === "right";
  return oneSided ? `${moveName(plan, item)}, ${sideWords(item.side)}` : moveName(plan, item);
}

function sentencesOf(plan: Plan, { changed, dropped, uneven, unlocked }: Retimed): string[] {
  const to = new Map(changed.map((change) => [change.item, change.to]));
  const seconds = (item: MoveItem) => `${to.get(item.id) ?? item.seconds} s`;
  const pairs = sidePairs(plan).flatMap(({ left, right }) => (left && right ? [{ left, right }] : []));
  const out = new Set(dropped);
  const whole = pairs.filter(({ left }) => out.has(left.id));
  const paired = new Set(whole.flatMap(({ left, right }) => [left.id, right.id]));
  const gone = [
    ...whole.map(({ left }) => `${moveName(plan, left)}, both sides`),
    ...dropped.filter((id) => !paired.has(id)).map((id) => itemNameById(plan, id)),
  ];
  const unlike = pairs.filter(({ left, right }) => uneven.includes(left.id) || uneven.includes(right.id));
  return [
    ...gone.map(FLOOR_SENTENCES.leftOut),
    ...unlike.map(({ left, right }) =>
      FLOOR_SENTENCES.sidesDiffer(moveName(plan, left), seconds(left), seconds(right)),
    ),
    ...unlocked.map((id) => FLOOR_SENTENCES.unlocked(itemNameById(plan, id))),
  ];
}
