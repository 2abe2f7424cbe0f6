/**
 * A value that a person set, remembered until it is known whether it stood, and the note of it that is kept with the
 * device's copy so that the next page can tell if this one closes first. Notes are checked as they are read.
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
  /** Client id of the page it was set on. */
  by: z.number(),
  /** For a text: what that page then knew of every page (a state vector). */
  since: z.map(z.number(), z.number()),
  /** For a key: the struct that holds it; null where the key was removed. */
  struct: z.nullable(z.object({ client: z.number(), clock: z.number() })),
});

export interface OwnValue {
  readonly at: Pick<ValueAt, "id" | "key">;
  readonly words: ValueWords;
  readonly by: number;
  readonly since: ReadonlyMap<number, number>;
  readonly struct: { readonly client: number; readonly clock: number } | null;
}

/** Keeps a small value by name; undefined removes it. */
export type KeepNote = (name: string, value: unknown) => void;

const OWN = "own ";
const NAMES = "names ";

/** One note for each page and value, so that several open pages of one person do not overwrite each other's. */
export const ownNote = ({ by, at }: Pick<OwnValue, "by" | "at">): string => `${OWN}${by} ${placeKey(at)}`;
export const namesNote = (by: number): string => NAMES + by;

export interface Remembered {
  readonly own: readonly OwnValue[];
  readonly names: Names;
  /** The notes these were read from, unreadable ones included. */
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
