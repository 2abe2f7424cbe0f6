/** The result of one check of the doctor, and the line that is printed for it. */

export interface Diagnosis {
  /** What was checked, in two words at most. */
  readonly what: string;
  /** `unsure`: the check could not tell; `found` says why. */
  readonly is: "right" | "wrong" | "unsure";
  /** What was found, in one sentence. */
  readonly found: string;
  /** What to do about it; always present when something is wrong. */
  readonly todo?: string;
}

export const right = (what: string, found: string): Diagnosis => ({ what, is: "right", found });
export const unsure = (what: string, found: string): Diagnosis => ({ what, is: "unsure", found });
export const wrong = (what: string, found: string, todo: string): Diagnosis => ({ what, is: "wrong", found, todo });

const SIGNS = { right: "ok", wrong: "WRONG", unsure: "?" } as const;

export const diagnosisLine = ({ what, is, found, todo }: Diagnosis): string =>
  `${SIGNS[is].padEnd(6)}${what.padEnd(18)}${found}${todo ? ` ${todo}` : ""}`;
