"use client";
/** Saving a move from its form: the answer becomes a page to go to, faults at their fields, or a conflict to settle. */
import { useRouter } from "next/navigation";
import { type FormEvent, useRef, useState } from "react";
import { moveDraft } from "#lib/library/draft.ts";
import type { MoveFieldPath } from "#lib/library/faults.ts";
import type { Move } from "#lib/plan/schema.ts";
import type { MoveNow } from "#server/library/refusals.ts";
import { goToField } from "./fault-list.tsx";
import { type SaveResult, saveMove } from "./save-move.ts";
import type { MoveFormState } from "./use-move-form.ts";

export interface Saving {
  readonly busy: boolean;
  /** It is saved: leaving loses nothing. */
  readonly done: boolean;
  readonly problem: string | null;
  readonly conflict: MoveNow | null;
  submit(event: FormEvent): void;
  /** Saves over the move that somebody else has saved meanwhile. */
  resolve(move: Move): void;
  takeTheirs(): void;
}

const SIGNED_OUT =
  "You are signed out. What you typed is kept in this tab: sign in again and come back here to save it.";

export function useSaving(form: MoveFormState, id: string | null): Saving {
  const router = useRouter();
  const [state, setState] = useState({ busy: false, done: false, problem: null as string | null });
  const [conflict, setConflict] = useState<MoveNow | null>(null);
  const busy = useRef(false);

  const stop = (problem: string | null) => setState({ busy: false, done: false, problem });
  const take = (result: SaveResult) => {
    switch (result.kind) {
      case "saved":
        setState({ busy: false, done: true, problem: null });
        form.stored();
        router.push(`/library/${result.id}?said=saved`);
        return router.refresh();
      case "faults":
        form.showFaults(result.faults);
        if (result.faults[0]) goThere(result.faults[0].place);
        return stop(result.say);
      case "changed":
        setConflict(result.now);
        return stop(null);
      case "signed-out":
        return stop(SIGNED_OUT);
      case "failed":
        return stop(result.say);
    }
  };
  const save = async (move: Move, base: number | null) => {
    if (busy.current) return; // Enter twice is one save
    busy.current = true;
    setState({ busy: true, done: false, problem: null });
    const result = await saveMove(id, move, base);
    busy.current = false;
    take(result);
  };
  return { ...state, conflict, submit: submitting(form, save), ...settling({ form, conflict, setConflict, save }) };
}

type Save = (move: Move, base: number | null) => Promise<void>;

const submitting = (form: MoveFormState, save: Save) => (event: FormEvent) => {
  event.preventDefault();
  const [first] = form.faults;
  if (form.read.ok && !first) return void save(form.read.move, form.base?.updatedAt ?? null);
  form.showFaults();
  if (first) goThere(first.place);
};

/** Once its fault is drawn. What it is folded in opens. */
const goThere = (place: MoveFieldPath): void => {
  requestAnimationFrame(() => goToField(place));
};

interface SettlingProps {
  readonly form: MoveFormState;
  readonly conflict: MoveNow | null;
  setConflict(conflict: MoveNow | null): void;
  readonly save: Save;
}

function settling({ form, conflict, setConflict, save }: SettlingProps): Pick<Saving, "resolve" | "takeTheirs"> {
  const goOnFrom = (move: Move) => {
    if (!conflict) return null;
    setConflict(null);
    const base = { move: conflict.move, updatedAt: conflict.updatedAt };
    form.rebase(base, moveDraft(move, form.draft.units));
    return base;
  };
  return {
    resolve(move) {
      const base = goOnFrom(move);
      if (base) void save(move, base.updatedAt);
    },
    takeTheirs() {
      if (conflict) goOnFrom(conflict.move);
    },
  };
}
