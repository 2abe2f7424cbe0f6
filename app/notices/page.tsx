/** What somebody is told: the list by day, and how they want to be told. */
import type { Metadata } from "next";
import Link from "next/link";
import { can } from "#lib/policy/can.ts";
import { isMailSetUp } from "#server/mail/mail-settings.ts";
import { listNotices, type NoticePage } from "#server/notices/list-notices.ts";
import { noticeChoiceOf } from "#server/notices/notice-choices.ts";
import { listNames } from "#server/people/manage-people.ts";
import { NothingYet } from "../_parts/nothing-yet.tsx";
import { requirePerson, type Visit } from "../_shell/person.ts";
import { Shell } from "../_shell/shell.tsx";
import { ChoicesForm } from "./choices-form.tsx";
import { NoticeList } from "./notice-list.tsx";
import styles from "./notices.module.css";
import { CHOICES, NO_MAIL, NO_NOTICES, noMailWords } from "./notices-words.ts";
import { SeeAll } from "./see-all.tsx";

export const metadata: Metadata = { title: "Notices" };

interface PageProps {
  readonly searchParams: Promise<{ readonly before?: string | string[] }>;
}

export default async function NoticesPage({ searchParams }: PageProps) {
  const visit = await requirePerson("/notices");
  const before = idOf((await searchParams).before);
  const listed = listNotices(visit.app, visit.who.actor, before);
  const page: NoticePage = listed.ok ? listed.value : { notices: [], older: null };
  const newest = page.notices[0]?.id ?? 0;
  return (
    <Shell visit={visit} section="notices">
      <h1>Notices</h1>
      {before === undefined && page.notices.length > 0 ? <SeeAll unseen={visit.unseen} upTo={newest} /> : null}
      {page.notices.length === 0 ? (
        <NothingYet>
          <p>
            <b>{NO_NOTICES.title}</b> {NO_NOTICES.what}
          </p>
        </NothingYet>
      ) : (
        <NoticeList notices={page.notices} />
      )}
      <p className={styles.pages}>
        {before === undefined ? null : <Link href="/notices">The newest notices</Link>}
        {page.older === null ? null : <Link href={`/notices?before=${page.older}`}>Older notices</Link>}
      </p>
      <Choices visit={visit} />
    </Shell>
  );
}

function Choices({ visit: { app, who } }: { readonly visit: Visit }) {
  const choice = noticeChoiceOf(app, who.actor);
  return (
    <section className={styles.choices} id="choices">
      <h2>{CHOICES.title}</h2>
      {!isMailSetUp(app) ? (
        <NoMail app={app} actor={who.actor} />
      ) : Object.keys(choice.kinds).length === 0 ? (
        <p>{CHOICES.noKinds}</p>
      ) : (
        <>
          <p className="quiet">{CHOICES.intro}</p>
          <ChoicesForm choice={choice} />
        </>
      )}
    </section>
  );
}

function NoMail({ app, actor }: Pick<Visit, "app"> & { readonly actor: Visit["who"]["actor"] }) {
  if (can(actor, "mail.manage")) {
    return (
      <p>
        {NO_MAIL} <Link href="/studio#mail">Set up e-mail</Link>
      </p>
    );
  }
  const people = listNames(app, actor);
  const managers = people.ok ? people.value.filter(({ roles }) => roles.includes("manager")) : [];
  return <p>{noMailWords(managers)}</p>;
}

/** Undefined for anything that is no id. */
function idOf(word: string | string[] | undefined): number | undefined {
  return typeof word === "string" && /^\d{1,15}$/.test(word) ? Number(word) : undefined;
}
