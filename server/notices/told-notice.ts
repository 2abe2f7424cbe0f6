/**
 * A notice as its reader may have it now. Rights are asked each time it is read or mailed: of a plan that somebody may not
 * read any more, nothing is said, not even its title.
 */

import { readMail } from "#db/repos/mail-repo.ts";
import type { NoticeRow } from "#db/repos/notice-repo.ts";
import { FORMER_MEMBER, namesById } from "#db/repos/people-repo.ts";
import { type PlanRow, readPlanRow } from "#db/repos/plan-repo.ts";
import { MISSING_ROOM, readRoom } from "#db/repos/room-repo.ts";
import type { BundleLine } from "#lib/notices/class-bundle.ts";
import type { NoticeKind } from "#lib/notices/kinds.ts";
import { type NoticeNames, noticeLines, noticePath, noticeSentence, oneLine } from "#lib/notices/notice-words.ts";
import { can, canPlan, canReadEditions, type Person } from "#lib/policy/can.ts";
import type { Springline } from "#server/context/springline.ts";
import { personFormats } from "#server/formats/formats.ts";

export interface ToldNotice {
  readonly id: number;
  readonly kind: NoticeKind;
  /** ms since the epoch. */
  readonly at: number;
  readonly seen: boolean;
  readonly sentence: string;
  /** Of a notice that tells of many classes, each of them. */
  readonly lines: readonly BundleLine[];
  /** The path of the place that it is about, with its `#` part. */
  readonly path: string;
}

/** Looks up plans, names and formats once for a whole list of notices. Long because: what it looks up, side by side. */
export function noticeReader(app: Pick<Springline, "db">, reader: Person) {
  const plans = new Map<string, PlanRow | undefined>();
  const nameOf = nameLookup(app.db);
  const formatsOfReader = onceAsked(() => personFormats(app, reader.id));
  const planOf = (id: string | null): PlanRow | undefined => {
    if (id === null) return undefined;
    if (!plans.has(id)) plans.set(id, readPlanRow(app.db, id));
    return plans.get(id);
  };
  const mayRead = ({ kind, planId }: { readonly kind: NoticeKind; readonly planId: string | null }): boolean =>
    mayReadNotice(reader, kind, planOf(planId));
  const namesOf = ({ kind, planId, data }: NoticeRow): NoticeNames => {
    const plan = planOf(planId);
    const mail = kind === "mail-failed" && data.mailId ? readMail(app.db, data.mailId) : undefined;
    const formats = formatsOfReader();
    return {
      formats,
      by: data.byId === null ? null : nameOf(data.byId),
      title: plan && canPlan(reader, "plan.read", plan) ? plan.title : null,
      classes: {
        readerId: reader.id,
        formats,
        person: (id) => oneLine(nameOf(id)),
        room: (id) => oneLine(roomName(app.db, id)),
      },
      mail: mail && { to: nameOf(mail.userId), why: mail.problem ?? "no reason was given" },
    };
  };
  return {
    mayRead,
    /** Null for a notice that is not theirs to read any more. */
    read(row: NoticeRow): ToldNotice | null {
      if (!mayRead(row)) return null;
      const { id, kind, at, seenAt, planId, data } = row;
      const names = namesOf(row);
      const sentence = noticeSentence(kind, data, names);
      const lines = noticeLines(data, names);
      return { id, kind, at, seen: seenAt !== null, sentence, lines, path: noticePath(kind, planId, data, reader.id) };
    },
  };
}

/** Most pages only count notices, and need no formats. */
function onceAsked<T>(read: () => T): () => T {
  let kept: T | undefined;
  return () => {
    kept ??= read();
    return kept;
  };
}

/** Names are read when the first one is asked for. */
function nameLookup(db: Springline["db"]): (id: string) => string {
  let names: ReadonlyMap<string, string> | undefined;
  return (id) => {
    names ??= namesById(db);
    return names.get(id) ?? FORMER_MEMBER;
  };
}

function mayReadNotice(reader: Person, kind: NoticeKind, plan: PlanRow | undefined): boolean {
  if (kind === "mail-failed") return can(reader, "mail.manage");
  if (kind === "backup-failed") return can(reader, "backups.manage");
  if (kind === "class-changed" || kind === "class-ahead" || kind === "month-signed")
    return can(reader, "programme.read");
  if (kind === "marks") return true;
  if (!plan) return false;
  // The editions of a plan outlive it.
  if (kind === "signed" || kind === "withdrawn") {
    return canPlan(reader, "plan.read", plan) && canReadEditions(reader, plan);
  }
  return plan.deletedAt === null && canPlan(reader, "plan.read", plan);
}

const roomName = (db: Springline["db"], id: string): string => readRoom(db, id)?.name ?? MISSING_ROOM;
