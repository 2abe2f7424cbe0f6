"use client";
/** What may be added to a log: who led the class, that it does not count, that it counts again. */
import { useRouter } from "next/navigation";
import { type FormEvent, useId, useState } from "react";
import { FormField, textOf } from "#app/_parts/form-field.tsx";
import { ProblemLine } from "#app/_parts/problem-line.tsx";
import { SendButton } from "#app/_parts/send-button.tsx";
import { useSend } from "#app/_parts/use-send.ts";

interface LogActsProps {
  readonly log: {
    readonly key: string;
    readonly at: string;
    readonly coachId: string | null;
    readonly struck: object | null;
  };
  readonly remarks: boolean;
  readonly people: readonly { readonly id: string; readonly name: string }[];
  readonly me: string;
}

export function LogActs({ log, remarks, people, me }: LogActsProps) {
  const router = useRouter();
  const sending = useSend();
  const say = async (body: object) => {
    const sent = await sending.run("POST", `/api/class-logs/${log.key}/remarks`, body);
    if (sent !== undefined) router.refresh();
  };
  const named = (coachId: string) => say({ kind: "coach", coachId });
  return (
    <>
      {remarks && <WhoLed log={log} people={people} named={named} />}
      {!remarks && log.coachId === null && people.some(({ id }) => id === me) && (
        <button type="button" className="button" onClick={() => named(me)}>
          I led this class
        </button>
      )}
      {remarks && log.struck === null && <Strike at={log.at} busy={sending.busy} say={say} />}
      {remarks && log.struck !== null && (
        <button type="button" className="button" onClick={() => say({ kind: "counted" })}>
          Count it again
        </button>
      )}
      <ProblemLine say={sending.problem} />
    </>
  );
}

interface WhoLedProps extends Pick<LogActsProps, "log" | "people"> {
  named(coachId: string): Promise<void>;
}

function WhoLed({ log, people, named }: WhoLedProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>Led by</label>
      <select id={id} value={log.coachId ?? ""} onChange={(event) => named(event.target.value)}>
        {!people.some((one) => one.id === log.coachId) && (
          <option value={log.coachId ?? ""} disabled>
            nobody of the studio
          </option>
        )}
        {people.map((one) => (
          <option key={one.id} value={one.id}>
            {one.name}
          </option>
        ))}
      </select>
    </div>
  );
}

interface StrikeProps {
  readonly at: string;
  readonly busy: boolean;
  say(body: object): Promise<void>;
}

function Strike({ at, busy, say }: StrikeProps) {
  const [open, setOpen] = useState(false);
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    await say({ kind: "struck", reason: textOf(new FormData(event.currentTarget), "reason") });
  };
  if (!open)
    return (
      <button
        type="button"
        className="button"
        aria-label={`Strike the log of ${at.replace("T", " ")}`}
        onClick={() => setOpen(true)}
      >
        Strike
      </button>
    );
  return (
    <form onSubmit={submit}>
      <FormField label="Why it does not count" name="reason" required autoFocus hint="Three words at least." />
      <div className="acts">
        <SendButton busy={busy} doing="Striking…">
          Strike it
        </SendButton>
        <button type="button" className="button" onClick={() => setOpen(false)}>
          Leave it
        </button>
      </div>
    </form>
  );
}
