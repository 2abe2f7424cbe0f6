/** Set-up timings of a room: a studio's own seconds for each action, in place of the program's. */
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
        How long your people need for each part of a change, watched in class with a stopwatch: the slower half of the
        room, never hurried. Springs are changed with the carriage home and as the machine maker's manual says.
      </p>
      <p className="quiet small" id="own-seconds">
        An empty field counts as the usual seconds that stand in it (common practice, no source).
      </p>
      <TaughtSeconds roomId={room.id} own={room.equipment.actionSeconds ?? {}} taught={taught.value} />
      <h2 id="by-hand">Typed by hand</h2>
      <TimingsForm roomId={room.id} equipment={room.equipment} rooms={rooms.value.length} />
    </Shell>
  );
}
