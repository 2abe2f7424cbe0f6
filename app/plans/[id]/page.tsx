/**
 * A plan's page: who asks, what they may do, what the plan takes from its studio; the rest happens in the browser. Its
 * script is named in the page itself, so that it loads beside the framework's and not after it.
 */

import type { Metadata } from "next";
import { headers } from "next/headers";
import Link from "next/link";
import { redirect } from "next/navigation";
import { PlanPage } from "#app/_plan/plan-page.tsx";
import type { PlanPageProps } from "#app/_session/session-types.ts";
import { seePlace } from "#app/_shell/see-place.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import type { SignedIn } from "#server/auth/actor.ts";
import { fail, ok, type Result } from "#server/base/result.ts";
import { actorFromHeaders } from "#server/context/actor-from-headers.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { springline } from "#server/context/springline.ts";
import { personFormats } from "#server/formats/formats.ts";
import { openPlanFiles } from "#server/http/plan-parts.ts";
import { readPlanDetail } from "#server/plans/plan-detail.ts";
import { readStart } from "#server/plans/plan-start.ts";
import { planStudio } from "#server/studio-data/plan-studio.ts";
import styles from "./page.module.css";

interface PageProps {
  readonly params: Promise<{ id: string }>;
}

export async function generateMetadata({ params }: PageProps): Promise<Metadata> {
  const who = await actorFromHeaders(await headers());
  const found = readPlanDetail(springline(), who?.actor ?? null, (await params).id);
  return { title: found.ok ? planTitle(found.value.title) : "No such plan" };
}

export default async function Page({ params }: PageProps) {
  const { id } = await params;
  const who = await actorFromHeaders(await headers());
  if (!who) redirect(`/sign-in?to=${encodeURIComponent(`/plans/${id}`)}`);
  const found = planPageProps(who, id);
  if (!found.ok) return <NotHere sentence={found.error.message} />;
  await seePlace(springline(), who.actor, { planId: id });
  return (
    <>
      <AskedForLate />
      <PlanPage {...found.value} />
    </>
  );
}

/** Links and not calls of `preload`, which are lost in the first page after the start. */
const AskedForLate = () =>
  openPlanFiles(springline().env).beside.map((path) => (
    <link key={path} rel="preload" href={path} as={path.endsWith(".css") ? "style" : "script"} />
  ));

function planPageProps(who: SignedIn, id: string): Result<PlanPageProps> {
  const app = springline();
  const found = readPlanDetail(app, who.actor, id);
  if (!found.ok) return found;
  const generation = app.documents.generation(planDoc(id));
  if (generation === undefined) return fail(404, "not-found", "This plan has no document. It may have been deleted.");
  const { owner, rights, roomId, state, title, origin } = found.value;
  const studio = planStudio(app.db, roomId);
  const start = readStart(app, who.actor, id, studio.mark);
  return ok({
    planId: id,
    title,
    // A document that cannot be read is explained by the page itself.
    ...(start.ok ? start.value : { outline: [] }),
    generation,
    formats: personFormats(app, who.actor.id),
    me: { id: who.actor.id, name: who.name, roles: who.actor.roles },
    studio,
    rights: { writes: rights.write, comments: rights.comment },
    // A lead writes in their own plan, and proposes to others.
    may: { ...rights, propose: rights.propose && owner.id !== who.actor.id },
    state,
    origin,
  });
}

function NotHere({ sentence }: { sentence: string }) {
  return (
    <main className={styles.notHere}>
      <h1>No plan to show</h1>
      <p>{sentence}</p>
      <p>
        <Link className="button" href="/desk">
          Back to your desk
        </Link>
      </p>
    </main>
  );
}
