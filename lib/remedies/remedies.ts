/** Fixes for findings that one obvious act settles. The page offers it as one step, and one undo takes it back. */
import { readOut } from "#lib/acts/act-words.ts";
import { countWord, secondsWords } from "#lib/plan/format.ts";
import { own, sidePairs } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan, PlanItem, ScriptLine } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { sayBreath, sayChangeInstead, sayEasier, sayMissingKinds, saySafety } from "./missing-words.ts";
import { moveOfFinding } from "./of-finding.ts";
import type { Remedy, RemedyChange } from "./remedy.ts";
import { keepSpringsOn, saySetup } from "./setup-lines.ts";
import { intoRange, wholeReps } from "./times.ts";

type MakeRemedy = (plan: Plan, finding: Finding) => Remedy | null;

/**
 * The act that fixes a finding in the plan as it is now. Null where none is obvious or it is fixed already. Never
 * throws.
 */
export function remedyFor(plan: Plan, finding: Finding): Remedy | null {
  const make = own(REMEDIES, finding.rule);
  const remedy = make?.(plan, finding) ?? null;
  return remedy && remedy.changes.length > 0 ? remedy : null;
}

/**
 * The acts for several findings of one rule, as one. Of findings that share an item the first is fixed, since each act was
 * made for the plan without the others.
 */
export function remedyForAll(plan: Plan, findings: readonly Finding[]): Remedy | null {
  const taken = new Set<string>();
  const fixes = findings.flatMap((finding) => {
    const fix = finding.items.some((id) => taken.has(id)) ? null : remedyFor(plan, finding);
    if (fix) for (const id of finding.items) taken.add(id);
    return fix ?? [];
  });
  if (fixes.length === 0) return null;
  return { label: `Fix ${fixes.length} of ${findings.length}`, changes: fixes.flatMap(({ changes }) => changes) };
}

const REMEDIES: Readonly<Record<string, MakeRemedy>> = {
  "uneven-sides": evenSides,
  "uneven-springs-between-sides": sameSprings,
  "springs-not-there": springsThatAreThere,
  "springs-out-of-range": springsInRange,
  "transition-too-short": (plan, finding) => setTransition(plan, finding, finding.values.neededSeconds),
  "too-short-or-long": intoRange,
  "partial-rep": wholeReps,
  "springs-changed-carriage-out": saySetup,
  "change-not-told": saySetup,
  "let-go-before-carriage-home": saySetup,
  "hand-or-foot-not-free": (plan, finding) =>
    "neededSeconds" in finding.values
      ? setTransition(plan, finding, finding.values.estimateSeconds)
      : saySetup(plan, finding),
  "start-place-not-told": saySetup,
  "change-could-be-avoided": keepSpringsOn,
  "setup-line-twice": takeOneOut,
  "says-otherwise": sayChangeInstead,
  "missing-cue": sayMissingKinds,
  "caution-without-safety-line": saySafety,
  "caution-without-easier": sayEasier,
  "long-hold-without-breath": sayBreath,
};

/** Locked items keep their times. */
const isFree = (item: MoveItem): boolean => item.locked !== true;

/** The shorter of each pair gets the longer one's time, unless a lock decides which time both keep. */
function evenSides(plan: Plan, finding: Finding): Remedy | null {
  const pairs = sidePairs(plan).filter((p) => isAbout(finding, p.left) || isAbout(finding, p.right));
  const changes: RemedyChange[] = [];
  const times = new Set<number>();
  for (const { left, right } of pairs) {
    if (!left || !right) return null;
    if (left.seconds === right.seconds) continue;
    if (!isFree(left) && !isFree(right)) return null;
    const [longer, shorter] = left.seconds > right.seconds ? [left, right] : [right, left];
    const kept = isFree(shorter) ? longer : shorter;
    const changed = kept === longer ? shorter : longer;
    changes.push({ itemId: changed.id, field: "seconds", value: kept.seconds });
    times.add(kept.seconds);
  }
  const [only] = times;
  const label = times.size === 1 && only !== undefined ? `Make both ${secondsWords(only)}` : "Make the pairs even";
  return { label, changes };
}

/** The side that comes later in the plan is set up like the earlier one. */
function sameSprings(plan: Plan, finding: Finding): Remedy | null {
  const pair = sidePairs(plan).find((p) => isAbout(finding, p.left) && isAbout(finding, p.right));
  if (!pair?.left || !pair.right) return null;
  const { left, right } = pair;
  const place = (item: MoveItem): number => plan.items.indexOf(item);
  const [first, second] = place(left) <= place(right) ? [left, right] : [right, left];
  const changes: RemedyChange[] = [
    { itemId: second.id, field: "springs", value: { ...first.springs } },
    { itemId: second.id, field: "offsetMm", value: first.offsetMm },
  ];
  return { label: `Set the ${second.side} up like the ${first.side}`, changes };
}

function takeOneOut(plan: Plan, finding: Finding): Remedy | null {
  const item = moveOfFinding(plan, finding);
  const lines = (item?.script ?? []).filter(({ kind }) => kind === "setup");
  const says = (line: ScriptLine): string => line.text.trim();
  const value = lines.find((line) => item && readOut(plan, item, says(line)) === finding.values.text);
  const same = lines.filter((line) => value && says(line) === says(value));
  if (!item || !value || same.length < 2) return null;
  return { label: "Take one of them out", changes: [{ itemId: item.id, field: "lineTwice", value }] };
}

function springsThatAreThere(plan: Plan, finding: Finding): Remedy | null {
  const item = moveOfFinding(plan, finding);
  const { springId, spring, count, tooMany } = finding.values;
  if (!item || typeof springId !== "string" || typeof count !== "number") return null;
  const wanted = own(item.springs, springId) ?? 0;
  if (wanted <= count) return null;
  const label = `Take off ${countOf(tooMany)} ${String(spring)}`;
  return { label, changes: [setSpring(item, springId, count)] };
}

function springsInRange(plan: Plan, finding: Finding): Remedy | null {
  const item = moveOfFinding(plan, finding);
  const { springId, spring, count, least, most, difference } = finding.values;
  if (!item || typeof springId !== "string" || typeof count !== "number" || typeof least !== "number") return null;
  if ((own(item.springs, springId) ?? 0) !== count) return null;
  const tooLight = count < least;
  const value = tooLight ? least : typeof most === "number" ? most : count;
  const there = plan.equipment.springs.find((s) => s.id === springId)?.count ?? 0;
  if (value > there || value === count) return null;
  const label = `${tooLight ? "Add" : "Take off"} ${countOf(difference)} ${String(spring)}`;
  return { label, changes: [setSpring(item, springId, value)] };
}

function setTransition(plan: Plan, finding: Finding, value: unknown): Remedy | null {
  const item = moveOfFinding(plan, finding);
  if (!item || typeof value !== "number" || !Number.isFinite(value) || item.transitionSeconds === value) return null;
  return { label: `Plan ${secondsWords(value)}`, changes: [{ itemId: item.id, field: "transitionSeconds", value }] };
}

function setSpring(item: MoveItem, springId: string, count: number): RemedyChange {
  const { [springId]: _taken, ...others } = item.springs;
  return { itemId: item.id, field: "springs", value: count > 0 ? { ...others, [springId]: count } : others };
}

const isAbout = (finding: Finding, item: PlanItem | undefined): boolean =>
  item !== undefined && finding.items.includes(item.id);

const countOf = (n: unknown): string => (typeof n === "number" ? countWord(n) : "some");
