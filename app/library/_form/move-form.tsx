"use client";
/** Adds or edits a move. Live: every field says its own fault as it is typed; the move's doubts stand beside. */
import { useRouter } from "next/navigation";
import { type FormEvent, type ReactNode, useMemo, useRef, useState, useSyncExternalStore } from "react";
import { moveDoubts } from "#lib/library/doubts.ts";
import { moveDraft } from "#lib/library/draft.ts";
import { knownSprings, type RoomMachines, springNames } from "#lib/library/known-springs.ts";
import { moveIdFor } from "#lib/library/move-id.ts";
import type { Move } from "#lib/plan/schema.ts";
import type { MoveNow } from "#server/library/change-move.ts";
import { DoubtList } from "../_move/doubt-list.tsx";
import { CarePart } from "./care-part.tsx";
import { Conflict } from "./conflict.tsx";
import { FaultList, goToField } from "./fault-list.tsx";
import styles from "./form.module.css";
import { TextInput } from "./form-fields.tsx";
import { LeaveGuard } from "./leave-guard.tsx";
import { LoadPart } from "./load-part.tsx";
import { MusclesPart } from "./muscles-part.tsx";
import { type Saved, saveMove } from "./save-move.ts";
import { SetupPart } from "./setup-part.tsx";
import { TimePart } from "./time-part.tsx";
import { type MoveForm as Form, type MoveFormSetup, useMoveForm } from "./use-move-form.ts";

interface MoveFormProps extends MoveFormSetup {
  readonly rooms: readonly RoomMachines[];
  /** Line weight of each spring's coil, by its id. */
  readonly coils: Readonly<Record<string, number>>;
  /** Ids that are taken. */
  readonly ids: readonly string[];
}

const never = () => () => {};

export function MoveForm(props: MoveFormProps) {
  const { id, rooms, coils, ids } = props;
  const form = useMoveForm(props);
  const saving = useSaving(form, id);
  const springs = useMemo(() => knownSprings(rooms, form.base?.move), [rooms, form.base]);
  const { draft, read } = form;
  const awake = useSyncExternalStore(
    never,
    () => true,
    () => false,
  );
  const shown = form.faults.filter((fault) => form.faultAt(fault.place) !== undefined);
  return (
    <form className={styles.form} onSubmit={saving.submit} noValidate>
      <LeaveGuard dirty={form.dirty && !saving.done} onDrop={form.drop} />
      {form.restored ? (
        <p className="notice">
          What you typed before is here again.{" "}
          <button type="button" className={styles.link} onClick={form.drop}>
            {id === null ? "Start afresh" : "Start from what is stored"}
          </button>
        </p>
      ) : null}
      {saving.conflict && form.base && read.ok ? (
        <Conflict
          key={saving.conflict.updatedAt}
          base={form.base.move}
          mine={read.move}
          theirs={saving.conflict}
          names={springNames(springs)}
          busy={saving.busy}
          onSave={saving.resolve}
          onTheirs={saving.takeTheirs}
        />
      ) : null}
      {/* What is typed before the page is awake would be lost. */}
      <fieldset className={styles.columns} disabled={!awake}>
        <div className={styles.parts}>
          <Part title="Name">
            <TextInput
              place="name"
              label="Name"
              hint={idWords(id, draft.name, ids)}
              value={draft.name}
              fault={form.faultAt("name")}
              onChange={(name) => form.set({ name }, "name")}
            />
          </Part>
          <Part title="Set-up">
            <SetupPart form={form} />
          </Part>
          <Part title="Trains">
            <MusclesPart form={form} />
          </Part>
          <Part title="Load">
            <LoadPart form={form} springs={springs} coils={coils} />
          </Part>
          <Part title="Tempo and time">
            <TimePart form={form} />
          </Part>
          <Part title="Care">
            <CarePart form={form} />
          </Part>
        </div>
        <aside className={styles.side} aria-label="Saving">
          <button type="submit" className="button button-strong" aria-disabled={saving.busy}>
            {saving.busy ? "Saving" : id === null ? "Add to the library" : "Save"}
          </button>
          <p className="quiet small">
            {form.dirty ? "Not saved yet." : id === null ? "Nothing typed yet." : "Nothing changed yet."}
          </p>
          <div role="alert">{saving.problem ? <p className="problem">{saving.problem}</p> : null}</div>
          <FaultList faults={shown} />
          {read.ok ? <Doubts move={read.move} rooms={rooms} /> : null}
        </aside>
      </fieldset>
    </form>
  );
}

function idWords(id: string | null, name: string, ids: readonly string[]): string {
  if (id !== null) return `Its id is ${id}, whatever its name becomes.`;
  if (name.trim() === "") return "Its id is made from its name, once.";
  return `Its id will be ${moveIdFor(name, new Set(ids))}, and never changes after.`;
}

function Part({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <section className={styles.part}>
      <h2>{title}</h2>
      {children}
    </section>
  );
}

function Doubts({ move, rooms }: { readonly move: Move; readonly rooms: readonly RoomMachines[] }) {
  const doubts = moveDoubts(move, rooms);
  if (doubts.length === 0) return null;
  return (
    <div className={styles.doubts}>
      <h2>Not said yet</h2>
      <p className="quiet small">It can be saved like this.</p>
      <DoubtList doubts={doubts} />
    </div>
  );
}

interface Saving {
  readonly busy: boolean;
  /** It is stored: leaving loses nothing. */
  readonly done: boolean;
  readonly problem: string | null;
  readonly conflict: MoveNow | null;
  submit(event: FormEvent): void;
  /** Saves over the state that was found there. */
  resolve(move: Move): void;
  takeTheirs(): void;
}

const SIGNED_OUT =
  "You are signed out. What you typed is kept in this tab: sign in again and come back here to save it.";

function useSaving(form: Form, id: string | null): Saving {
  const router = useRouter();
  const [state, setState] = useState({ busy: false, done: false, problem: null as string | null });
  const [conflict, setConflict] = useState<MoveNow | null>(null);
  const busy = useRef(false);

  const take = (saved: Saved) => {
    const stop = (problem: string | null) => setState({ busy: false, done: false, problem });
    switch (saved.kind) {
      case "saved":
        setState({ busy: false, done: true, problem: null });
        form.stored();
        router.push(`/library/${saved.id}?said=saved`);
        router.refresh();
        return;
      case "faults":
        form.showFaults(saved.faults);
        return stop(saved.say);
      case "changed":
        setConflict(saved.now);
        return stop(null);
      case "signed-out":
        return stop(SIGNED_OUT);
      case "failed":
        return stop(saved.say);
    }
  };
  const save = async (move: Move, base: number | null) => {
    if (busy.current) return; // Enter twice is one save
    busy.current = true;
    setState({ busy: true, done: false, problem: null });
    const saved = await saveMove(id, move, base);
    busy.current = false;
    take(saved);
  };
  return {
    ...state,
    conflict,
    submit(event) {
      event.preventDefault();
      const [first] = form.faults;
      if (form.read.ok && !first) return void save(form.read.move, form.base?.updatedAt ?? null);
      form.showFaults();
      if (first) requestAnimationFrame(() => goToField(first.place));
    },
    resolve(move) {
      if (!conflict) return;
      const base = { move: conflict.move, updatedAt: conflict.updatedAt };
      setConflict(null);
      form.rebase(base, moveDraft(move));
      void save(move, base.updatedAt);
    },
    takeTheirs() {
      if (!conflict) return;
      setConflict(null);
      form.rebase({ move: conflict.move, updatedAt: conflict.updatedAt }, moveDraft(conflict.move));
    },
  };
}
