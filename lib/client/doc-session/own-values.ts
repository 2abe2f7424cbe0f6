/**
 * A value that a person set, as it is remembered until it is known whether it stood; and the note of it that is kept with
 * the device's copy, so that the next page can tell when this one is closed before. Notes are checked as they are read.
 */
import * as z from "zod/mini";
import { type Names, namesSchema } from "../names-seen.ts";
import type { ValueAt, ValueWords } from "./description.ts";
import { placeKey } from "./values.ts";

const ownSchema = z.object({
  at: z.object({ id: z.string(), key: z.string() }),
  words: z.object({
    name: z.string(),
    says: z.string(),
    did: z.optional(z.object({ past: z.string(), perfect: z.string() })),
  }),
  /** Client id of the page that it was set on. */
  by: z.number(),
  /** Of a text: what that page knew of every page then. */
  since: z.map(z.number(), z.number()),
  /** Of a key: the struct that holds it; null where it was taken away. */
  struct: z.nullable(z.object({ client: z.number(), clock: z.number() })),
});

export interface OwnValue {
  readonly at: Pick<ValueAt, "id" | "key">;
  readonly words: ValueWords;
  readonly by: number;
  readonly since: ReadonlyMap<number, number>;
  readonly struct: { readonly client: number; readonly clock: number } | null;
}

/** Small values kept by name; undefined lets one go. */
export type KeepNote = (name: string, value: unknown) => void;

const OWN = "own ";
const NAMES = "names ";

/** One a page and value: pages of one person that are open at once do not write over each other's. */
export const ownNote = ({ by, at }: Pick<OwnValue, "by" | "at">): string => `${OWN}${by} ${placeKey(at)}`;
export const namesNote = (by: number): string => NAMES + by;

export interface Remembered {
  readonly own: readonly OwnValue[];
  readonly names: Names;
  /** The notes that hold these, or nothing that can be read. */
  readonly notes: readonly string[];
}

/** What earlier pages of this person left on the device. */
export function readNotes(notes: ReadonlyMap<string, unknown>): Remembered {
  const own: OwnValue[] = [];
  const names: Names = [];
  for (const [name, value] of notes) {
    const asOwn = name.startsWith(OWN) ? ownSchema.safeParse(value).data : undefined;
    if (asOwn) own.push({ ...asOwn, words: wordsOf(asOwn.words) });
    if (name.startsWith(NAMES)) names.push(...(namesSchema.safeParse(value).data ?? []));
  }
  return { own, names, notes: [...notes.keys()] };
}

const wordsOf = ({ name, says, did }: z.infer<typeof ownSchema>["words"]): ValueWords =>
  did ? { name, says, did } : { name, says };
