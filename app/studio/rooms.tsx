"use client";
/** The rooms, each with the springs of its machines as they were measured. */
import Link from "next/link";
import { useRouter } from "next/navigation";
import { useState } from "react";
import type { StudioRoom } from "#db/repos/room-repo.ts";
import { plural } from "#lib/plan/format.ts";
import { CoilMark, coilWeight } from "../_parts/coils/coil.tsx";
import { RoomForm } from "./room-form.tsx";
import styles from "./studio.module.css";

/** What is being edited: a room, a new one, or nothing. */
type Editing = StudioRoom | "new" | null;

export function Rooms({ rooms }: { readonly rooms: readonly StudioRoom[] }) {
  const router = useRouter();
  const [editing, setEditing] = useState<Editing>(null);
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
      {rooms.length === 0 ? <p className="quiet">No room yet. Plans, slots and devices each need one.</p> : null}
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
  const { springs, carriageTravelMm } = room.equipment;
  return (
    <article className={`hung ${styles.room}`}>
      <div className="spread">
        <h3>{room.name}</h3>
        <button type="button" className="act" onClick={onEdit}>
          Edit<span className="visually-hidden"> {room.name}</span>
        </button>
      </div>
      <p className="quiet small">
        {room.equipment.name} · carriage travels {carriageTravelMm / 10} cm
      </p>
      <p className="quiet small">
        <Link className="link-line" href={`/studio/rooms/${room.id}/timings`}>
          Set-up timings<span className="visually-hidden"> of {room.name}</span>
        </Link>
        : {timingsWords(room)}
      </p>
      <div className="table-scroll">
        <table className={styles.springs}>
          <thead>
            <tr>
              <th scope="col">spring</th>
              <th scope="col">on each machine</th>
              <th scope="col" className="number">
                N per mm
              </th>
              <th scope="col" className="number">
                preload N
              </th>
              <th scope="col">Scale readings</th>
            </tr>
          </thead>
          <tbody>
            {springs.map((spring) => (
              <tr key={spring.id}>
                <th scope="row">{spring.label}</th>
                <td>
                  <span className={styles.coils}>
                    {Array.from({ length: spring.count }, (_, i) => (
                      // biome-ignore lint/suspicious/noArrayIndexKey: equal marks in a row, told apart by nothing
                      <CoilMark key={i} weight={coilWeight(spring, springs)} />
                    ))}
                    <span className="visually-hidden">{plural(spring.count, "spring")}</span>
                  </span>
                </td>
                <td className="number">{spring.stiffnessNPerMm.toFixed(3)}</td>
                <td className="number">{spring.preloadN.toFixed(1)}</td>
                <td>
                  <Link className="link-line" href={`/studio/rooms/${room.id}/springs/${spring.id}`}>
                    {readingsWords(room, spring.id)}
                    <span className="visually-hidden"> of {spring.label}</span>
                  </Link>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </article>
  );
}

function readingsWords(room: StudioRoom, springId: string): string {
  const kept = room.readings?.[springId];
  return kept && kept.readings.length > 0 ? plural(kept.readings.length, "reading") : "Measure";
}

function timingsWords(room: StudioRoom): string {
  const own = Object.keys(room.equipment.actionSeconds ?? {}).length;
  return own === 0 ? "the usual" : `${own} of your own`;
}
