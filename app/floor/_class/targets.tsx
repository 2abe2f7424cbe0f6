"use client";
/** The targets along the bottom edge. Ending asks once more, in the same place; undo says what it would take back. */
import type { MouseEvent } from "react";
import { useAsked } from "../_parts/use-asked.ts";
import type { RunningClass } from "../_parts/use-class.ts";
import styles from "./live-class.module.css";

interface Props {
  readonly live: RunningClass;
  /** Seconds that one touch of `extend` gives. */
  readonly extendBy: number;
  onEndOnTime(): void;
}

export function Targets({ live, extendBy, onEndOnTime }: Props) {
  const { held } = live.view;
  const [ending, askToEnd] = useAsked();
  /** A target that was touched must not keep the focus: the next key is for the class. */
  const by = (act: () => void) => (event: MouseEvent<HTMLButtonElement>) => {
    if (event.detail > 0) event.currentTarget.blur();
    act();
  };
  return (
    <nav className={styles.targets} aria-label="The class">
      <button type="button" onClick={by(() => live.act("back"))}>
        back
      </button>
      <button
        type="button"
        className={styles.hold}
        data-held={held}
        onClick={by(() => live.act(held ? "resume" : "hold"))}
      >
        {held ? "go on" : "hold"}
      </button>
      <button type="button" onClick={by(() => live.act("next"))}>
        skip
      </button>
      <button type="button" disabled={!live.canExtend} onClick={by(() => live.extend(extendBy))}>
        {extendBy} s more
      </button>
      <button type="button" onClick={by(onEndOnTime)}>
        end on time
      </button>
      <button type="button" className={styles.undo} disabled={!live.undoable} onClick={by(live.undo)}>
        undo{live.undoable && <span>: {live.undoable.what}</span>}
      </button>
      {ending ? (
        <button type="button" className={styles.sure} onClick={() => live.act("end")}>
          end now?
        </button>
      ) : (
        <button type="button" onClick={askToEnd}>
          end
        </button>
      )}
    </nav>
  );
}
