/** What one check of the doctor found, as the line that is printed. */

export interface Diagnosis {
  /** Two words at most: what was looked at. */
  readonly what: string;
  /** `unsure`: nothing is known to be wrong, and why it could not be told is said. */
  readonly is: "right" | "wrong" | "unsure";
  /** One sentence of what was found. */
  readonly found: string;
  /** What to do about it; always there when something is wrong. */
  readonly todo?: string;
}

export const right = (what: string, found: string): Diagnosis => ({ what, is: "right", found });
export const unsure = (what: string, found: string): Diagnosis => ({ what, is: "unsure", found });
export const wrong = (what: string, found: string, todo: string): Diagnosis => ({ what, is: "wrong", found, todo });

const SIGNS = { right: "ok", wrong: "WRONG", unsure: "?" } as const;

export const diagnosisLine = ({ what, is, found, todo }: Diagnosis): string =>
  `${SIGNS[is].padEnd(6)}${what.padEnd(18)}${found}${todo ? ` ${todo}` : ""}`;
