/** Calendar addresses: a coach's own, and for a manager the studio's, the rooms' and a way to withdraw anybody's. */
import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { can } from "#lib/policy/can.ts";
import { listFeeds } from "#server/feeds/manage-feeds.ts";
import { requirePerson } from "../../_shell/person.ts";
import { Shell } from "../../_shell/shell.tsx";
import { FeedList } from "./feed-list.tsx";

export const metadata: Metadata = { title: "Calendar addresses" };

export default async function FeedsPage() {
  const visit = await requirePerson("/programme/feeds");
  const { actor } = visit.who;
  const places = listFeeds(visit.app, actor);
  if (!places.ok) notFound();
  return (
    // Whoever may not read the programme has no such place in the menu.
    <Shell visit={visit} {...(can(actor, "programme.read") ? { section: "programme" as const } : {})}>
      <h1>Calendar addresses</h1>
      <p className="quiet">
        With an address, the calendar on a phone or a computer shows the classes from last month to two months ahead,
        and asks again by itself. Rooms, times, themes and coaches stand in it; notes do not. A class that is called off
        or given away stays in it as cancelled.
      </p>
      <p className="quiet">
        A month that was signed off is shown as it was signed; from three days before a class on, the class is shown as
        it stands.
      </p>
      <FeedList places={places.value} />
    </Shell>
  );
}
