"use client";
/** Editing a room: its name, its carriage, its springs as measured. */
import { type FormEvent, useId, useState } from "react";
import type { StudioRoom } from "#db/repos/room-repo.ts";
import { Dialog } from "../_parts/dialog.tsx";
import { Problem } from "../_parts/problem.tsx";
import { useSend } from "../_parts/use-send.ts";
import { draftOf, emptySpring, type RoomDraft, readDraft, type SpringDraft } from "./room-draft.ts";
import styles from "./studio.module.css";

interface RoomFormProps {
  /** Null for a new one. */
  readonly room: StudioRoom | null;
  readonly onClose: () => void;
  readonly onDone: () => void;
}

export function RoomForm({ room, onClose, onDone }: RoomFormProps) {
  const sending = useSend();
  const [draft, setDraft] = useState<RoomDraft>(() =>
    room ? draftOf(room.name, room.equipment) : { name: "", travelCm: "90", springs: [emptySpring(0)] },
  );
  const [problem, setProblem] = useState<string | null>(null);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const read = readDraft(draft, room?.equipment ?? null);
    setProblem(read.ok ? null : read.say);
    if (!read.ok) return;
    const body = { name: read.name, equipment: read.equipment };
    const sent = room
      ? await sending.run("PATCH", `/api/rooms/${room.id}`, { ...body, seen: room.equipment })
      : await sending.run("POST", "/api/rooms", body);
    if (sent !== undefined) onDone();
  };
  return (
    <Dialog title={room ? `Edit ${room.name}` : "New room"} onClose={onClose}>
      <form className={styles.form} onSubmit={submit}>
        <div className={styles.pair}>
          <TextField label="Name" value={draft.name} onChange={(name) => setDraft({ ...draft, name })} />
          <TextField
            label="Carriage travel in cm"
            value={draft.travelCm}
            decimal
            onChange={(travelCm) => setDraft({ ...draft, travelCm })}
          />
        </div>
        <Springs springs={draft.springs} onChange={(springs) => setDraft({ ...draft, springs })} />
        <p className="quiet small">
          To measure a spring with a luggage scale, open its scale readings. Plans in this room are checked against
          these numbers from now on; signed editions keep theirs.
        </p>
        <Problem say={problem ?? sending.problem} />
        <button type="submit" className="button button-strong" aria-disabled={sending.busy}>
          Keep
        </button>
      </form>
    </Dialog>
  );
}

interface SpringsProps {
  readonly springs: readonly SpringDraft[];
  readonly onChange: (springs: readonly SpringDraft[]) => void;
}

function Springs({ springs, onChange }: SpringsProps) {
  const change = (row: number, part: Partial<SpringDraft>) =>
    onChange(springs.map((spring) => (spring.row === row ? { ...spring, ...part } : spring)));
  const nextRow = Math.max(-1, ...springs.map((spring) => spring.row)) + 1;
  return (
    <fieldset className={styles.form}>
      <legend>Springs, lightest first</legend>
      {springs.map((spring) => {
        const name = spring.label || "new spring";
        return (
          <div key={spring.row} className={styles.spring}>
            <TextField
              label="Name"
              of={name}
              value={spring.label}
              onChange={(label) => change(spring.row, { label })}
            />
            <TextField
              label="Count"
              of={name}
              decimal
              value={spring.count}
              onChange={(count) => change(spring.row, { count })}
            />
            <TextField
              label="N per mm"
              of={name}
              decimal
              value={spring.stiffness}
              onChange={(stiffness) => change(spring.row, { stiffness })}
            />
            <TextField
              label="Preload N"
              of={name}
              decimal
              value={spring.preload}
              onChange={(preload) => change(spring.row, { preload })}
            />
            <button
              type="button"
              className="act"
              onClick={() => onChange(springs.filter((other) => other.row !== spring.row))}
            >
              Take out<span className="visually-hidden"> {name}</span>
            </button>
          </div>
        );
      })}
      <button type="button" className="button" onClick={() => onChange([...springs, emptySpring(nextRow)])}>
        Add a spring
      </button>
    </fieldset>
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
