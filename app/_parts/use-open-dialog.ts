"use client";
/** A native dialog that opens when it is put on the page. Escape closes it, and the focus goes back where it was. */
import { type RefObject, useEffect, useRef } from "react";

/** Opens it, once. What is marked `data-first` has the focus then; else the first thing that takes it. */
export function openDialog(dialog: HTMLDialogElement): void {
  if (dialog.open) return;
  dialog.showModal();
  dialog.querySelector<HTMLElement>("[data-first]")?.focus();
}

/**
 * Gives the dialog's `ref` and `onClose`. `closer` is set to a way to close it from inside, and to null while there is none.
 */
export function useOpenDialog(closer: RefObject<(() => void) | null>, onClosed: () => void) {
  const ref = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const own = ref.current;
    if (!own) return;
    openDialog(own);
    closer.current = () => own.close();
    return () => {
      closer.current = null;
      // Taken away while open (the state changed under it): closing first gives the focus back.
      if (own.open) own.close();
    };
  }, [closer]);
  // A close that was followed by an opening (React mounts twice while developing) is none.
  const onClose = () => {
    if (ref.current?.open !== true) onClosed();
  };
  return { ref, onClose };
}
