/**
 * The first draft of a class's words: for each move that has none, the lines that can be composed from the plan and the
 * library. The set-up in the order of its acts, the start, the breath by its tempo, safety for its cautions, an easier way.
 * What was said for a caution in a block, or for the move's other side, is not said again. Pure.
 */
import { spokenOf } from "#lib/cautions/safety-words.ts";
import { promptFor } from "#lib/editor/stock.ts";
import { Kept } from "#lib/memo/kept.ts";
import { perValue } from "#lib/memo/per-value.ts";
import { blockNumbers } from "#lib/plan/blocks.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import type { Move, MoveCaution, MoveItem, Plan, ScriptLine } from "#lib/plan/schema.ts";
import { escapeScriptText } from "#lib/plan/script-text.ts";
import { draftBreath, draftStart, NOTHING_CHANGES } from "#lib/remedies/first-words.ts";
import type { Remedy, RemedyChange } from "#lib/remedies/remedy.ts";
import { setupToWrite } from "#lib/remedies/setup-lines.ts";
import { type SetupStep, walkSetups } from "#lib/transitions/walk.ts";

export interface DraftLine {
  readonly line: ScriptLine;
  /** What writes it. */
  readonly change: RemedyChange;
}

export type FirstDraft = ReadonlyMap<string, readonly DraftLine[]>;

/** By item, in the order in which they are said; no entry for a move that has words of its own. Once a plan. */
export const firstDraft = perValue(composeDraft);

function composeDraft(plan: Plan): FirstDraft {
  const steps = walkSetups(plan);
  const blocks = blockNumbers(plan.items);
  const answered = new Set<string>();
  const told = new Set<string>();
  const draft = new Map<string, readonly DraftLine[]>();
  for (const step of steps) {
    const { item } = step;
    const block = blocks[plan.items.indexOf(item)] ?? 0;
    const isNew = (seen: Set<string>, what: string) => !seen.has(`${block} ${what}`);
    const move = moveOf(plan, item);
    const cautions = (move?.cautions ?? []).filter((caution) => isNew(answered, caution));
    const proposed = move ? keptProposal(plan, step, move, isNew(told, item.move) ? cautions : null) : null;
    if (proposed && proposed.length > 0) draft.set(item.id, proposed);
    for (const caution of [...writtenFor(item), ...(proposed ? cautions : [])]) answered.add(`${block} ${caution}`);
    told.add(`${block} ${item.move}`);
  }
  return draft;
}

/** Cautions that the item's own safety lines speak of. */
const writtenFor = perValue(({ script = [] }: MoveItem) =>
  script.filter(({ kind }) => kind === "safety").flatMap(spokenOf),
);

/** Everything that is proposed for some items, as one step. */
export function takeDraft(draft: FirstDraft, items: readonly string[]): Remedy {
  const changes = items.flatMap((id) => (draft.get(id) ?? []).map(({ change }) => change));
  return { label: changes.length === 1 ? "Take one line" : `Take ${changes.length} lines`, changes };
}

const keptProposals = perValue((_: SetupStep) => new Kept<readonly DraftLine[] | null>());
const TOLD = "told before";

/** What is still open of it; the same list while the step and what it is composed from stay as they are. */
function keptProposal(plan: Plan, step: SetupStep, move: Move, cautions: readonly MoveCaution[] | null) {
  const reads = [plan.equipment, plan.moves, move, ...(cautions ?? [TOLD])];
  const compose = () => composed(plan, step, move, cautions)?.filter(({ line }) => !hasLine(step.item, line)) ?? null;
  return keptProposals(step).get(reads, compose);
}

/**
 * Everything that is proposed for a move; null for one with words of its own, which is told without composing its set-up:
 * this runs with every letter, and most moves have their words. `cautions`: those that nothing in the block answers yet;
 * null where the move was told in the block before.
 */
function composed(plan: Plan, step: SetupStep, move: Move, cautions: readonly MoveCaution[] | null) {
  const { item } = step;
  const said = saidLines(move, cautions).map(
    (line): DraftLine => ({ line, change: { itemId: item.id, field: "lastLine", value: line } }),
  );
  const others = (item.script ?? []).filter(({ kind }) => kind !== "setup");
  if (!saysOnly(others, said)) return null;
  const all = [...setUp(plan, step), ...said];
  return saysOnly(item.script ?? [], all) ? all : null;
}

function saidLines(move: Move, cautions: readonly MoveCaution[] | null): ScriptLine[] {
  const start: ScriptLine = { kind: "start", text: draftStart(move) };
  if (!cautions) return [start];
  const [easier] = move.easier ?? [];
  return [
    start,
    { kind: "breath", text: draftBreath(move) },
    ...cautions.map((caution): ScriptLine => ({ kind: "safety", text: promptFor(caution) })),
    ...(easier === undefined ? [] : [{ kind: "easier" as const, text: escapeScriptText(easier) }]),
  ];
}

/** As if the move had no words yet: what was taken stays one of the lines. */
function setUp(plan: Plan, step: SetupStep): DraftLine[] {
  const { script: _script, ...bare } = step.item;
  const changes = setupToWrite(plan, { ...step, item: bare })?.changes ?? [];
  const lines = changes.flatMap((change) =>
    change.field === "firstLine" || change.field === "setupEnd" ? [{ line: change.value, change }] : [],
  );
  if (lines.length > 0 || !step.before) return lines;
  const line: ScriptLine = { kind: "setup", text: NOTHING_CHANGES };
  return [{ line, change: { itemId: step.item.id, field: "firstLine", value: line } }];
}

/** A move is in draft while it says nothing but what was proposed for it. */
const saysOnly = (script: readonly ScriptLine[], proposed: readonly DraftLine[]): boolean =>
  script.every(({ text, kind }) => text.trim() === "" || proposed.some(({ line }) => same(line, { kind, text })));

const hasLine = (item: MoveItem, line: ScriptLine): boolean =>
  (item.script ?? []).some(({ text, kind }) => same(line, { kind, text }));

const same = (a: ScriptLine, b: ScriptLine): boolean => a.kind === b.kind && a.text.trim() === b.text.trim();
