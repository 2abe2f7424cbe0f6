/** The kinds of limit a rule may have, each with its bounds, its usual value and a description for whoever sets it. */
import * as z from "zod/mini";
import { numberFrom, wholeFrom } from "#lib/plan/number-fields.ts";

interface Says {
  /** Its description, without a full stop. */
  readonly says: string;
}
interface Bounds extends Says {
  readonly from: number;
  readonly to: number;
}

/** All limits of a rule; none for a rule that has nothing to set. */
export const limits = <S extends Record<string, z.core.SomeType>>(fields: S) => z.strictObject(fields);

export const numberLimit = ({ from, to, usual, says }: Bounds & { readonly usual: number }) =>
  z._default(numberFrom(from, to), usual).check(z.describe(says));

export const wholeLimit = ({ from, to, usual, says }: Bounds & { readonly usual: number }) =>
  z._default(wholeFrom(from, to), usual).check(z.describe(says));

/** A number that may be left out; its description says what that means. */
export const openLimit = ({ from, to, says }: Bounds) => z.optional(numberFrom(from, to)).check(z.describe(says));

export const yesNoLimit = ({ usual, says }: Says & { readonly usual: boolean }) =>
  z._default(z.boolean(), usual).check(z.describe(says));

/** Any number of the given choices. */
export const choicesLimit = <const T extends readonly string[]>(
  choice: Says & { readonly of: T; readonly usual: T[number][] },
) =>
  z
    ._default(z.array(z.enum(choice.of)).check(z.maxLength(choice.of.length)), choice.usual)
    .check(z.describe(choice.says));

/** A studio's own signs for each of the given choices, none of which need have any. */
export const wordsLimit = <const T extends readonly string[]>({ of, says }: Says & { readonly of: T }) => {
  const words = z.array(z.string().check(z.minLength(1), z.maxLength(60))).check(z.maxLength(60));
  return z._default(z.partialRecord(z.enum(of), words), {}).check(z.describe(says));
};
