"use client";
/** The two ways to a new plan: an empty one, or one from a file. */
import { useRouter } from "next/navigation";
import { type ChangeEvent, type FormEvent, useId, useState } from "react";
import { Dialog } from "../_parts/dialog.tsx";
import { FormField, textOf } from "../_parts/form-field.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { send } from "../_parts/send.ts";
import { SendButton } from "../_parts/send-button.tsx";
import { useAskedFor } from "../_parts/use-asked-for.ts";
import { useSend } from "../_parts/use-send.ts";
import styles from "./desk.module.css";
import { madeSchema } from "./made-plan.ts";

interface NewPlanProps {
  readonly rooms: readonly { readonly id: string; readonly name: string }[];
  /** May this person make a plan the team's? */
  readonly mayTeam: boolean;
}

export function NewPlanActs({ rooms, mayTeam }: NewPlanProps) {
  const [asking, setAsking] = useState(false);
  useAskedFor("plan", () => setAsking(true));
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
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const body = {
      title: textOf(form, "title"),
      lengthSeconds: Math.round(Number(textOf(form, "minutes")) * 60),
      roomId: textOf(form, "room") || undefined,
      team: form.has("team"),
    };
    const made = await sending.run("POST", "/api/plans", body, { reads: madeSchema });
    if (made) router.push(`/plans/${made.id}`);
  };
  return (
    <form className={styles.form} onSubmit={submit}>
      <FormField label="Title" name="title" required maxLength={200} data-first="" />
      <LengthAndRoom rooms={rooms} />
      {mayTeam ? (
        <label className="check">
          <input type="checkbox" name="team" />
          Team plan: every coach may write in it
        </label>
      ) : null}
      <ProblemLine say={sending.problem} />
      <SendButton busy={sending.busy} doing="Making the plan…">
        Make the plan
      </SendButton>
    </form>
  );
}

function LengthAndRoom({ rooms }: Pick<NewPlanProps, "rooms">) {
  const id = useId();
  return (
    <div className={styles.pair}>
      <FormField
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
        <label htmlFor={id}>Room</label>
        <select id={id} name="room">
          {rooms.map((room) => (
            <option key={room.id} value={room.id}>
              {room.name}
            </option>
          ))}
        </select>
      </div>
    </div>
  );
}

/** The file goes to the server as it is, which checks it and says where it is wrong. */
function PlanFile() {
  const router = useRouter();
  const [problem, setProblem] = useState<string | null>(null);
  const id = useId();
  const open = async (event: ChangeEvent<HTMLInputElement>) => {
    const input = event.currentTarget;
    const file = input.files?.[0];
    if (!file) return;
    setProblem(null);
    const sent = await send("POST", "/api/plans/import", file, { reads: madeSchema });
    input.value = "";
    if (sent.ok) router.push(`/plans/${sent.value.id}`);
    else setProblem(`${file.name}: ${sent.message}`);
  };
  return (
    <>
      <input id={id} className="visually-hidden" type="file" accept=".json,application/json" onChange={open} />
      <label htmlFor={id} className={`button ${styles.file}`}>
        Open a plan file
      </label>
      <div className={styles.problem}>
        <ProblemLine say={problem} />
      </div>
    </>
  );
}
