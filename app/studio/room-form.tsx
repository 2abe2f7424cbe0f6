"use client";
import { type FormEvent, useId, useState } from "react";
import { useFormats } from "#app/_parts/formats.tsx";
import type { StudioRoom } from "#db/repos/room-repo.ts";
/** Editing a room: its name, its carriage, its springs as measured. */
import { LENGTH_NAMES, stiffnessUnit } from "#lib/formats/units.ts";
import { Dialog } from "../_parts/dialog.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { SendButton } from "../_parts/send-button.tsx";
import { useSend } from "../_parts/use-send.ts";
import {
  EMPTY_ROOM,
  emptySpring,
  type RoomDraft,
  type RoomSpringDraft,
  type RoomUnits,
  readRoomDraft,
  roomDraftOf,
} from "./room-draft.ts";
import styles from "./studio.module.css";

interface RoomFormProps {
  /** Null for a new one. */
  readonly room: StudioRoom | null;
  readonly onClose: () => void;
  readonly onDone: () => void;
}

export function RoomForm({ room, onClose, onDone }: RoomFormProps) {
  const { draft, setDraft, problem, busy, submit } = useRoomForm(room, onDone);
  return (
    <Dialog title={room ? `Edit ${room.name}` : "New room"} onClose={onClose}>
      <form className={styles.form} onSubmit={submit}>
        <div className={styles.pair}>
          <TextField label="Name" value={draft.name} onChange={(name) => setDraft({ ...draft, name })} />
          <TextField
            label={`Carriage travel in ${LENGTH_NAMES[draft.units.length]}`}
            value={draft.travel}
            decimal
            onChange={(travel) => setDraft({ ...draft, travel })}
          />
        </div>
        <Springs units={draft.units} springs={draft.springs} onChange={(springs) => setDraft({ ...draft, springs })} />
        <p className="quiet small">
          To measure a spring with a luggage scale, open its scale readings. Once saved, plans in this room are checked
          against these numbers; signed editions keep the numbers they were signed with.
        </p>
        <ProblemLine say={problem} />
        <SendButton busy={busy} doing="Saving…">
          Save
        </SendButton>
      </form>
    </Dialog>
  );
}

function useRoomForm(room: StudioRoom | null, onDone: () => void) {
  const f = useFormats();
  const sending = useSend();
  const [draft, setDraft] = useState<RoomDraft>(() =>
    room ? roomDraftOf(room.name, room.equipment, f) : { ...roomDraftOf("", EMPTY_ROOM, f), springs: [emptySpring(0)] },
  );
  const [problem, setProblem] = useState<string | null>(null);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const read = readRoomDraft(draft, room?.equipment ?? null);
    setProblem(read.ok ? null : read.say);
    if (!read.ok) return;
    const body = { name: read.name, equipment: read.equipment };
    const sent = room
      ? await sending.run("PATCH", `/api/rooms/${room.id}`, { ...body, seen: room.equipment })
      : await sending.run("POST", "/api/rooms", body);
    if (sent !== undefined) onDone();
  };
  return { draft, setDraft, problem: problem ?? sending.problem, busy: sending.busy, submit };
}

interface SpringsProps {
  readonly units: RoomUnits;
  readonly springs: readonly RoomSpringDraft[];
  readonly onChange: (springs: readonly RoomSpringDraft[]) => void;
}

function Springs({ springs, units, onChange }: SpringsProps) {
  const change = (row: number, part: Partial<RoomSpringDraft>) =>
    onChange(springs.map((spring) => (spring.row === row ? { ...spring, ...part } : spring)));
  const nextRow = Math.max(-1, ...springs.map((spring) => spring.row)) + 1;
  return (
    <fieldset className={styles.form}>
      <legend>Springs, lightest first</legend>
      {springs.map((spring) => (
        <SpringFields
          key={spring.row}
          spring={spring}
          units={units}
          onChange={(part) => change(spring.row, part)}
          onRemove={() => onChange(springs.filter((other) => other.row !== spring.row))}
        />
      ))}
      <button type="button" className="button" onClick={() => onChange([...springs, emptySpring(nextRow)])}>
        Add a spring
      </button>
    </fieldset>
  );
}

interface SpringFieldsProps {
  readonly units: RoomUnits;
  readonly spring: RoomSpringDraft;
  readonly onChange: (part: Partial<RoomSpringDraft>) => void;
  readonly onRemove: () => void;
}

const numbers = (units: RoomUnits) =>
  [
    ["count", "How many"],
    ["stiffness", `Stiffness, ${stiffnessUnit(units)}`],
    ["preload", `Preload, ${units.force}`],
  ] as const;

function SpringFields({ spring, units, onChange, onRemove }: SpringFieldsProps) {
  const name = spring.label || "new spring";
  return (
    <div className={styles.spring}>
      <TextField label="Name" of={name} value={spring.label} onChange={(label) => onChange({ label })} />
      {numbers(units).map(([key, label]) => (
        <TextField
          key={key}
          label={label}
          of={name}
          decimal
          value={spring[key]}
          onChange={(typed) => onChange({ [key]: typed })}
        />
      ))}
      <button type="button" className="act" onClick={onRemove}>
        Remove<span className="visually-hidden"> {name}</span>
      </button>
    </div>
  );
}

interface TextFieldProps {
  readonly label: string;
  /** Whose value it is, for those who cannot see the row. */
  readonly of?: string;
  readonly value: string;
  readonly decimal?: boolean;
  readonly onChange: (value: string) => void;
}

function TextField({ label, of, value, decimal = false, onChange }: TextFieldProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>
        {label}
        {of ? <span className="visually-hidden"> of {of}</span> : null}
      </label>
      <input
        id={id}
        value={value}
        inputMode={decimal ? "decimal" : undefined}
        required
        onChange={(event) => onChange(event.target.value)}
      />
    </div>
  );
}
