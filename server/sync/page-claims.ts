/** Whether a page may speak to a document at all: whose words it holds, the versions and the history it comes with. */
import type { CloseName } from "#lib/protocol/close.ts";
import { QUERY } from "#lib/protocol/messages.ts";
import type { KindHooks } from "./host.ts";

/** What a page says of itself in its address. */
export interface PageClaims {
  readonly docVersion: number | null;
  readonly editorVersion: number | null;
  /** The history its local copy belongs to; null when it has none. */
  readonly generation: string | null;
  /** Whose words the page holds; null when it does not say. */
  readonly userId: string | null;
  /** The yjs client id under which it will write; null when it does not say. */
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

/** A page must speak exactly what this program writes: an older one would drop what it does not know. */
export function refuseVersions(page: PageClaims, hooks: KindHooks): CloseName | undefined {
  const sameDoc = page.docVersion === hooks.currentVersion;
  const sameEditor = hooks.editorVersion === undefined || page.editorVersion === hooks.editorVersion;
  return sameDoc && sameEditor ? undefined : "oldPage";
}

/** A local copy of another history would double the text if it were merged. */
export const refuseGeneration = (page: PageClaims, generation: string): CloseName | undefined =>
  page.generation === null || page.generation === generation ? undefined : "generationChanged";

/** Words typed by one person on a shared device must not go in under the name of the next. */
export const refusePerson = (page: PageClaims, userId: string): CloseName | undefined =>
  page.userId === null || page.userId === userId ? undefined : "otherPerson";

function wholeNumber(text: string | null): number | null {
  return text !== null && /^\d{1,10}$/.test(text) ? Number(text) : null;
}
