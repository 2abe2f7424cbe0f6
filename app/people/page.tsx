/** Who is in the studio: roles, sessions, invitations, reset links. For managers. */
import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { listInvitations } from "#server/people/invite.ts";
import { listPeople } from "#server/people/manage-people.ts";
import { listResetLinks } from "#server/people/open-resets.ts";
import { requirePerson } from "../_shell/person.ts";
import { Shell } from "../_shell/shell.tsx";
import { Invitations } from "./invitations.tsx";
import { InviteForm } from "./invite-form.tsx";
import { OpenResets } from "./open-resets.tsx";
import styles from "./people.module.css";
import { PersonRow } from "./person-row.tsx";

export const metadata: Metadata = { title: "People" };

export default async function PeoplePage() {
  const visit = await requirePerson("/people");
  const { actor } = visit.who;
  const people = listPeople(visit.app, actor);
  const invitations = listInvitations(visit.app, actor);
  const resets = listResetLinks(visit.app, actor);
  if (!people.ok || !invitations.ok || !resets.ok) notFound();
  return (
    <Shell visit={visit} section="people">
      <h1>People</h1>
      <div className={styles.columns}>
        <section>
          <h2>In the studio</h2>
          <ul className={styles.people}>
            {people.value.map(({ id, name, email, roles }) => (
              <PersonRow key={id} person={{ id, name, email, roles }} me={id === actor.id} />
            ))}
          </ul>
        </section>
        <section>
          <h2>Invite</h2>
          <InviteForm />
          <Invitations open={invitations.value} />
          <OpenResets open={resets.value} />
        </section>
      </div>
    </Shell>
  );
}
