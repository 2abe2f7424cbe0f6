/** A month of the programme: who asks, what they may do, and the names that slots refer to. The browser does the rest. */
import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { isMonth } from "#lib/calendar/days.ts";
import { monthTitle } from "#lib/formats/dates.ts";
import { can } from "#lib/policy/can.ts";
import type { DocName } from "#lib/protocol/messages.ts";
import type { Springline } from "#server/context/springline.ts";
import { readMonthAcceptances } from "#server/month-sign/accept-in-month.ts";
import { readMonthEditions } from "#server/month-sign/month-editions.ts";
import { listPlans } from "#server/plans/list-plans.ts";
import { monthIsNear } from "#server/programme/month-range.ts";
import { monthStateOf, monthStudioOf } from "#server/programme/read-month-file.ts";
import { readProgramme } from "#server/programme/read-programme.ts";
import type { MonthPageProps } from "../../_month/month-types.ts";
import { readerFormats, requirePerson, type Visit } from "../../_shell/person.ts";
import { seePlace } from "../../_shell/see-place.ts";
import { Shell } from "../../_shell/shell.tsx";
import { OpenMonth } from "./open-month.tsx";

interface PageProps {
  readonly params: Promise<{ readonly month: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

export async function generateMetadata({ params }: Pick<PageProps, "params">): Promise<Metadata> {
  const { month } = await params;
  return { title: isMonth(month) ? `Programme, ${monthTitle(month, await readerFormats())}` : "Programme" };
}

export default async function MonthPage({ params, searchParams }: PageProps) {
  const { month } = await params;
  const { view, room, week } = await searchParams;
  const one = (value: string | string[] | undefined) => (typeof value === "string" ? value : null);
  const visit = await requirePerson(`/programme/${month}`);
  const { app, who } = visit;
  if (!can(who.actor, "programme.read") || !monthIsNear(month, app.now())) notFound();
  await seePlace(app, who.actor, { kinds: ["class-changed", "class-ahead"] });
  await seePlace(app, who.actor, { kinds: ["month-signed"], month });
  return (
    <Shell visit={visit} section="programme" wide>
      <OpenMonth
        {...(await monthProps(visit, month))}
        wall={view === "wall" ? { room: one(room), week: one(week) } : null}
      />
    </Shell>
  );
}

async function monthProps({ app, who, formats }: Visit, month: string): Promise<MonthPageProps> {
  const { actor, name } = who;
  const plans = await listPlans(app, actor);
  const generation = generationOf(app, { kind: "month", key: month }, actor.id);
  const state = monthStateOf(app, month);
  const programme = readProgramme(app, actor, month);
  const editions = readMonthEditions(app, actor, month);
  const accepted = readMonthAcceptances(app, actor, month);
  return {
    month,
    generation,
    used: programme.ok ? { plans: programme.value.plans, hidden: programme.value.hidden } : { plans: [], hidden: [] },
    me: { id: actor.id, name },
    formats,
    writes: can(actor, "programme.write"),
    studio: monthStudioOf(app, actor, month, state.ok ? state.value : undefined),
    may: {
      sign: can(actor, "month.sign"),
      lookBack: can(actor, "look-back.read"),
      feeds: can(actor, "feed.own") || can(actor, "feeds.manage"),
    },
    signed: editions.ok ? (editions.value.editions.at(-1) ?? null) : null,
    accepted: accepted.ok ? accepted.value.accepted : [],
    plans: plans.ok ? plans.value.plans.map((plan) => summary(plan)) : [],
  };
}

const summary = ({ id, title, state, edition, lengthSeconds, ownerName }: MonthPageProps["plans"][number]) => ({
  id,
  title,
  state,
  edition,
  lengthSeconds,
  ownerName,
});

/** A month is made when it is first opened. Here, so that the page knows which history its local copy belongs to. */
function generationOf(app: Springline, name: DocName, actorId: string): string {
  const found = app.documents.generation(name);
  if (found !== undefined) return found;
  app.documents.transact(name, actorId, () => undefined);
  return app.documents.generation(name) ?? "";
}
