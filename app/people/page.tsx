/** Who is in the studio: for managers with roles, sessions, invitations and reset links, for leads as a way to marks. */
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { can } from "#lib/policy/can.ts";
import { isMailSetUp } from "#server/mail/mail-settings.ts";
import { listFormer } from "#server/people/delete-person.ts";
import { listInvitations } from "#server/people/invite.ts";
import { listNames, listPeople } from "#server/people/manage-people.ts";
import { listResetLinks } from "#server/people/open-resets.ts";
import { ROLE_WORDS } from "../_parts/role-words.ts";
import { TeachToo } from "../_parts/teach-too.tsx";
import { requirePerson, type Visit } from "../_shell/person.ts";
import { Shell } from "../_shell/shell.tsx";
import { FormerPeople } from "./former-people.tsx";
import { Invitations } from "./invitations.tsx";
import { InviteForm } from "./invite-form.tsx";
import { OpenResets } from "./open-resets.tsx";
import styles from "./people.module.css";
import { PersonRow } from "./person-row.tsx";

export const metadata: Metadata = { title: "People" };

export default async function PeoplePage() {
  const visit = await requirePerson("/people");
  const { actor } = visit.who;
  if (!can(actor, "people.manage") && can(actor, "rubric.write")) return <ForLeads visit={visit} />;
  const people = listPeople(visit.app, actor);
  const invitations = listInvitations(visit.app, actor);
  const resets = listResetLinks(visit.app, actor);
  const former = listFormer(visit.app, actor);
  if (!people.ok || !invitations.ok || !resets.ok || !former.ok) notFound();
  const byMail = isMailSetUp(visit.app);
  return (
    <Shell visit={visit} section="people">
      <h1>People</h1>
      <div className={styles.columns}>
        <section>
          <h2>In the studio</h2>
          {can(actor, "plan.create") ? null : (
            <div className={styles.teach}>
              <p>You manage the studio and do not write plans. If you teach, become a lead as well.</p>
              <TeachToo />
            </div>
          )}
          <ul className={styles.people}>
            {people.value.map(({ id, name, email, roles }) => (
              <PersonRow key={id} person={{ id, name, email, roles }} me={id === actor.id} byMail={byMail} />
            ))}
          </ul>
          <FormerPeople people={former.value} />
        </section>
        <section>
          <h2>Invite</h2>
          <InviteForm byMail={byMail} />
          <Invitations open={invitations.value} />
          <OpenResets open={resets.value} />
        </section>
      </div>
    </Shell>
  );
}

/** Names and roles; who has marks, classes or plans to talk about is one touch away. */
function ForLeads({ visit }: { readonly visit: Visit }) {
  const people = listNames(visit.app, visit.who.actor);
  if (!people.ok) notFound();
  return (
    <Shell visit={visit} section="people">
      <h1>People</h1>
      <p className="quiet">Marks, findings that return and classes taught, person by person. Nobody is ranked.</p>
      <ul className={styles.people}>
        {people.value.map(({ id, name, roles }) => (
          <li key={id} className={styles.name}>
            <Link className="link-line" href={`/people/${id}`}>
              {name}
            </Link>
            <span className="quiet">{roles.map((role) => ROLE_WORDS[role].name).join(", ")}</span>
          </li>
        ))}
      </ul>
    </Shell>
  );
}
