/** Tells people of what happened: a notice for each of them, in the transaction of what it is about. */
import { insertNotice } from "#db/repos/notice-repo.ts";
import type { NoticeData, NoticeKind } from "#lib/notices/kinds.ts";
import type { Springline } from "#server/context/springline.ts";

export interface Happened {
  readonly kind: NoticeKind;
  /** Ids of people; who did it is left out, and nobody is told twice. */
  readonly to: Iterable<string>;
  readonly planId: string | null;
  readonly data: NoticeData;
}

export function tell(app: Pick<Springline, "db" | "now">, { kind, to, planId, data }: Happened): void {
  const people = new Set(to);
  if (data.byId !== null) people.delete(data.byId);
  for (const userId of people) insertNotice(app.db, { userId, at: app.now(), kind, planId, data });
}
