"use client";
import { type ReactNode, useMemo, useSyncExternalStore } from "react";
/** Adds or edits a move. Every field says its own fault as it is typed; what is still missing stands beside the form. */
import { useFormats } from "#app/_parts/formats.tsx";
import { moveDoubts } from "#lib/library/doubts.ts";
import { type KnownSpring, knownSprings, type RoomMachines, springNames } from "#lib/library/known-springs.ts";
import { moveIdFor } from "#lib/library/move-id.ts";
import type { Move } from "#lib/plan/schema.ts";
import { ProblemLine } from "../../_parts/problem-line.tsx";
import { SendButton } from "../../_parts/send-button.tsx";
import { useMedia } from "../../_parts/use-media.ts";
import { DoubtList } from "../_move/doubt-list.tsx";
import { CarePart } from "./care-part.tsx";
import { Conflict } from "./conflict.tsx";
import { CorrectionPart } from "./correction-part.tsx";
import { FaultList } from "./fault-list.tsx";
import { FigurePart } from "./figure-part.tsx";
import styles from "./form.module.css";
import { TextInput } from "./form-fields.tsx";
import { LeaveGuard } from "./leave-guard.tsx";
import { MoveLoadPart } from "./load-part.tsx";
import { MusclesPart } from "./muscles-part.tsx";
import { SetupPart } from "./setup-part.tsx";
import { TimePart } from "./time-part.tsx";
import { type MoveFormSetup, type MoveFormState, useMoveForm } from "./use-move-form.ts";
import { type Saving, useSaving } from "./use-saving.ts";

interface MoveFormProps extends MoveFormSetup {
  readonly rooms: readonly RoomMachines[];
  /** Line weight of each spring's coil, by its id. */
  readonly coils: Readonly<Record<string, number>>;
  /** Ids that are taken. */
  readonly ids: readonly string[];
}

/** Where the form has one column: the figure stands under the set-up then, else beside all fields. */
const NARROW = "(max-width: 999px)";
const BESIDE_PX = 280;
const UNDER_PX = 160;

const never = () => () => {};

export function MoveForm(props: MoveFormProps) {
  const { id, rooms, coils, ids } = props;
  const form = useMoveForm(props);
  const saving = useSaving(form, id);
  const springs = useMemo(() => knownSprings(rooms, form.base?.move), [rooms, form.base]);
  const awake = useSyncExternalStore(
    never,
    () => true,
    () => false,
  );
  return (
    <form className={styles.form} onSubmit={saving.submit} noValidate>
      <LeaveGuard dirty={form.dirty && !saving.done} onDrop={form.drop} />
      {form.restored ? <RestoredNotice isNew={id === null} onDrop={form.drop} /> : null}
      <OpenConflict form={form} saving={saving} springs={springs} />
      {/* What is typed before the page has its script would be lost. */}
      <fieldset className={styles.columns} disabled={!awake}>
        <Parts form={form} id={id} ids={ids} springs={springs} coils={coils} />
        <SavePanel form={form} saving={saving} isNew={id === null} rooms={rooms} />
      </fieldset>
    </form>
  );
}

function RestoredNotice({ isNew, onDrop }: { readonly isNew: boolean; readonly onDrop: () => void }) {
  return (
    <p className="notice">
      What you typed earlier is back.{" "}
      <button type="button" className="text-button" onClick={onDrop}>
        {isNew ? "Start again" : "Start from the saved move"}
      </button>
    </p>
  );
}

interface OpenConflictProps {
  readonly form: MoveFormState;
  readonly saving: Saving;
  readonly springs: readonly KnownSpring[];
}

function OpenConflict({ form, saving, springs }: OpenConflictProps) {
  if (!saving.conflict || !form.base || !form.read.ok) return null;
  return (
    <Conflict
      key={saving.conflict.updatedAt}
      base={form.base.move}
      mine={form.read.move}
      theirs={saving.conflict}
      names={springNames(springs)}
      busy={saving.busy}
      onSave={saving.resolve}
      onTheirs={saving.takeTheirs}
    />
  );
}

interface PartsProps extends Pick<MoveFormProps, "id" | "ids" | "coils"> {
  readonly form: MoveFormState;
  readonly springs: readonly KnownSpring[];
}

function Parts({ form, id, ids, springs, coils }: PartsProps) {
  const { draft } = form;
  const narrow = useMedia(NARROW);
  return (
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
        {narrow ? <FigurePart draft={form.draft} px={UNDER_PX} /> : null}
        <CorrectionPart form={form} />
      </Part>
      <Part title="Trains">
        <MusclesPart form={form} />
      </Part>
      <Part title="Load">
        <MoveLoadPart form={form} springs={springs} coils={coils} />
      </Part>
      <Part title="Tempo and time">
        <TimePart form={form} />
      </Part>
      <Part title="Care">
        <CarePart form={form} />
      </Part>
    </div>
  );
}

interface SavePanelProps extends Pick<MoveFormProps, "rooms"> {
  readonly form: MoveFormState;
  readonly saving: Saving;
  readonly isNew: boolean;
}

function SavePanel({ form, saving, isNew, rooms }: SavePanelProps) {
  const { read } = form;
  const narrow = useMedia(NARROW);
  const shown = form.faults.filter((fault) => form.faultAt(fault.place) !== undefined);
  return (
    <aside className={styles.side} aria-label="Figure and saving">
      {narrow ? null : <FigurePart draft={form.draft} px={BESIDE_PX} />}
      <SendButton busy={saving.busy} doing="Saving…">
        {isNew ? "Add to the library" : "Save"}
      </SendButton>
      <p className="quiet small">{form.dirty ? "Not saved yet." : isNew ? "Nothing typed yet." : "No changes yet."}</p>
      <ProblemLine say={saving.problem} />
      <FaultList faults={shown} />
      {read.ok ? <Doubts move={read.move} rooms={rooms} /> : null}
    </aside>
  );
}

function idWords(id: string | null, name: string, ids: readonly string[]): string {
  if (id !== null) return `Its id is ${id}. Changing the name does not change it.`;
  if (name.trim() === "") return "Its id is made from the name when you save.";
  return `Its id will be ${moveIdFor(name, new Set(ids))}. It does not change later.`;
}

function Part({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <section className={`hung ${styles.part}`}>
      <h2>{title}</h2>
      {children}
    </section>
  );
}

function Doubts({ move, rooms }: { readonly move: Move; readonly rooms: readonly RoomMachines[] }) {
  const doubts = moveDoubts(move, rooms, useFormats());
  if (doubts.length === 0) return null;
  return (
    <div className={styles.doubts}>
      <h2>Still missing</h2>
      <p className="quiet small">You can save the move without these.</p>
      <DoubtList doubts={doubts} />
    </div>
  );
}
