/** JSON Pointers (RFC 6901), which name a place in a JSON value. */

export type Path = readonly (string | number)[];

/** What is wrong at one place of a file: the end of a sentence, such as "should be a number". */
export interface PlanProblem {
  readonly path: Path;
  readonly problem: string;
}

/** "" is the whole value; `~` and `/` in a key are written `~0` and `~1`. */
export function formatPointer(path: Path): string {
  return path.map((step) => `/${String(step).replaceAll("~", "~0").replaceAll("/", "~1")}`).join("");
}

/**
 * A problem as one line that begins with its pointer, or with `whole` ("the plan file"). Keys and ids in it come from the
 * file, so control characters are removed: they could break a terminal.
 */
export function problemLine({ path, problem }: PlanProblem, whole: string): string {
  const plain = `${formatPointer(path) || whole} ${problem}`.replace(/[\p{Cc}\p{Zl}\p{Zp}\p{Surrogate}]/gu, "?");
  return plain.length > 600 ? `${plain.slice(0, 597)}...` : plain;
}

/** The value at a path, or undefined when there is none. Own keys only. */
export function valueAt(root: unknown, path: Path): unknown {
  let value = root;
  for (const step of path) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, step)) return undefined;
    value = (value as Record<string | number, unknown>)[step];
  }
  return value;
}
