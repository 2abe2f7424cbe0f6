"use client";
import Link from "next/link";
import { useRouter } from "next/navigation";
import { useState } from "react";
import { useFormats } from "#app/_parts/formats.tsx";
import type { StudioRoom } from "#db/repos/room-repo.ts";
/** The rooms, each with the springs of its machines as they were measured. */
import { distanceWords, forceNumber, stiffnessNumber, stiffnessUnit } from "#lib/formats/units.ts";
import { plural } from "#lib/plan/format.ts";
import type { Spring } from "#lib/plan/schema.ts";
import { roomPartId } from "#lib/protocol/places.ts";
import { CoilMark } from "../_parts/coils/coil.tsx";
import { coilWeight } from "../_parts/coils/coil-weight.ts";
import { useAskedFor } from "../_parts/use-asked-for.ts";
import { RoomForm } from "./room-form.tsx";
import styles from "./studio.module.css";

/** What is being edited: a room, a new one, or nothing. */
type Editing = StudioRoom | "new" | null;

export function RoomsPart({ rooms }: { readonly rooms: readonly StudioRoom[] }) {
  const router = useRouter();
  const [editing, setEditing] = useState<Editing>(null);
  useAskedFor("room", () => setEditing("new"));
  const done = () => {
    setEditing(null);
    router.refresh();
  };
  return (
    <>
      <div className="spread">
        <h2>Rooms and springs</h2>
        <button type="button" className="button" onClick={() => setEditing("new")}>
          Add a room
        </button>
      </div>
      {rooms.length === 0 ? (
        <p className="quiet">No room yet. Add one: plans, slots and devices each need a room.</p>
      ) : null}
      <div className={styles.rooms}>
        {rooms.map((room) => (
          <Room key={room.id} room={room} onEdit={() => setEditing(room)} />
        ))}
      </div>
      {editing === null ? null : (
        <RoomForm room={editing === "new" ? null : editing} onClose={() => setEditing(null)} onDone={done} />
      )}
    </>
  );
}

function Room({ room, onEdit }: { readonly room: StudioRoom; readonly onEdit: () => void }) {
  return (
    <article id={roomPartId(room.id)} tabIndex={-1} className={`hung ${styles.room}`}>
      <div className="spread">
        <h3>{room.name}</h3>
        <button type="button" className="act" onClick={onEdit}>
          Edit<span className="visually-hidden"> {room.name}</span>
        </button>
      </div>
      <p className="quiet small">
        {room.equipment.name} · carriage travels {distanceWords(room.equipment.carriageTravelMm, useFormats(), true)}
      </p>
      <p className="quiet small">
        <Link className="link-line" href={`/studio/rooms/${room.id}/timings`}>
          Set-up timings<span className="visually-hidden"> of {room.name}</span>
        </Link>
        : {timingsWords(room)}
      </p>
      <Springs room={room} />
    </article>
  );
}

function Springs({ room }: { readonly room: StudioRoom }) {
  const f = useFormats();
  return (
    <div className="table-scroll">
      <table className={styles.springs}>
        <thead>
          <tr>
            <th scope="col">Spring</th>
            <th scope="col">On each machine</th>
            <th scope="col" className="number">
              Stiffness, {stiffnessUnit(f)}
            </th>
            <th scope="col" className="number">
              Preload, {f.force}
            </th>
            <th scope="col">Scale readings</th>
          </tr>
        </thead>
        <tbody>
          {room.equipment.springs.map((spring) => (
            <SpringRow key={spring.id} room={room} spring={spring} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function SpringRow({ room, spring }: { readonly room: StudioRoom; readonly spring: Spring }) {
  const f = useFormats();
  return (
    <tr>
      <th scope="row">{spring.label}</th>
      <td>
        <span className={styles.coils}>
          {Array.from({ length: spring.count }, (_, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: equal marks in a row, told apart by nothing
            <CoilMark key={i} weight={coilWeight(spring, room.equipment.springs)} />
          ))}
          <span className="visually-hidden">{plural(spring.count, "spring")}</span>
        </span>
      </td>
      <td className="number">{stiffnessNumber(spring.stiffnessNPerMm, f).toFixed(3)}</td>
      <td className="number">{forceNumber(spring.preloadN, f, true).toFixed(1)}</td>
      <td>
        <Link className="link-line" href={`/studio/rooms/${room.id}/springs/${spring.id}`}>
          {readingsWords(room, spring.id)}
          <span className="visually-hidden"> of {spring.label}</span>
        </Link>
      </td>
    </tr>
  );
}

function readingsWords(room: StudioRoom, springId: string): string {
  const kept = room.readings?.[springId];
  return kept && kept.readings.length > 0 ? plural(kept.readings.length, "reading") : "Measure";
}

function timingsWords(room: StudioRoom): string {
  const { actionSeconds = {}, spreadShare } = room.equipment;
  const own = Object.keys(actionSeconds).length + (spreadShare === undefined ? 0 : 1);
  return own === 0 ? "usual seconds" : `${plural(own, "number")} of your own`;
}
