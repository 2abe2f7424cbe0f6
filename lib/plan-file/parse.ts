/**
 * The only way in for plan files: text or any value becomes a valid plan, or one line that says what is wrong and where.
 * The file command, import and every test go through here.
 */
import * as z from "zod/mini";
import { planJsonSchema } from "#lib/plan/json-schema.ts";
import { readJsonText } from "#lib/plan/json-text.ts";
import { findFlaw } from "#lib/plan/plain-data.ts";
import { formatPointer, type Path, type PlanProblem, problemLine } from "#lib/plan/pointer.ts";
import { itemSchema, type Move, moveSchema, type Plan, type PlanItem, planSchema } from "#lib/plan/schema.ts";
import { firstProblem, type SchemaIssue } from "#lib/plan/schema-problem.ts";
import { crossCheck } from "./cross-check.ts";

export type PlanParse =
  | { readonly ok: true; readonly plan: Plan }
  /** `message` is one line that begins with the pointer; `pointer` (RFC 6901) is "" for the file as a whole. */
  | { readonly ok: false; readonly pointer: string; readonly message: string };

/**
 * A plan from JSON text (a string) or from a value already parsed. The plan is a copy. Never throws.
 * Cost: linear; a file of 2 MB takes some tens of milliseconds.
 */
export function parsePlan(input: unknown): PlanParse {
  try {
    return parse(input);
  } catch {
    // Only a value that throws when read (a proxy, a getter) gets here.
    return refuse({ path: [], problem: "should be plain JSON data" });
  }
}

function parse(input: unknown): PlanParse {
  let value = input;
  if (typeof input === "string") {
    const text = readJsonText(input);
    if (!text.ok) return refuse(repeatedKey(text));
    value = text.value;
  }
  const flaw = findFlaw(value);
  if (flaw) return refuse(flaw);
  const read = readParts(value);
  if (!read.ok)
    return refuse(firstProblem(read.issues, value, planJsonSchema()) ?? { path: [], problem: "should be a plan file" });
  const problem = crossCheck(read.plan);
  return problem ? refuse(problem) : { ok: true, plan: read.plan };
}

/** The plan with its long lists not yet read. */
const outline = z.extend(planSchema, {
  moves: z.record(planSchema.shape.moves.def.keyType, z.unknown()),
  items: z.array(z.unknown()).check(z.maxLength(2000)),
});

type Parts =
  | { readonly ok: true; readonly plan: Plan }
  | { readonly ok: false; readonly issues: readonly SchemaIssue[] };

/** Reads as the schema does, but stops at the first wrong move or item, so that a file wrong everywhere stays cheap. */
function readParts(value: unknown): Parts {
  const head = outline.safeParse(value);
  if (!head.success) return { ok: false, issues: head.error.issues };
  const moves: Record<string, Move> = {};
  for (const [id, raw] of Object.entries(head.data.moves)) {
    const move = moveSchema.safeParse(raw);
    if (!move.success) return { ok: false, issues: below(["moves", id], move.error.issues) };
    moves[id] = move.data;
  }
  const items: PlanItem[] = [];
  for (const [i, raw] of head.data.items.entries()) {
    const item = itemSchema.safeParse(raw);
    if (!item.success) return { ok: false, issues: below(["items", i], item.error.issues) };
    items.push(item.data);
  }
  return { ok: true, plan: { ...head.data, moves, items } };
}

const below = (at: Path, issues: readonly SchemaIssue[]): SchemaIssue[] =>
  issues.map((issue) => ({ ...issue, path: [...at, ...issue.path] }));

function refuse(problem: PlanProblem): PlanParse {
  return { ok: false, pointer: formatPointer(problem.path), message: problemLine(problem, "the plan file") };
}

/** Maps whose keys are ids, so that a repeated key is a repeated id. */
const ID_MAPS = /^(moves|standards|items\/\d+\/springs|moves\/[^/]+\/springs\/(min|max))$/;

function repeatedKey({ path, problem }: PlanProblem): PlanProblem {
  if (problem !== "is given twice") return { path, problem };
  const isId = ID_MAPS.test(path.slice(0, -1).join("/"));
  return { path, problem: isId ? "is a repeated id: it is given twice" : "is a repeated key: it is given twice" };
}
