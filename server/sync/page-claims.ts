/** What a page says about itself when it connects, and the reasons to refuse it: another person, version or history. */
import type { CloseName } from "#lib/protocol/close.ts";
import { QUERY } from "#lib/protocol/messages.ts";
import type { KindHooks } from "./host.ts";

/** The query of the socket's address. */
export interface PageClaims {
  readonly docVersion: number | null;
  readonly editorVersion: number | null;
  /** The history its local copy belongs to; null when it has no copy. */
  readonly generation: string | null;
  /** The person whose changes the page holds; null when it does not say. */
  readonly userId: string | null;
  /** The yjs client id that it will write under; null when it does not say. */
  readonly clientId: number | null;
}

export function readClaims(query: URLSearchParams): PageClaims {
  return {
    docVersion: wholeNumber(query.get(QUERY.docVersion)),
    editorVersion: wholeNumber(query.get(QUERY.editorVersion)),
    generation: query.get(QUERY.generation),
    userId: query.get(QUERY.userId),
    clientId: wholeNumber(query.get(QUERY.clientId)),
  };
}

/** A page must have exactly the versions of this program: an older one would drop what it does not know. */
export function refuseVersions(page: PageClaims, hooks: KindHooks): CloseName | undefined {
  const sameDoc = page.docVersion === hooks.currentVersion;
  const sameEditor = hooks.editorVersion === undefined || page.editorVersion === hooks.editorVersion;
  return sameDoc && sameEditor ? undefined : "oldPage";
}

/** Merging a local copy of another history would duplicate the text. */
export const refuseGeneration = (page: PageClaims, generation: string): CloseName | undefined =>
  page.generation === null || page.generation === generation ? undefined : "generationChanged";

/** What one person typed on a shared device must not be stored under the name of the next. */
export const refusePerson = (page: PageClaims, userId: string): CloseName | undefined =>
  page.userId === null || page.userId === userId ? undefined : "otherPerson";

function wholeNumber(text: string | null): number | null {
  return text !== null && /^\d{1,10}$/.test(text) ? Number(text) : null;
}
