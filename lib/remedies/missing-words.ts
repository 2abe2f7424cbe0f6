/** Fixes for what a script leaves out: the library's lines and the trade's usual ones, to be put into the coach's own words. */
import { PROMPT_NOTE, promptFor } from "#lib/editor/stock.ts";
import { plural, tagWords } from "#lib/plan/format.ts";
import { hasLineOf, moveOf } from "#lib/plan/lookup.ts";
import { CUE_KINDS, type CueKind, type Move, type MoveItem, type Plan, type ScriptLine } from "#lib/plan/schema.ts";
import { escapeScriptText } from "#lib/plan/script-text.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { type SetupStep, walkSetups } from "#lib/transitions/walk.ts";
import { draftBreath, draftStart, NOTHING_CHANGES } from "./first-words.ts";
import { moveOfFinding } from "./of-finding.ts";
import type { Remedy, RemedyChange } from "./remedy.ts";
import { setupToWrite } from "./setup-lines.ts";

/** One usual safety line for each caution that the finding names. */
export function saySafety(plan: Plan, finding: Finding): Remedy | null {
  const item = moveOfFinding(plan, finding);
  const named = finding.values.cautions;
  if (!item || !Array.isArray(named)) return null;
  const cautions = (moveOf(plan, item)?.cautions ?? []).filter((caution) => named.includes(tagWords(caution)));
  const lines = cautions
    .map((caution): ScriptLine => ({ kind: "safety", text: promptFor(caution) }))
    .filter((line) => !item.script?.some(({ kind, text }) => kind === line.kind && text.trim() === line.text));
  return added(item, lines, PROMPT_NOTE);
}

export function sayEasier(plan: Plan, finding: Finding): Remedy | null {
  const item = moveOfFinding(plan, finding);
  return item && !hasLineOf(item, "easier") ? added(item, composed(plan, item, ["easier"])) : null;
}

export function sayBreath(plan: Plan, finding: Finding): Remedy | null {
  const item = moveOfFinding(plan, finding);
  return item && !hasLineOf(item, "breath") ? added(item, composed(plan, item, ["breath"])) : null;
}

/**
 * Every kind of line that the finding misses and that nobody has written since: another fix may have, before the checks ran again.
 * Null where one of them cannot be composed.
 */
export function sayMissingKinds(plan: Plan, finding: Finding): Remedy | null {
  const item = moveOfFinding(plan, finding);
  const { kinds } = finding.values;
  if (!item || !Array.isArray(kinds)) return null;
  const missing = CUE_KINDS.filter((kind) => kinds.includes(kind) && !hasLineOf(item, kind));
  const lines = composed(plan, item, missing);
  if (!missing.every((kind) => kind === "setup" || lines.some((line) => line.kind === kind))) return null;
  return joined(missing.includes("setup") ? setUp(plan, item) : [], added(item, lines));
}

/** The usual "nothing changes" where something does: it goes, and what changes is said. The coach's own words stay. */
export function sayChangeInstead(plan: Plan, finding: Finding): Remedy | null {
  const item = moveOfFinding(plan, finding);
  const stay = item?.script?.find(({ kind, text }) => kind === "setup" && text.trim() === NOTHING_CHANGES);
  const step = item && stepInto(plan, item);
  if (!item || !stay || !step) return null;
  const without = { ...item, script: (item.script ?? []).filter((line) => line !== stay) };
  const said = setupToWrite(plan, { ...step, item: without });
  if (!said) return null;
  return { ...said, changes: [{ itemId: item.id, field: "lineOut", value: stay }, ...said.changes] };
}

/** The lines of these kinds that library and trade have for a move; a set-up follows from the plan instead. */
function composed(plan: Plan, item: MoveItem, kinds: readonly CueKind[]): ScriptLine[] {
  const move = moveOf(plan, item);
  return kinds.flatMap((kind) => {
    const text = move && usual(move, kind);
    return text === undefined ? [] : [{ kind, text }];
  });
}

function usual(move: Move, kind: CueKind): string | undefined {
  const way = kind === "easier" || kind === "harder" ? move[kind]?.[0] : undefined;
  if (way !== undefined) return escapeScriptText(way);
  if (kind === "start") return draftStart(move);
  return kind === "breath" ? draftBreath(move) : undefined;
}

function setUp(plan: Plan, item: MoveItem): readonly RemedyChange[] {
  const step = stepInto(plan, item);
  const stay: ScriptLine = { kind: "setup", text: NOTHING_CHANGES };
  return (step && setupToWrite(plan, step)?.changes) ?? [{ itemId: item.id, field: "firstLine", value: stay }];
}

const stepInto = (plan: Plan, item: MoveItem): SetupStep | undefined =>
  walkSetups(plan).find((step) => step.item === item);

function added(item: MoveItem, lines: readonly ScriptLine[], note?: string): Remedy | null {
  const [first] = lines;
  if (!first) return null;
  const changes = lines.map((value): RemedyChange => ({ itemId: item.id, field: "lastLine", value }));
  return {
    label: lines.length === 1 ? `Say: ${first.text}` : addWords(lines.length),
    ...(note ? { note } : {}),
    changes,
  };
}

function joined(before: readonly RemedyChange[], rest: Remedy | null): Remedy | null {
  if (before.length === 0) return rest;
  const changes = [...before, ...(rest?.changes ?? [])];
  return { label: addWords(changes.length), changes };
}

const addWords = (lines: number): string => `Add ${plural(lines, "usual line")}`;
