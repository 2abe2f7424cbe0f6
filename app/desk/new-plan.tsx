"use client";
/** The two ways to a new plan: an empty one, or one from a file. */
import { useRouter } from "next/navigation";
import { type ChangeEvent, type FormEvent, useId, useState } from "react";
import { Dialog } from "../_parts/dialog.tsx";
import { Field, textOf } from "../_parts/field.tsx";
import { Problem } from "../_parts/problem.tsx";
import { useSend } from "../_parts/use-send.ts";
import styles from "./desk.module.css";

interface NewPlanProps {
  readonly rooms: readonly { readonly id: string; readonly name: string }[];
  /** May this person make a plan the team's? */
  readonly mayTeam: boolean;
}

export function NewPlan({ rooms, mayTeam }: NewPlanProps) {
  const [asking, setAsking] = useState(false);
  return (
    <div className="acts">
      <PlanFile />
      <button type="button" className="button button-strong" onClick={() => setAsking(true)}>
        New plan
      </button>
      {asking ? (
        <Dialog title="New plan" onClose={() => setAsking(false)}>
          <NewPlanForm rooms={rooms} mayTeam={mayTeam} />
        </Dialog>
      ) : null}
    </div>
  );
}

function NewPlanForm({ rooms, mayTeam }: NewPlanProps) {
  const router = useRouter();
  const sending = useSend();
  const roomId = useId();
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const made = await sending.run<{ id: string }>("POST", "/api/plans", {
      title: textOf(form, "title"),
      lengthSeconds: Math.round(Number(textOf(form, "minutes")) * 60),
      roomId: textOf(form, "room") || undefined,
      team: form.has("team"),
    });
    if (made) router.push(`/plans/${made.id}`);
  };
  return (
    <form className={styles.form} onSubmit={submit}>
      <Field label="Title" name="title" required maxLength={200} data-first="" />
      <div className={styles.pair}>
        <Field
          label="Length in minutes"
          name="minutes"
          type="number"
          defaultValue={45}
          min={1}
          max={240}
          step={1}
          required
        />
        <div className="field">
          <label htmlFor={roomId}>Room</label>
          <select id={roomId} name="room">
            {rooms.map((room) => (
              <option key={room.id} value={room.id}>
                {room.name}
              </option>
            ))}
          </select>
        </div>
      </div>
      {mayTeam ? (
        <label className="check">
          <input type="checkbox" name="team" />
          Team plan: every coach may write in it
        </label>
      ) : null}
      <Problem say={sending.problem} />
      <button type="submit" className="button button-strong" aria-disabled={sending.busy}>
        {sending.busy ? "Making it" : "Make the plan"}
      </button>
    </form>
  );
}

/** The file's own text goes to the server, which checks it and says where a bad one is wrong. */
function PlanFile() {
  const router = useRouter();
  const [problem, setProblem] = useState<string | null>(null);
  const id = useId();
  const open = async (event: ChangeEvent<HTMLInputElement>) => {
    const input = event.currentTarget;
    const file = input.files?.[0];
    if (!file) return;
    setProblem(null);
    const answer = await postFile(await file.text());
    input.value = "";
    if (answer.id) router.push(`/plans/${answer.id}`);
    else setProblem(`${file.name}: ${answer.message}`);
  };
  return (
    <>
      <input id={id} className="visually-hidden" type="file" accept=".json,application/json" onChange={open} />
      <label htmlFor={id} className={`button ${styles.file}`}>
        Open a plan file
      </label>
      <div className={styles.problem}>
        <Problem say={problem} />
      </div>
    </>
  );
}

async function postFile(text: string): Promise<{ id?: string; message: string }> {
  try {
    const response = await fetch("/api/plans/import", {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: text,
    });
    const answer = await response.json();
    return { id: answer?.id, message: answer?.error?.message ?? "The server could not read this file." };
  } catch {
    return { message: "The server did not answer, and nothing was added. Try again when the network is back." };
  }
}
