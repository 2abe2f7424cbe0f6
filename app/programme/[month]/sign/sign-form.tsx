"use client";
/** The signature: a note, what is left open, and what the server says when the month is not what was read any more. */
import { type FormEvent, useState } from "react";
import { ProblemLine } from "#app/_parts/problem-line.tsx";
import { SendButton } from "#app/_parts/send-button.tsx";
import { useSend } from "#app/_parts/use-send.ts";
import { leftOpenWords, type OpenedMonth } from "./opened-month.ts";

export interface TypedNote {
  readonly value: string;
  readonly onChange: (note: string) => void;
}

interface SignFormProps {
  readonly month: string;
  readonly reading: OpenedMonth;
  read(): Promise<void>;
  readonly note: TypedNote;
}

export function SignForm({ month, reading, read, note }: SignFormProps) {
  const { hash, nextEdition, lookAgain, blockers } = reading;
  const [signed, setSigned] = useState(false);
  const sending = useSend();
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const body = { hash, edition: nextEdition, note: note.value, leftOpen: lookAgain.length };
    const sent = await sending.run("POST", `/api/programme/${month}/sign`, body);
    if (sent !== undefined) setSigned(true);
  };
  if (signed)
    return (
      <p className="done" role="status">
        The month is signed off as edition {nextEdition}.
      </p>
    );
  return (
    <form onSubmit={submit}>
      <h2>Sign edition {nextEdition}</h2>
      <NoteField note={note} />
      <p>{leftOpenWords(lookAgain.length)}</p>
      <ProblemLine say={sending.problem} />
      <div className="acts">
        <SendButton busy={sending.busy} doing="Signing…" disabled={blockers.length > 0}>
          Sign the month off
        </SendButton>
        <button type="button" className="button" onClick={read}>
          Read it again
        </button>
      </div>
    </form>
  );
}

function NoteField({ note }: Pick<SignFormProps, "note">) {
  return (
    <div className="field">
      <label htmlFor="month-note">Note</label>
      <textarea
        id="month-note"
        rows={3}
        maxLength={4000}
        value={note.value}
        onChange={(event) => note.onChange(event.target.value)}
      />
    </div>
  );
}
