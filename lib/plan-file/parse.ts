/**
 * The only way in for plan files: text or any value becomes a valid plan, or one line that says what is wrong and where.
 * The file command, import and every test go through here.
 */
import * as z from "zod/mini";
import { expectedWords, schemaAt } from "#lib/plan/expected.ts";
import { planJsonSchema } from "#lib/plan/json-schema.ts";
import { readJsonText } from "#lib/plan/json-text.ts";
import { findFlaw } from "#lib/plan/plain-data.ts";
import { formatPointer, type Path, type PlanProblem, valueAt } from "#lib/plan/pointer.ts";
import { itemSchema, type Move, moveSchema, type Plan, type PlanItem, planSchema } from "#lib/plan/schema.ts";
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
  if (!read.ok) return refuse(firstProblem(read.issues, value));
  const problem = crossCheck(read.plan);
  return problem ? refuse(problem) : { ok: true, plan: read.plan };
}

/** The plan with its long lists not yet read. */
const outline = z.extend(planSchema, {
  moves: z.record(planSchema.shape.moves.def.keyType, z.unknown()),
  items: z.array(z.unknown()).check(z.maxLength(2000)),
});

type Parts = { readonly ok: true; readonly plan: Plan } | { readonly ok: false; readonly issues: readonly Issue[] };

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

const below = (at: Path, issues: readonly Issue[]): Issue[] =>
  issues.map((issue) => ({ ...issue, path: [...at, ...issue.path] }));

function refuse({ path, problem }: PlanProblem): PlanParse {
  const pointer = formatPointer(path);
  return { ok: false, pointer, message: oneLine(`${pointer === "" ? "the plan file" : pointer} ${problem}`) };
}

/** Keys and ids in a message come from the file, so control characters are removed: they could break a terminal. */
function oneLine(text: string): string {
  const plain = text.replace(/[\p{Cc}\p{Zl}\p{Zp}\p{Surrogate}]/gu, "?");
  return plain.length > 600 ? `${plain.slice(0, 597)}...` : plain;
}

/** Maps whose keys are ids, so that a repeated key is a repeated id. */
const ID_MAPS = /^(moves|standards|items\/\d+\/springs|moves\/[^/]+\/springs\/(min|max))$/;

function repeatedKey({ path, problem }: PlanProblem): PlanProblem {
  if (problem !== "is given twice") return { path, problem };
  const isId = ID_MAPS.test(path.slice(0, -1).join("/"));
  return { path, problem: isId ? "is a repeated id: it is given twice" : "is a repeated key: it is given twice" };
}

type Issue = z.core.$ZodIssue;

/** The first problem of a file. An unknown key goes before a missing one beside it: most often it is a typing slip. */
function firstProblem(issues: readonly Issue[], value: unknown): PlanProblem {
  const [first] = issues;
  if (!first) return { path: [], problem: "should be a plan file" };
  const parent = plainPath(first.path).slice(0, -1).join("\n");
  const slip = issues.find((i) => i.code === "unrecognized_keys" && plainPath(i.path).join("\n") === parent);
  return toProblem(isMissing(first, value) && slip ? slip : first, [], value);
}

function toProblem(issue: Issue, above: Path, value: unknown): PlanProblem {
  const path = [...above, ...plainPath(issue.path)];
  switch (issue.code) {
    case "unrecognized_keys":
      return { path: [...path, issue.keys[0] ?? ""], problem: "is not a key of this format" };
    case "invalid_key":
      return { path, problem: "should be named by an id: 1 to 64 small letters, digits and hyphens" };
    case "custom":
      return { path, problem: `should go upwards: ${issue.message}` };
    case "invalid_union": {
      const branch = bestBranch(issue.errors);
      if (branch) return toProblem(branch, path, value);
      return withExpected(
        path,
        `one of ${"options" in issue ? String(issue.options).replaceAll(",", ", ") : ""}`,
        value,
      );
    }
    default: {
      const node = schemaAt(planJsonSchema(), path, value);
      return withExpected(path, node ? expectedWords(node) : "something else", value);
    }
  }
}

function withExpected(path: Path, expected: string, value: unknown): PlanProblem {
  const missing = path.length > 0 && valueAt(value, path) === undefined;
  return { path, problem: missing ? `is missing; it should be ${expected}` : `should be ${expected}` };
}

const isMissing = (issue: Issue, value: unknown): boolean => valueAt(value, plainPath(issue.path)) === undefined;

/** The alternative with the fewest unknown keys, then the fewest problems. */
function bestBranch(branches: readonly (readonly Issue[])[]): Issue | undefined {
  const weight = (issues: readonly Issue[]): number =>
    issues.reduce((sum, i) => sum + (i.code === "unrecognized_keys" ? 100 * i.keys.length : 1), 0);
  return [...branches].sort((a, b) => weight(a) - weight(b))[0]?.[0];
}

const plainPath = (path: readonly PropertyKey[]): Path => path.map((p) => (typeof p === "symbol" ? String(p) : p));
