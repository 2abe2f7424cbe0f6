"use client";
/** Deletes an account for good: says in numbers what goes and what stays, and asks for the name once more. */
import { type FormEvent, useEffect, useState } from "react";
import type { DeletionView } from "#server/people/delete-person.ts";
import { Dialog } from "../_parts/dialog.tsx";
import { FormField, textOf } from "../_parts/form-field.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { useSend } from "../_parts/use-send.ts";
import { DELETION, keptWorkWords, monthsWords, privateWords } from "./deletion-words.ts";
import styles from "./people.module.css";

interface DeleteDialogProps {
  readonly person: { readonly id: string; readonly name: string };
  readonly me: boolean;
  readonly onClose: () => void;
  readonly onDone: () => void;
}

export function DeleteDialog({ person, me, onClose, onDone }: DeleteDialogProps) {
  const asking = useSend();
  const [view, setView] = useState<DeletionView | null>(null);
  // Once, when it opens: what is told is what the server is then asked to do.
  // biome-ignore lint/correctness/useExhaustiveDependencies: asking is made anew with every rendering
  useEffect(() => {
    void asking.run<DeletionView>("GET", `/api/people/${person.id}/deletion`).then((found) => found && setView(found));
  }, [person.id]);
  return (
    <Dialog title={`Delete ${person.name} for good?`} onClose={onClose}>
      <ProblemLine say={asking.problem} />
      {view && <DeletionForm view={view} me={me} onDone={onDone} />}
      {!view && asking.problem === null && <p role="status">Looking at what there is…</p>}
    </Dialog>
  );
}

function DeletionForm({
  view,
  me,
  onDone,
}: Pick<DeleteDialogProps, "me" | "onDone"> & { readonly view: DeletionView }) {
  const sending = useSend();
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const typed = new FormData(event.currentTarget);
    const body = {
      name: textOf(typed, "name"),
      plansTo: textOf(typed, "plansTo") || null,
      privatePlans: view.privatePlans.length,
    };
    if ((await sending.run("POST", `/api/people/${view.id}/deletion`, body)) !== undefined) onDone();
  };
  const months = monthsWords(view.kept);
  return (
    <form className={styles.form} onSubmit={submit}>
      {me ? <p className="notice">{DELETION.own}</p> : null}
      <p>{DELETION.gone}</p>
      <Plans view={view} />
      <p>{keptWorkWords(view)}</p>
      {months ? <p>{months}</p> : null}
      <p>{DELETION.stays}</p>
      <FormField label={`Type “${view.name}” to confirm`} name="name" required autoComplete="off" maxLength={200} />
      <ProblemLine say={sending.problem} />
      <button type="submit" className="button button-must" aria-disabled={sending.busy}>
        {sending.busy ? "Deleting…" : `Delete ${view.name} for good`}
      </button>
    </form>
  );
}

function Plans({ view: { privatePlans, kept, heirs } }: { readonly view: DeletionView }) {
  if (privatePlans.length === 0 && kept.plans === 0) return null;
  return (
    <div className="field">
      {privatePlans.length > 0 ? <p>{privateWords(privatePlans)}</p> : null}
      <label htmlFor="plans-to">Their plans</label>
      <select id="plans-to" name="plansTo" defaultValue="">
        <option value="">
          {privatePlans.length > 0 ? "Delete what only they can see; the rest stays as it is" : "Stay as they are"}
        </option>
        {heirs.map(({ id, name }) => (
          <option key={id} value={id}>
            {`Give all of them to ${name}`}
          </option>
        ))}
      </select>
    </div>
  );
}
