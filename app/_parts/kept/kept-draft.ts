/**
 * What was typed and not saved, kept in this tab only, so that a lost network, an ended session, going back or reloading
 * loses no word. Cleared when it is saved or discarded, or when the person signs out.
 */
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import type { MoveDraft } from "#lib/library/draft.ts";
import type { Move } from "#lib/plan/schema.ts";

const PREFIX = "springline/move-draft/";

export interface KeptDraft {
  readonly draft: MoveDraft;
  /** The places whose faults were shown: they are shown again. */
  readonly shown: readonly string[];
  /** The saved move it started from; null for a new one. */
  readonly base: { readonly move: Move; readonly updatedAt: number } | null;
}

/** Whose draft of which move; `id` null for a new one. */
export const draftKey = (userId: string, id: string | null): string => `${PREFIX}${userId}/${id ?? ""}`;

export function keepDraft(key: string, kept: KeptDraft): void {
  try {
    sessionStorage.setItem(key, JSON.stringify(kept));
  } catch {
    // A full or forbidden store: leaving the page still warns.
  }
}

export function readKept(key: string): KeptDraft | null {
  try {
    const text = sessionStorage.getItem(key);
    return text === null ? null : upToDate(JSON.parse(text) as Parameters<typeof upToDate>[0]); // written by keepDraft only, in this tab
  } catch {
    return null;
  }
}

/** A page of an earlier version kept the travel in centimetres, no units, no correction of the figure, and no shown faults. */
function upToDate({ draft, base, shown = [] }: Omit<KeptDraft, "shown"> & Partial<KeptDraft>): KeptDraft {
  const {
    travelCm,
    travel = travelCm ?? ["", ""],
    units = STANDARD_FORMATS,
    figure = { start: {}, end: {} },
    ...rest
  } = draft as MoveDraft & {
    readonly travelCm?: MoveDraft["travel"];
  };
  return { draft: { ...rest, travel, units, figure }, base, shown };
}

export function dropDraft(key: string): void {
  try {
    sessionStorage.removeItem(key);
  } catch {
    // nothing was kept there either
  }
}

/** On signing out: nothing that was typed is left for the next person at this device. */
export function dropAllDrafts(): void {
  try {
    for (const key of Object.keys(sessionStorage)) if (key.startsWith(PREFIX)) sessionStorage.removeItem(key);
  } catch {
    // nothing was kept
  }
}
