/** What keeps coming late in the editions that were taught in a month, over all their classes, those of other months too. */
import { listClassLogRemarks } from "#db/repos/class-log-remark-repo.ts";
import { listClassLogs } from "#db/repos/class-log-repo.ts";
import { titlesById } from "#db/repos/progress-repo.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import { type LateChange, type LateFitting, lateChanges, lateFittings } from "#lib/look-back/late-changes.ts";
import { logStanding } from "#lib/look-back/remarks.ts";
import type { Springline } from "#server/context/springline.ts";
import type { EditionsTaught } from "./editions-taught.ts";
import type { MonthLog } from "./month-log.ts";

export interface LateEdition {
  readonly planId: string;
  readonly edition: number;
  readonly title: string;
  /** All classes of the edition that count. */
  readonly classes: number;
  readonly changes: readonly LateChange[];
  readonly fittings: readonly LateFitting[];
}

/** Those with a change that keeps coming late, by title. */
export function lateEditions(app: Springline, logs: readonly MonthLog[], editions: EditionsTaught): LateEdition[] {
  const titles = titlesById(app.db);
  const taught = new Map(logs.map(({ log: { edition } }) => [`${edition.planId}/${edition.number}`, edition]));
  return [...taught.values()]
    .flatMap((edition): LateEdition[] => {
      const card = editions.cardOf(edition);
      if (!card) return [];
      const { planId, number } = edition;
      const counted = countedLogs(app, edition);
      const changes = lateChanges(card.plan, counted);
      if (changes.length === 0) return [];
      const fittings = lateFittings(card.plan, counted);
      const title = titles.get(planId) ?? card.edition.title;
      return [{ planId, edition: number, title, classes: counted.length, changes, fittings }];
    })
    .sort((a, b) => a.title.localeCompare(b.title, "en") || a.edition - b.edition);
}

/** A log's key is its session, unless another device sent that one first. */
const countedLogs = ({ db }: Springline, { planId, number }: ClassLog["edition"]): ClassLog[] =>
  listClassLogs(db, planId, number)
    .filter(({ log }) => log.kind === "class" && !logStanding(listClassLogRemarks(db, log.sessionId)).struck)
    .map(({ log }) => log);
