/** Notices: what each person is told, the newest last. */
import type { Db } from "#db/connection.ts";
import { noticeTable } from "#db/review-schema.ts";
import type { NoticeData, NoticeKind } from "#lib/notices/kinds.ts";

export interface NewNotice {
  readonly userId: string;
  /** ms since the epoch. */
  readonly at: number;
  readonly kind: NoticeKind;
  readonly planId: string | null;
  readonly data: NoticeData;
}

export function insertNotice(db: Db, { data, ...notice }: NewNotice): void {
  db.orm
    .insert(noticeTable)
    .values({ ...notice, dataJson: JSON.stringify(data) })
    .run();
}
