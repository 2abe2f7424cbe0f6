/** How somebody wants to be told: the time of their digest, and by e-mail or not for each kind. */
import * as z from "zod";
import { type NoticeChoice, putNoticeChoice, readNoticeChoice } from "#db/repos/notice-choice-repo.ts";
import { isClockTime } from "#lib/calendar/local-day.ts";
import { isTimeZone } from "#lib/calendar/zone.ts";
import { isNoticeKind, type KindChoices, kindsToChoose, TOLD, toldAs } from "#lib/notices/kinds.ts";
import type { Person } from "#lib/policy/can.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";

const NO_ZONE = "This time zone is not known. Choose one from the list.";
export const noticeChoiceSchema = z.strictObject({
  digestAt: z
    .string()
    .refine(isClockTime, "Give the time of the digest as hours and minutes, such as 07:30.")
    .nullable(),
  timeZone: z.string().max(64, NO_ZONE).refine(isTimeZone, NO_ZONE),
  kinds: z.record(z.string().refine(isNoticeKind, "This kind of notice is not known."), z.enum(TOLD)),
});

export interface NoticeChoiceView extends NoticeChoice {
  /** False until they have chosen: nothing is sent before. */
  readonly chosen: boolean;
}

const USUAL_DIGEST = "07:30";

/** What they chose, or what is proposed to somebody who has not. */
export function noticeChoiceOf(app: Pick<Springline, "db">, person: Person): NoticeChoiceView {
  const row = readNoticeChoice(app.db, person.id);
  const own = row?.kinds ?? {};
  const kinds = Object.fromEntries(kindsToChoose(person.roles).map((kind) => [kind, toldAs(own, kind)]));
  return {
    chosen: row !== undefined,
    digestAt: row ? row.digestAt : USUAL_DIGEST,
    timeZone: row?.timeZone ?? "UTC",
    kinds,
  };
}

/** The next digest is the first after now: what is new already waits for it. */
export function chooseNotices(
  app: Pick<Springline, "db" | "now">,
  person: Person,
  { kinds, ...choice }: NoticeChoice,
): Result<NoticeChoiceView> {
  const before: KindChoices = readNoticeChoice(app.db, person.id)?.kinds ?? {};
  const row = { ...choice, userId: person.id, kinds: { ...before, ...kinds }, digestSentAt: app.now() };
  putNoticeChoice(app.db, row);
  return ok(noticeChoiceOf(app, person));
}
