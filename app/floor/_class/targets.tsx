"use client";
/** The targets along the bottom edge. Undo is at the far left and says what it would undo; ending asks once more, in the same place. */
import type { MouseEvent, ReactNode } from "react";
import { useAsked } from "../_parts/use-asked.ts";
import type { RunningClass } from "../_parts/use-class.ts";
import styles from "./live-class.module.css";

interface Props {
  readonly live: RunningClass;
  /** Seconds that one touch of "more" adds. */
  readonly extendBy: number;
  onEndOnTime(): void;
}

export function Targets({ live, extendBy, onEndOnTime }: Props) {
  const { held } = live.view;
  return (
    <nav className={styles.targets} aria-label="The class">
      <Target className={styles.undo} disabled={!live.undoable} onAct={live.undo}>
        undo{live.undoable && <span>: {live.undoable.what}</span>}
      </Target>
      <Target onAct={() => live.act("back")}>back</Target>
      <Target className={styles.hold} held={held} onAct={() => live.act(held ? "resume" : "hold")}>
        {held ? "go on" : "hold"}
      </Target>
      <Target onAct={() => live.act("next")}>skip</Target>
      <Target className={styles.more} disabled={!live.canExtend} onAct={() => live.extend(extendBy)}>
        {extendBy} s more
      </Target>
      <Target onAct={onEndOnTime}>end on time</Target>
      <End onEnd={() => live.act("end")} />
    </nav>
  );
}

interface TargetProps {
  readonly className?: string | undefined;
  readonly held?: boolean;
  readonly disabled?: boolean;
  readonly children: ReactNode;
  onAct(): void;
}

/** A target that was touched gives up the focus: the next key is for the class. */
function Target({ className, held, disabled, children, onAct }: TargetProps) {
  const act = (event: MouseEvent<HTMLButtonElement>) => {
    if (event.detail > 0) event.currentTarget.blur();
    onAct();
  };
  return (
    <button type="button" className={className} data-held={held} disabled={disabled} onClick={act}>
      {children}
    </button>
  );
}

function End({ onEnd }: { onEnd(): void }) {
  const [ending, askToEnd] = useAsked();
  return ending ? (
    <button type="button" className={styles.sure} onClick={onEnd}>
      end now?
    </button>
  ) : (
    <button type="button" onClick={askToEnd}>
      end
    </button>
  );
}
