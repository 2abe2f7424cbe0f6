/** Whether anything was written since: asked often, so it reads no page. */
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";

const statements = oncePerDatabase(({ raw }) => ({
  own: raw.prepare<[], number>("select total_changes()").pluck(),
  others: raw.prepare<[], number>("pragma data_version").pluck(),
}));

/** The same text as before when no row was changed meanwhile, by this connection or another. */
export function changeMark(db: Db): string {
  const { own, others } = statements(db);
  return `${own.get()} ${others.get()}`;
}
