/** A month read and signed off by a lead. The reading itself is opened by the browser, so that a mere preview of the page is none. */
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { readerFormats, requirePerson } from "#app/_shell/person.ts";
import { Shell } from "#app/_shell/shell.tsx";
import { isMonth } from "#lib/calendar/days.ts";
import { monthTitle } from "#lib/formats/dates.ts";
import { can } from "#lib/policy/can.ts";
import { monthIsNear } from "#server/programme/month-range.ts";
import { OpenSignOff } from "./open-sign-off.tsx";

interface PageProps {
  readonly params: Promise<{ readonly month: string }>;
}

export async function generateMetadata({ params }: PageProps): Promise<Metadata> {
  const { month } = await params;
  return { title: isMonth(month) ? `Sign off ${monthTitle(month, await readerFormats())}` : "Sign off" };
}

export default async function SignMonthPage({ params }: PageProps) {
  const { month } = await params;
  const visit = await requirePerson(`/programme/${month}/sign`);
  if (!can(visit.who.actor, "month.sign") || !monthIsNear(month, visit.app.now())) notFound();
  return (
    <Shell visit={visit} section="programme">
      <h1>Sign off {monthTitle(month, visit.formats)}</h1>
      <p>
        <Link href={`/programme/${month}`}>Back to the month</Link>
      </p>
      <OpenSignOff month={month} />
    </Shell>
  );
}
