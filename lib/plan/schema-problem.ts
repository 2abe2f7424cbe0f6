/** The first problem of a file against its schema, in words: the issues of zod become "should be ..." at a place. */
import type * as z from "zod/mini";
import { expectedWords, schemaAt } from "./expected.ts";
import type { JsonSchema } from "./json-schema.ts";
import { type Path, type PlanProblem, valueAt } from "./pointer.ts";

export type SchemaIssue = z.core.$ZodIssue;

/**
 * An unknown key goes before a missing one beside it: most often it is a typing slip. `schema`: the JSON Schema of the same
 * file. A check of our own (`z.refine`) brings its words, the end of a sentence.
 */
export function firstProblem(
  issues: readonly SchemaIssue[],
  value: unknown,
  schema: JsonSchema,
): PlanProblem | undefined {
  const [first] = issues;
  if (!first) return undefined;
  const parent = plainPath(first.path).slice(0, -1).join("\n");
  const slip = issues.find((i) => i.code === "unrecognized_keys" && plainPath(i.path).join("\n") === parent);
  return toProblem(isMissing(first, value) && slip ? slip : first, [], { value, schema });
}

interface Read {
  readonly value: unknown;
  readonly schema: JsonSchema;
}

function toProblem(issue: SchemaIssue, above: Path, read: Read): PlanProblem {
  const path = [...above, ...plainPath(issue.path)];
  switch (issue.code) {
    case "unrecognized_keys":
      return { path: [...path, issue.keys[0] ?? ""], problem: "is not a key of this format" };
    case "invalid_key":
      return { path, problem: keyProblem(issue.issues[0]) };
    case "custom":
      return { path, problem: issue.message };
    case "invalid_union": {
      const branch = bestBranch(issue.errors);
      if (branch) return toProblem(branch, path, read);
      return withExpected(
        path,
        `one of ${"options" in issue ? String(issue.options).replaceAll(",", ", ") : ""}`,
        read.value,
      );
    }
    default: {
      const node = schemaAt(read.schema, path, read.value);
      return withExpected(path, node ? expectedWords(node) : "something else", read.value);
    }
  }
}

function keyProblem(issue: SchemaIssue | undefined): string {
  if (issue?.code === "custom") return issue.message;
  if (issue?.code === "invalid_value") return `should be one of ${issue.values.map(String).join(", ")}`;
  return "should be named by an id: 1 to 64 small letters, digits and hyphens";
}

function withExpected(path: Path, expected: string, value: unknown): PlanProblem {
  const missing = path.length > 0 && valueAt(value, path) === undefined;
  return { path, problem: missing ? `is missing; it should be ${expected}` : `should be ${expected}` };
}

const isMissing = (issue: SchemaIssue, value: unknown): boolean => valueAt(value, plainPath(issue.path)) === undefined;

/** The alternative with the fewest unknown keys, then the fewest problems. */
function bestBranch(branches: readonly (readonly SchemaIssue[])[]): SchemaIssue | undefined {
  const weight = (issues: readonly SchemaIssue[]): number =>
    issues.reduce((sum, i) => sum + (i.code === "unrecognized_keys" ? 100 * i.keys.length : 1), 0);
  return [...branches].sort((a, b) => weight(a) - weight(b))[0]?.[0];
}

const plainPath = (path: readonly PropertyKey[]): Path => path.map((p) => (typeof p === "symbol" ? String(p) : p));
