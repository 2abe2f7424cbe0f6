/**
 * Whose words a yjs client id may bring, in one document. A page's id is noted for its person when it joins, and that of
 * words which come under an unknown one in the same commit as the words. Nothing is ever forgotten: somebody may come
 * back from a long time offline, and words under their id would take the place of what they wrote meanwhile.
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

  /** Notes an id for a page that joins, on disk. False when it is another person's. Throws when the disk fails. */
  claim(clientId: number, userId: string, at: number): boolean {
    const known = this.people.get(clientId);
    if (known !== undefined) return known === userId;
    if (isInTransaction(this.db)) throw new Error("a page cannot join inside a database transaction");
    appendTransaction(this.db, () => addDocClient(this.db, this.name, { clientId, userId }, at));
    this.people.set(clientId, userId);
    return true;
  }

  /** Notes the ids of words that are about to be taken in; they go to disk with them. */
  note(clientIds: Iterable<number>, userId: string): void {
    for (const clientId of clientIds) {
      if (this.people.has(clientId)) continue;
      this.people.set(clientId, userId);
      this.fresh.push({ clientId, userId });
    }
  }

  /** Inside the transaction that stores the words. */
  store(at: number): void {
    for (const client of this.fresh) addDocClient(this.db, this.name, client, at);
  }

  /** That transaction has been committed. */
  stored(): void {
    this.fresh = [];
  }
}

/** The client ids under which an update brings words that the document does not have yet. */
export function newSpeakers(doc: Y.Doc, { structs }: DecodedUpdate): Set<number> {
  const isNew = ({ id, length }: DecodedUpdate["structs"][number]) =>
    id.clock + length > Y.getState(doc.store, id.client);
  return new Set(structs.filter(isNew).map(({ id }) => id.client));
}
