"use client";
/** A native dialog that opens when it is put on the page, and gives the focus back where it was. */
import { type RefObject, useEffect, useRef } from "react";

type Closer = RefObject<(() => void) | null>;

/**
 * Gives the dialog's `ref` and `onClose`, and a way to close it. `closer` is set to that way, and to null while there is
 * none. What is marked `data-first` has the focus at first; else the first thing that takes it.
 */
export function useOpenDialog(onClosed: () => void, closer?: Closer, element?: RefObject<HTMLDialogElement | null>) {
  const own = useRef<HTMLDialogElement>(null);
  const ref = element ?? own;
  useEffect(() => {
    const dialog = ref.current;
    if (!dialog) return;
    open(dialog);
    if (closer) closer.current = () => dialog.close();
    return () => {
      if (closer) closer.current = null;
      // Taken away while open (the state changed under it): closing first gives the focus back.
      if (dialog.open) dialog.close();
    };
  }, [closer, ref]);
  // A close that was followed by an opening (React mounts twice while developing) is none.
  const onClose = () => {
    if (ref.current?.open !== true) onClosed();
  };
  return { ref, onClose, close: () => ref.current?.close() };
}

function open(dialog: HTMLDialogElement): void {
  if (dialog.open) return;
  dialog.showModal();
  dialog.querySelector<HTMLElement>("[data-first]")?.focus();
}
