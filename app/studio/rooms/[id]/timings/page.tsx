/** Set-up timings of a room: its own seconds for each part of a change, in place of the usual ones. */
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { requirePerson } from "#app/_shell/person.ts";
import { Shell } from "#app/_shell/shell.tsx";
import { TaughtSeconds } from "#app/studio/_timings/taught-seconds.tsx";
import { TimingsForm } from "#app/studio/_timings/timings-form.tsx";
import { can } from "#lib/policy/can.ts";
import { listRooms } from "#server/rooms/manage-rooms.ts";
import { readTaughtTimings } from "#server/rooms/taught-timings.ts";

export const metadata: Metadata = { title: "Set-up timings" };

export default async function TimingsPage({ params }: { readonly params: Promise<{ id: string }> }) {
  const { id } = await params;
  const visit = await requirePerson(`/studio/rooms/${id}/timings`);
  const { app, who } = visit;
  const rooms = listRooms(app, who.actor);
  const room = rooms.ok ? rooms.value.find((other) => other.id === id) : undefined;
  const taught = readTaughtTimings(app, who.actor, id);
  if (!can(who.actor, "rooms.manage") || !rooms.ok || !room || !taught.ok) notFound();
  return (
    <Shell visit={visit} section="studio">
      <p>
        <Link className="link-line" href="/studio#rooms">
          Rooms
        </Link>
      </p>
      <h1>Set-up timings: {room.name}</h1>
      <p>
        How long one person needs for each part of a change. Time it in class with a stopwatch: take somebody neither
        quick nor slow, and hurry nobody. A class waits for its slowest, so plans add to these seconds the more people
        change at once and the more people differ. Springs are changed with the carriage home and as the machine maker’s
        manual says.
      </p>
      <p className="quiet small" id="own-seconds">
        An empty field uses the usual number shown in it (common practice, no published source).
      </p>
      <TaughtSeconds roomId={room.id} own={room.equipment.actionSeconds ?? {}} taught={taught.value} />
      <h2 id="by-hand">Your own seconds</h2>
      <TimingsForm roomId={room.id} equipment={room.equipment} rooms={rooms.value.length} />
    </Shell>
  );
}
