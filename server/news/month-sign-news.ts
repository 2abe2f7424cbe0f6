/** What pages of a month are told about its sign-off: the newest edition, and which findings are accepted. */
import { listMonthAcceptances } from "#db/repos/month-acceptance-repo.ts";
import { type MonthEditionRow, newestMonthEdition } from "#db/repos/month-edition-repo.ts";
import { FORMER_MEMBER, namesById } from "#db/repos/people-repo.ts";
import type { News, SignedMonth } from "#lib/protocol/messages.ts";
import { monthDoc } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";

type App = Pick<Springline, "db">;

export const signedMonthView = (
  { number, hash, signedBy, signedAt, note }: Omit<MonthEditionRow, "fileJson" | "findingsJson" | "acceptedJson">,
  names: ReadonlyMap<string, string>,
): SignedMonth => ({ number, hash, byName: names.get(signedBy) ?? FORMER_MEMBER, at: signedAt, note });

function signedNews({ db }: App, month: string): News {
  const newest = newestMonthEdition(db, month);
  return { t: "month-signed", signed: newest ? signedMonthView(newest, namesById(db)) : null };
}
const monthAcceptedNews = ({ db }: App, month: string): News => ({
  t: "accepted",
  accepted: listMonthAcceptances(db, month),
});

/** For a page that joins. */
export const monthSignNews = (app: App, month: string): News[] => [
  signedNews(app, month),
  monthAcceptedNews(app, month),
];

/** Call after the edition is stored. */
export const announceMonthSigned = (app: Pick<Springline, "db" | "documents">, month: string): void =>
  app.documents.announce(monthDoc(month), signedNews(app, month));

/** Call after the change is stored. */
export const announceMonthAccepted = (app: Pick<Springline, "db" | "documents">, month: string): void =>
  app.documents.announce(monthDoc(month), monthAcceptedNews(app, month));
