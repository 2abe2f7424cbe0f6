/**
 * Which person may write under a yjs client id, in one document. A page's id is recorded when it joins; an unknown id is
 * recorded in the same commit as the first content under it. No id is ever forgotten: somebody may return after a long
 * time offline, and content written under their id by others would take the place of their own.
 */
import * as Y from "yjs";
import type { Db } from "#db/connection.ts";
import { addDocClient, type DocClient, readDocClients } from "#db/repos/doc-client-repo.ts";
import { appendTransaction, isInTransaction } from "#db/transaction.ts";
import type { DecodedUpdate } from "#server/doc-log/updates.ts";

export class Owners {
  private readonly people: Map<number, string>;
  /** Not on disk yet. */
  private fresh: DocClient[] = [];
  private readonly db: Db;
  private readonly name: string;

  constructor(db: Db, name: string) {
    this.db = db;
    this.name = name;
    this.people = new Map(readDocClients(db, name).map(({ clientId, userId }) => [clientId, userId]));
  }

  of(clientId: number): string | undefined {
    return this.people.get(clientId);
  }

  /** Records the id of a joining page, on disk. False when it belongs to another person. Throws when the disk fails. */
  claim(clientId: number, userId: string, at: number): boolean {
    const known = this.people.get(clientId);
    if (known !== undefined) return known === userId;
    if (isInTransaction(this.db)) throw new Error("a page cannot join inside a database transaction");
    appendTransaction(this.db, () => addDocClient(this.db, this.name, { clientId, userId }, at));
    this.people.set(clientId, userId);
    return true;
  }

  /** Records the ids of content that is about to be applied; they are stored together with it. */
  note(clientIds: Iterable<number>, userId: string): void {
    for (const clientId of clientIds) {
      if (this.people.has(clientId)) continue;
      this.people.set(clientId, userId);
      this.fresh.push({ clientId, userId });
    }
  }

  /** Inside the transaction that stores the content. */
  store(at: number): void {
    for (const client of this.fresh) addDocClient(this.db, this.name, client, at);
  }

  /** That transaction has been committed. */
  stored(): void {
    this.fresh = [];
  }
}

/** The client ids under which an update has content that the document does not have yet. */
export function newSpeakers(doc: Y.Doc, { structs }: DecodedUpdate): Set<number> {
  const isNew = ({ id, length }: DecodedUpdate["structs"][number]) =>
    id.clock + length > Y.getState(doc.store, id.client);
  return new Set(structs.filter(isNew).map(({ id }) => id.client));
}
