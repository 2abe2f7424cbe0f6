/** Checks what the schema cannot: that ids exist and are unique, and that live fields and limits are known. */

import { own } from "#lib/plan/lookup.ts";
import { formatPointer, type Path, type PlanProblem } from "#lib/plan/pointer.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import { parseScriptText } from "#lib/plan/script-text.ts";
import { badLimits } from "#lib/rules/bad-limits.ts";
import { FORMAT_RULE_IDS } from "#lib/rules/format-ids.ts";
import { ruleById } from "#lib/rules/registry.ts";

/** The first problem, or undefined: repeated ids, then missing ones, then live fields, then studio standards. */
export function crossCheck(plan: Plan): PlanProblem | undefined {
  return firstOf([repeatedIds(plan), danglingInMoves(plan), danglingInItems(plan), liveFields(plan), standards(plan)]);
}

type Problems = Iterable<PlanProblem>;

function firstOf(sources: readonly Problems[]): PlanProblem | undefined {
  for (const source of sources) for (const problem of source) return problem;
  return undefined;
}

function* repeatedIds(plan: Plan): Problems {
  yield* repeats(plan.equipment.springs, ["equipment", "springs"]);
  yield* repeats(plan.items, ["items"]);
}

function* repeats(list: readonly { id: string }[], at: Path): Problems {
  const seen = new Map<string, number>();
  for (const [i, { id }] of list.entries()) {
    const first = seen.get(id);
    if (first !== undefined) {
      yield { path: [...at, i, "id"], problem: `is a repeated id: ${formatPointer([...at, first])} has it already` };
    }
    seen.set(id, i);
  }
}

function* danglingInMoves(plan: Plan): Problems {
  const springs = new Set(plan.equipment.springs.map((s) => s.id));
  for (const [id, move] of Object.entries(plan.moves)) {
    yield* unknownSprings(springs, move.springs?.min, ["moves", id, "springs", "min"]);
    yield* unknownSprings(springs, move.springs?.max, ["moves", id, "springs", "max"]);
  }
}

function* danglingInItems(plan: Plan): Problems {
  const springs = new Set(plan.equipment.springs.map((s) => s.id));
  const items = new Set(plan.items.map((item) => item.id));
  for (const [i, item] of plan.items.entries()) yield* danglingInItem(plan, item, i, { springs, items });
}

function* danglingInItem(
  plan: Plan,
  item: PlanItem,
  i: number,
  known: { springs: ReadonlySet<string>; items: ReadonlySet<string> },
): Problems {
  if (item.kind !== "move") return;
  if (own(plan.moves, item.move) === undefined) {
    yield {
      path: ["items", i, "move"],
      problem: `should be the id of a move of this plan; there is no "${item.move}"`,
    };
  }
  yield* unknownSprings(known.springs, item.springs, ["items", i, "springs"]);
  for (const [j, id] of (item.after ?? []).entries()) {
    if (known.items.has(id)) continue;
    yield { path: ["items", i, "after", j], problem: `should be the id of an item of this plan; there is no "${id}"` };
  }
}

function* unknownSprings(known: ReadonlySet<string>, counts: Record<string, number> | undefined, at: Path): Problems {
  for (const id of Object.keys(counts ?? {})) {
    if (!known.has(id)) yield { path: [...at, id], problem: "should be the id of one of the equipment's springs" };
  }
}

function* liveFields(plan: Plan): Problems {
  for (const [i, item] of plan.items.entries()) {
    if (item.kind !== "move") continue;
    for (const [j, line] of (item.script ?? []).entries()) {
      const parsed = parseScriptText(line.text);
      if (parsed.ok) continue;
      const problem = `has an unknown live field {${parsed.unknown.slice(0, 40)}} at column ${parsed.at + 1}; a plain brace is written {{`;
      yield { path: ["items", i, "script", j, "text"], problem };
    }
  }
}

function* standards(plan: Plan): Problems {
  for (const [id, standard] of Object.entries(plan.standards ?? {})) {
    const rule = ruleById(id);
    if (rule) yield* badLimits(rule, standard.limits ?? {});
    else if (!FORMAT_RULE_IDS.has(id))
      yield { path: ["standards", id], problem: "should be the id of a rule; there is no rule of that name" };
  }
}
