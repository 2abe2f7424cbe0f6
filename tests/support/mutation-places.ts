/** Where in which class a mistake or a paraphrase can be planted, and how: by the words of a line and the facts of the plan. */
import { isMoveItem } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan, PlanItem, ScriptLine } from "#lib/plan/schema.ts";
import { STARTER_EQUIPMENT } from "#lib/starter/room.ts";
import { type Setup, setupOf } from "#lib/transitions/transitions.ts";
import { composePlan, type DemoRow } from "#seed/plans/compose.ts";
import { FIRST_TRY } from "#seed/plans/first-try.ts";
import { UPPER_BODY_AND_TRUNK } from "#seed/plans/upper-body-and-trunk.ts";
import { WHOLE_BODY } from "#seed/plans/whole-body.ts";

/** A move item of a class with what stands around it. */
export interface Place {
  readonly plan: Plan;
  readonly item: MoveItem;
  readonly from: Setup | null;
  readonly to: Setup;
  readonly before: MoveItem | undefined;
  readonly next: MoveItem | undefined;
  /** From headings "Round 2 of 3". */
  readonly round: { readonly nth: number; readonly of: number } | null;
}

const row = (
  move: string,
  springs: Readonly<Record<string, number>>,
  more: Partial<{ side: "left" | "right" }> = {},
) => ({
  ...{ move, springs, seconds: 60, transition: 20 },
  ...more,
});
const round = (nth: number): DemoRow[] => [
  { heading: `Round ${nth} of 3` },
  row("row-kneeling", { light: 1, middle: 1 }),
  row("chest-press-kneeling", { middle: 1 }),
  row("forearm-plank-slide", { middle: 1 }),
];
const ROUNDS: readonly DemoRow[] = [
  ...[round(1), round(2), round(3)].flat(),
  { heading: "Finish" },
  row("bridge-supine", { light: 1, firm: 1 }),
];
const STRAPS: readonly DemoRow[] = [
  row("leg-press-supine", { firm: 1, strong: 1 }),
  row("leg-lowering-straps", { middle: 1 }),
  row("bridge-supine", { light: 1, firm: 1 }),
  row("leg-lowering-straps", { light: 1, middle: 1 }),
  row("leg-lowering-straps", { middle: 2 }),
  row("plank-slide", { middle: 1 }),
  row("leg-lowering-straps", { middle: 1 }),
  row("curl-kneeling", { middle: 1 }),
  row("leg-lowering-straps", { middle: 1 }),
  row("bridge-leg-curl", { light: 1 }),
  row("leg-lowering-straps", { middle: 1 }),
  row("squat-handles", { light: 1, middle: 1 }),
  row("row-single", { light: 1 }, { side: "right" }),
  row("row-single", { light: 1 }, { side: "left" }),
];

/** From the starter library, in its room: what the demo classes have little of. Every item gets an id of its own. */
function starterClass(title: string, rows: readonly DemoRow[]): Plan {
  const plan = composePlan({ title, lengthSeconds: 1800 }, STARTER_EQUIPMENT, rows);
  return { ...plan, items: plan.items.map((item, n): PlanItem => ({ ...item, id: `n${n}-${item.id}` })) };
}

/** Without mistakes. */
export const GOOD_CLASSES: readonly Plan[] = [
  ...[UPPER_BODY_AND_TRUNK, WHOLE_BODY],
  ...[starterClass("Three rounds", ROUNDS), starterClass("In and out of the straps", STRAPS)],
];
/** With the trainee's class, which has mistakes of its own in some places. */
export const CLASSES: readonly Plan[] = [...GOOD_CLASSES, FIRST_TRY];

export function placesOf(plan: Plan): Place[] {
  const moves = plan.items.filter(isMoveItem);
  let heading = "";
  return plan.items.flatMap((item): Place[] => {
    if (item.kind === "heading") heading = item.title;
    const to = isMoveItem(item) ? setupOf(plan, item) : null;
    if (!isMoveItem(item) || !to) return [];
    const nth = moves.indexOf(item);
    const before = moves[nth - 1];
    const [, roundNth, of] = /^Round (\d) of (\d)$/.exec(heading) ?? [];
    const roundHere = roundNth ? { nth: Number(roundNth), of: Number(of) } : null;
    const from = before ? setupOf(plan, before) : null;
    return [{ plan, item, from, to, before, next: moves[nth + 1], round: roundHere }];
  });
}

