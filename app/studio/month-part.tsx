"use client";
/** What months say of the studio: how many machines each room has, and which. */
import { type FormEvent, useState } from "react";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { useSend } from "../_parts/use-send.ts";
import styles from "./studio.module.css";

/** The part of the studio's month settings that this form changes; the rest is sent back as it came. */
interface Settings {
  readonly machines: Readonly<Record<string, number>>;
  readonly equipment: Readonly<Record<string, string>>;
}

interface MonthPartProps<S extends Settings> {
  readonly settings: S;
  /** With what counts where nothing was said. */
  readonly rooms: readonly {
    readonly id: string;
    readonly name: string;
    readonly machines: number;
    readonly equipment: string;
  }[];
}

export function MonthPart<S extends Settings>({ settings, rooms }: MonthPartProps<S>) {
  const sending = useSend();
  const [seen, setSeen] = useState(settings);
  const [now, setNow] = useState(settings);
  const [kept, setKept] = useState(false);
  const change = (part: Partial<Settings>) => {
    setKept(false);
    setNow((was) => ({ ...was, ...part }));
  };
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const answer = await sending.run<S>("PUT", "/api/studio/month", { settings: now, seen });
    if (answer === undefined) return;
    setSeen(answer);
    setKept(true);
  };
  return (
    <form className={styles.form} onSubmit={submit}>
      <h2>Months</h2>
      <p className="quiet small">What every month of the programme takes from the studio.</p>
      {rooms.map((room) => (
        <RoomFields key={room.id} room={room} settings={now} onChange={change} />
      ))}
      <p className="acts">
        <button type="submit" className="button" aria-disabled={sending.busy}>
          Keep
        </button>
        <span role="status">{kept ? "Kept." : ""}</span>
      </p>
      <ProblemLine say={sending.problem} />
    </form>
  );
}

interface RoomFieldsProps {
  readonly room: MonthPartProps<Settings>["rooms"][number];
  readonly settings: Settings;
  readonly onChange: (part: Partial<Settings>) => void;
}

function RoomFields({ room, settings, onChange }: RoomFieldsProps) {
  const machines = settings.machines[room.id];
  const setMachines = (text: string) => {
    const { [room.id]: _, ...others } = settings.machines;
    onChange({ machines: text === "" ? others : { ...others, [room.id]: Number(text) } });
  };
  const setEquipment = (text: string) => {
    const { [room.id]: _, ...others } = settings.equipment;
    onChange({ equipment: text === "" ? others : { ...others, [room.id]: text } });
  };
  return (
    <fieldset className={styles.pair}>
      <legend>{room.name}</legend>
      <div className="field">
        <label htmlFor={`machines-${room.id}`}>Machines</label>
        <input
          id={`machines-${room.id}`}
          type="number"
          min={1}
          max={200}
          placeholder={`${room.machines}, not yet said`}
          value={machines ?? ""}
          onChange={(event) => setMachines(event.target.value)}
        />
      </div>
      <div className="field">
        <label htmlFor={`equipment-${room.id}`}>Kind of machine, in files</label>
        <input
          id={`equipment-${room.id}`}
          maxLength={64}
          placeholder={room.equipment}
          value={settings.equipment[room.id] ?? ""}
          onChange={(event) => setEquipment(event.target.value)}
        />
      </div>
    </fieldset>
  );
}
