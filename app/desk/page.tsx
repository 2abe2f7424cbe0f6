/** The desk: what waits for this person, the plans they may read, and what their roles let them do from here. */
import type { Metadata } from "next";
import type { ReactNode } from "react";
import { can } from "#lib/policy/can.ts";
import { DEVICES_PLACE } from "#lib/protocol/places.ts";
import { readFirstSteps, readOwnFirstSteps } from "#server/desk/first-steps.ts";
import { readWaiting } from "#server/desk/waiting.ts";
import { listSignedPlans, signedStrip } from "#server/editions/editions.ts";
import { wrongNow } from "#server/health/health-report.ts";
import { listArchivedPlans, listDeletedPlans, listPlans, type PlanListEntry } from "#server/plans/list-plans.ts";
import { listRooms } from "#server/rooms/manage-rooms.ts";
import { FirstStepsList } from "../_parts/first-steps.tsx";
import { FreshPage } from "../_parts/fresh-page.tsx";
import { TeachToo } from "../_parts/teach-too.tsx";
import { requirePerson, type Visit } from "../_shell/person.ts";
import { Shell } from "../_shell/shell.tsx";
import { ArchivedPlans } from "./archived-plans.tsx";
import { DeletedPlans } from "./deleted-plans.tsx";
import styles from "./desk.module.css";
import { NeedsCare } from "./needs-care.tsx";
import { NewPlanActs } from "./new-plan.tsx";
import { PlanList } from "./plan-list.tsx";
import { PlanPartsAhead } from "./plan-parts-ahead.tsx";
import { SignedPlans } from "./signed-plans.tsx";
import { WaitingList } from "./waiting-list.tsx";

export const metadata: Metadata = { title: "Desk" };

/** So that leads who share the queue see who has taken what. */
const FRESH_MS = 30_000;

/** Long because: one page, from top to bottom. */
export default async function DeskPage() {
  const visit = await requirePerson("/desk");
  const { app, who } = visit;
  const { actor } = who;
  const known = listRooms(app, actor);
  const rooms = known.ok ? known.value.map(({ id, name }) => ({ id, name })) : [];
  const listed = await listPlans(app, actor);
  const archived = listArchivedPlans(app, actor);
  const deleted = listDeletedPlans(app, actor);
  const plans = listed.ok ? listed.value.plans : [];
  const groups = grouped(plans, actor.id, actor.roles.includes("lead"));
  const waits = readWaiting(app, actor);
  const writes = can(actor, "plan.create");
  const roomNames = Object.fromEntries(rooms.map((room) => [room.id, room.name]));
  return (
    <Shell visit={visit} section="desk">
      <div className={`spread ${styles.head}`}>
        <h1>Desk</h1>
        {writes ? (
          <NewPlanActs rooms={rooms} mayTeam={actor.roles.some((role) => role === "coach" || role === "lead")} />
        ) : null}
      </div>
      <NeedsCare what={await wrongNow(app, actor)} />
      {can(actor, "people.manage") && !writes ? <WhyNoPlan /> : null}
      <FirstStepsHere app={app} actor={actor} />
      {waits.ok && writes ? (
        <WaitingList {...waits.value} plans={new Map(plans.map((plan) => [plan.id, plan]))} me={actor.id} />
      ) : null}
      <PlanPartsAhead env={app.env} />
      <FreshPage everyMs={FRESH_MS} />
      {groups.map(({ title, empty, plans: own }) =>
        own.length > 0 || (empty && writes) ? (
          <PlanList key={title} title={title} empty={empty} plans={own} rooms={roomNames} me={actor.id} />
        ) : null,
      )}
      {writes ? null : <Signed app={app} actor={actor} rooms={roomNames} />}
      {archived.ok && archived.value.plans.length > 0 ? <ArchivedPlans plans={archived.value.plans} /> : null}
      {deleted.ok && deleted.value.plans.length > 0 ? <DeletedPlans plans={deleted.value.plans} /> : null}
      {can(actor, "people.manage") && !writes ? <ManagerWays /> : null}
    </Shell>
  );
}

interface Group {
  readonly title: string;
  /** What to say when there is nothing in it; left out where an empty group is not shown. */
  readonly empty?: ReactNode;
  readonly plans: readonly PlanListEntry[];
}

/** Every plan in one group only: mine, the team's, what others share, all others; what waits for a lead is above them. */
function grouped(plans: readonly PlanListEntry[], me: string, lead: boolean): Group[] {
  const waiting = lead ? plans.filter((plan) => plan.handedIn && plan.handedIn.byId !== me) : [];
  const rest = plans.filter((plan) => !waiting.includes(plan));
  const kind = (plan: PlanListEntry) =>
    plan.ownerId === me ? "mine" : plan.sharedWith.includes(me) ? "shared" : plan.team ? "team" : "other";
  const of = (wanted: ReturnType<typeof kind>) => rest.filter((plan) => kind(plan) === wanted);
  return [
    { title: "Mine", empty: <NoPlans />, plans: of("mine") },
    { title: "Team plans", plans: of("team") },
    { title: "Shared with me", plans: of("shared") },
    { title: "Everyone else’s", plans: of("other") },
  ];
}

interface SignedProps extends Pick<Visit, "app"> {
  readonly actor: Visit["who"]["actor"];
  readonly rooms: Readonly<Record<string, string>>;
}

function Signed({ app, actor, rooms }: SignedProps) {
  const signed = listSignedPlans(app, actor);
  if (!signed.ok) return null;
  const plans = signed.value.plans.map((plan) => ({ ...plan, strip: signedStrip(app, plan) }));
  return <SignedPlans plans={plans} rooms={rooms} />;
}

function NoPlans() {
  return (
    <>
      <p>
        <b>You have no plans yet.</b> New plan asks for a title, a length and a room; then you add moves from the
        library.
      </p>
      <p>
        Is the class in a message, a table or a spreadsheet? Make the plan, then use Paste a list in it. A saved plan
        comes in with Open a plan file.
      </p>
    </>
  );
}

/** A manager's until all are done or put away; a coach's until they have written a class. */
function FirstStepsHere({ app, actor }: Omit<SignedProps, "rooms">) {
  const studio = readFirstSteps(app, actor);
  const own = studio.ok ? null : readOwnFirstSteps(app, actor);
  if (studio.ok ? studio.value.away : own === null) return null;
  return (
    <section className={styles.group}>
      {studio.ok ? <FirstStepsList {...studio.value} /> : <FirstStepsList steps={own ?? []} />}
    </section>
  );
}

/** An owner who said at the first run that they do not teach cannot start a plan: says why, and what to do. */
function WhyNoPlan() {
  return (
    <div className={`spread ${styles.why}`}>
      <p className="quiet">You manage the studio and do not write plans. If you teach, become a lead as well.</p>
      <TeachToo />
    </div>
  );
}

function ManagerWays() {
  return (
    <section className={styles.group}>
      <h2>The studio</h2>
      <ul className={styles.ways}>
        <li>
          <a href="/people">People</a> <span className="quiet">who is here, their roles, invitations</span>
        </li>
        <li>
          <a href="/studio">Rooms and springs</a>{" "}
          <span className="quiet">the springs of your machines, as measured</span>
        </li>
        <li>
          <a href={DEVICES_PLACE.href}>{DEVICES_PLACE.name}</a>{" "}
          <span className="quiet">pair a device or remove one</span>
        </li>
        <li>
          <a href="/studio/health">Health</a> <span className="quiet">how the server is, and its backups</span>
        </li>
        <li>
          <a href="/programme">Programme</a> <span className="quiet">who teaches when</span>
        </li>
      </ul>
    </section>
  );
}
