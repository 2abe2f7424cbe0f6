/** The person whose page a yjs client id is, by document. Append-only. Prepared raw statements: part of each commit. */
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";

export interface DocClient {
  readonly clientId: number;
  readonly userId: string;
}

function prepareAll({ raw }: Db) {
  return {
    all: raw.prepare<[string], DocClient>(
      "select client_id as clientId, user_id as userId from doc_client where name = ?",
    ),
    add: raw.prepare(
      "insert into doc_client (name, client_id, user_id, at) values (?, ?, ?, ?) on conflict do nothing",
    ),
  };
}

const statements = oncePerDatabase(prepareAll);

export const readDocClients = (db: Db, name: string): DocClient[] => statements(db).all.all(name);

/** The first person is kept. Joins the caller's transaction. `at`: ms since the epoch, UTC. */
export function addDocClient(db: Db, name: string, client: DocClient, at: number): void {
  statements(db).add.run(name, client.clientId, client.userId, at);
}
