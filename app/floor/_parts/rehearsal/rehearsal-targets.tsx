"use client";
/** One great target for the tap, whose words say what it will mean, and the few others a rehearsal needs. */
import type { MouseEvent } from "react";
import type { TapMeaning } from "#lib/floor/rehearsal.ts";
import live from "../live-class.module.css";
import { useAsked } from "../use-asked.ts";
import styles from "./rehearsal.module.css";
import type { RunningRehearsal } from "./use-rehearsal.ts";

const TAP_WORDS: Readonly<Record<TapMeaning["kind"], string>> = {
  said: "said",
  "said-early": "said already",
  "set-up": "set-up done",
  nothing: "nothing to say now",
};

export function RehearsalTargets({ run }: { readonly run: RunningRehearsal }) {
  const [ending, askToEnd] = useAsked();
  const { held } = run.view;
  /** A target that was touched must not keep the focus: the next key is a tap. */
  const by = (act: () => void) => (event: MouseEvent<HTMLButtonElement>) => {
    if (event.detail > 0) event.currentTarget.blur();
    act();
  };
  return (
    <nav className={`${live.targets} ${styles.targets}`} aria-label="The rehearsal">
      <button type="button" className={styles.tap} data-meaning={run.meaning.kind} onClick={by(run.tap)}>
        {TAP_WORDS[run.meaning.kind]}
      </button>
      <button type="button" onClick={by(() => run.act("back"))}>
        back
      </button>
      <button
        type="button"
        disabled={run.waiting > 0}
        data-held={held}
        onClick={by(() => run.act(held ? "resume" : "hold"))}
      >
        {held && run.waiting === 0 ? "go on" : "hold"}
      </button>
      <button type="button" onClick={by(() => run.act("next"))} disabled={run.waiting > 0}>
        skip
      </button>
      <button
        type="button"
        className={ending ? live.sure : undefined}
        onClick={by(() => (ending ? run.act("end") : askToEnd()))}
      >
        {ending ? "end now?" : "end"}
      </button>
    </nav>
  );
}
