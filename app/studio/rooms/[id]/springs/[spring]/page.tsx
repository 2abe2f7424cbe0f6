/** Scale readings of one spring: how to measure, the readings, the line through them, and using it. */
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { LocalTime } from "#app/_parts/local-time.tsx";
import { requirePerson } from "#app/_shell/person.ts";
import { Shell } from "#app/_shell/shell.tsx";
import { measuredSpringWords } from "#app/studio/_readings/measured-spring-words.ts";
import styles from "#app/studio/_readings/readings.module.css";
import { ReadingsForm } from "#app/studio/_readings/readings-form.tsx";
import { can } from "#lib/policy/can.ts";
import { listRooms } from "#server/rooms/manage-rooms.ts";

export const metadata: Metadata = { title: "Scale readings" };

interface PageProps {
  readonly params: Promise<{ id: string; spring: string }>;
}

export default async function ReadingsPage({ params }: PageProps) {
  const at = await params;
  const visit = await requirePerson(`/studio/rooms/${at.id}/springs/${at.spring}`);
  const { app, who } = visit;
  const rooms = listRooms(app, who.actor);
  const room = rooms.ok ? rooms.value.find(({ id }) => id === at.id) : undefined;
  const spring = room?.equipment.springs.find(({ id }) => id === at.spring);
  if (!can(who.actor, "rooms.manage") || !room || !spring) notFound();
  const kept = room.readings?.[spring.id] ?? null;
  return (
    <Shell visit={visit} section="studio">
      <p>
        <Link className="link-line" href="/studio#rooms">
          Rooms
        </Link>
      </p>
      <h1>
        Scale readings: {spring.label}, {room.name}
      </h1>
      <p className="quiet">
        Now {measuredSpringWords(spring, visit.formats)}.{" "}
        {kept ? (
          <>
            Readings last saved <LocalTime at={kept.at} />.
          </>
        ) : (
          "No readings are saved yet."
        )}
      </p>
      <How />
      <ReadingsForm roomId={room.id} spring={spring} kept={kept} carriageMm={room.equipment.carriageTravelMm} />
    </Shell>
  );
}

function How() {
  return (
    <details className={`notice ${styles.care}`} open>
      <summary>
        <strong>Before you measure</strong>
      </summary>
      <ul>
        <li>
          The machine maker’s manual comes first: do nothing it forbids, and keep to its limits of travel and pull.
        </li>
        <li>Only the person who measures is at the machine. Keep fingers and hair away from spring, hook and rail.</li>
        <li>
          Measure one spring at a time, hooked on as in class. Block or hold the carriage before you read the scale.
        </li>
        <li>
          Hook a luggage scale to the carriage and pull it straight along the rail, slowly. Measure the travel from
          where the spring begins to pull. Take at least three readings, spread over the travel that classes use; five
          are better.
        </li>
        <li>Bring the carriage home by hand. Do not measure a spring with a bent hook, a gap or rust: take it off.</li>
      </ul>
    </details>
  );
}
