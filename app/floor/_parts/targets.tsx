"use client";
/** Four targets along the bottom edge. Ending asks once more, in the same place, and forgets it was asked after a while. */
import { type MouseEvent, useEffect, useState } from "react";
import styles from "./live-class.module.css";
import type { Act } from "./use-class.ts";

const ASKED_FOR_MS = 6000;

export function Targets({ held, onAct }: { held: boolean; onAct(act: Act): void }) {
  const [ending, setEnding] = useState(false);
  useEffect(() => {
    if (!ending) return;
    const over = setTimeout(() => setEnding(false), ASKED_FOR_MS);
    return () => clearTimeout(over);
  }, [ending]);
  /** A target that was touched must not keep the focus: the next key is for the class. */
  const act = (type: Act) => (event: MouseEvent<HTMLButtonElement>) => {
    if (event.detail > 0) event.currentTarget.blur();
    onAct(type);
  };
  return (
    <nav className={styles.targets} aria-label="The class">
      <button type="button" onClick={act("back")}>
        back
      </button>
      <button type="button" className={styles.hold} data-held={held} onClick={act(held ? "resume" : "hold")}>
        {held ? "go on" : "hold"}
      </button>
      <button type="button" onClick={act("next")}>
        next
      </button>
      {ending ? (
        <button type="button" className={styles.sure} onClick={act("end")}>
          end now?
        </button>
      ) : (
        <button type="button" onClick={() => setEnding(true)}>
          end
        </button>
      )}
    </nav>
  );
}
