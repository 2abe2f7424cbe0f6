"use client";
/** Undo and redo, as buttons. */
import { CommandButton } from "./command-button.tsx";
import { UNDO_COMMANDS } from "./common.ts";
import type { Undoes } from "./use-undo-keys.ts";

interface UndoButtonsProps {
  readonly session: Undoes;
  readonly can: { readonly canUndo: boolean; readonly canRedo: boolean };
  readonly className?: string;
}

export function UndoButtons({ session, can, className }: UndoButtonsProps) {
  return (
    <span className={className}>
      <UndoButton session={session} can={can} />
      <RedoButton session={session} can={can} />
    </span>
  );
}

export function RedoButton({ session, can }: Omit<UndoButtonsProps, "className">) {
  return (
    <CommandButton
      command={UNDO_COMMANDS.commands.redo}
      place="page"
      disabled={!can.canRedo}
      onRun={() => session.redo()}
    />
  );
}

export function UndoButton({ session, can }: Omit<UndoButtonsProps, "className">) {
  return (
    <CommandButton
      command={UNDO_COMMANDS.commands.undo}
      place="page"
      disabled={!can.canUndo}
      onRun={() => session.undo()}
    />
  );
}
