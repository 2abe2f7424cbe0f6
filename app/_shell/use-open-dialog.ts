"use client";
/** A native dialog that opens when it is put on the page. Escape closes it, and the focus goes back where it was. */
import { type RefObject, useEffect, useRef } from "react";

/**
 * What is marked `data-first` has the focus then; else the first thing that takes it. Gives the dialog's `ref` and `onClose`. `closer` is set to a way to close it from inside, and to null while there is none.
 */
export function useOpenDialog(closer: RefObject<(() => void) | null>, onClosed: () => void) {
  const ref = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const own = ref.current;
    if (!own) return;
    if (!own.open) {
      own.showModal();
      own.querySelector<HTMLElement>("[data-first]")?.focus();
    }
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
