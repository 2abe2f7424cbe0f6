"use client";
import styles from "./month.module.css";
/** Whose work and rest the sheet shows; with three rooms or more, which rooms. */
import type { MonthDesk } from "./month-desk.ts";

export function RegularsChoice({ desk }: { readonly desk: MonthDesk }) {
  const { month, choice, choose } = desk;
  const all = Object.entries(month.file.regulars);
  if (all.length === 0) {
    return month.writes ? (
      <p className={styles.regulars}>
        <button type="button" className="act" onClick={() => choose({ panel: { kind: "regulars" } })}>
          Add a group of regulars to see their work and rest
        </button>
      </p>
    ) : null;
  }
  return (
    <fieldset className={styles.regulars}>
      <legend>Work and rest of</legend>
      {all.map(([id, { name }]) => (
        <button
          key={id}
          type="button"
          className={styles.regular}
          aria-pressed={choice.regulars === id}
          onClick={() => choose({ regulars: id })}
        >
          {name || "without a name"}
        </button>
      ))}
      <RoomChoice desk={desk} />
    </fieldset>
  );
}

function RoomChoice({ desk: { month, choice, choose } }: { readonly desk: MonthDesk }) {
  const rooms = Object.entries(month.file.rooms);
  if (rooms.length < 3) return null;
  const only = choice.rooms.length === 1 ? choice.rooms[0] : "";
  return (
    <select
      aria-label="Rooms that are shown"
      value={only}
      onChange={(event) =>
        choose({ rooms: event.target.value === "" ? rooms.map(([id]) => id) : [event.target.value] })
      }
    >
      <option value="">All rooms</option>
      {rooms.map(([id, { name }]) => (
        <option key={id} value={id}>
          {name}
        </option>
      ))}
    </select>
  );
}