export const moveName = ({ plan }: Place, item: MoveItem | undefined): string =>
  plan.moves[item?.move ?? ""]?.name ?? "";

/** The class with another script for this item. */
export const withScript = ({ plan, item }: Place, script: readonly ScriptLine[]): Plan => ({
  ...plan,
  items: plan.items.map((one) => (one === item ? { ...item, script: [...script] } : one)),
});

const scriptOf = ({ item }: Place): readonly ScriptLine[] => item.script ?? [];

/** Clauses end with a comma or a full stop, which stays with them. */
const clausesOf = (text: string): string[] => text.match(/[^,.;]+[,.;]?\s*/g) ?? [];
export const asBeginning = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

function editedSetup(place: Place, edit: (clauses: string[]) => string[] | undefined): ScriptLine[] | undefined {
  const script = [...scriptOf(place)];
  const at = script.findIndex(({ kind }) => kind === "setup");
  const line = script[at];
  const clauses = line && edit(clausesOf(line.text));
  if (!line || !clauses) return undefined;
  const text = clauses.join("").trim();
  if (text === "") return script.toSpliced(at, 1);
  const ended = text
    .replace(/[,;]$/, ".")
    .replace(/(^|\. )(.)/g, (_, gap: string, first: string) => gap + first.toUpperCase());
  return script.toSpliced(at, 1, { ...line, text: ended });
}

const endOf = (clause: string): string => /[,.;]?\s*$/.exec(clause)?.[0] ?? "";

/** The script with other words for the first clause of the set-up that matches; undefined when none does. */
export const replacing = (place: Place, which: RegExp, words: string): ScriptLine[] | undefined =>
  editedSetup(place, (clauses) => {
    const at = clauses.findIndex((clause) => which.test(clause));
    return at < 0 ? undefined : clauses.toSpliced(at, 1, words + endOf(clauses[at] ?? ""));
  });

export const leavingOut = (place: Place, which: RegExp): ScriptLine[] | undefined =>
  editedSetup(place, (clauses) => {
    const at = clauses.findIndex((clause) => which.test(clause));
    if (at < 0) return undefined;
    const kept = clauses.toSpliced(at, 1);
    // The last clause of a sentence leaves its full stop to the one before.
    const isLast = (clauses[at] ?? "").includes(".");
    return isLast && at > 0 ? kept.with(at - 1, (kept[at - 1] ?? "").replace(/,\s*$/, ". ")) : kept;
  });

/** The script with one clause said right after another. */
export const sayingAfter = (place: Place, which: RegExp, after: RegExp): ScriptLine[] | undefined =>
  editedSetup(place, (clauses) => {
    const [at, to] = [clauses.findIndex((c) => which.test(c)), clauses.findIndex((c) => after.test(c))];
    if (at < 0 || to <= at) return undefined;
    const moved = (clauses[at] ?? "").replace(/[,.;]?\s*$/, "").toLowerCase();
    const end = endOf(clauses[to] ?? "");
    return clauses.with(to, `${(clauses[to] ?? "").replace(/[,.;]?\s*$/, "")}, ${moved}${end}`).toSpliced(at, 1);
  });

export const sayingFirst = (place: Place, words: string): ScriptLine[] | undefined =>
  editedSetup(place, ([first = "", ...rest]) => [`${asBeginning(words)}. `, first, ...rest]);

/** The script with one more line, said at its moment. */
export const adding = (
  place: Place,
  text: string,
  at: { afterSeconds: number } | { leftSeconds: number },
): ScriptLine[] => [...scriptOf(place), { kind: "focus", text, at } as ScriptLine];

/** The script with another text for its first line of a kind; undefined when it has none or the text stays the same. */
export function rewording(
  place: Place,
  kind: ScriptLine["kind"],
  words: (text: string) => string,
): ScriptLine[] | undefined {
  const script = scriptOf(place);
  const at = script.findIndex((line) => line.kind === kind);
  const line = script[at];
  if (!line || words(line.text) === line.text) return undefined;
  return script.toSpliced(at, 1, { ...line, text: words(line.text) });
}
