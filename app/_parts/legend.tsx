"use client";
/** What the marks mean, for the rail and for the whole class: each shown as it is drawn, with its word. */
import { type ReactNode, useEffect, useRef } from "react";
import { CoilMark } from "./coils/coil.tsx";
import dialogs from "./dialogs.module.css";
import styles from "./legend.module.css";

interface LegendProps {
  /** The whole class has marks of its own. */
  readonly lanes?: boolean;
  /** Smaller and in columns, for the print. */
  readonly paper?: boolean;
}

interface Entry {
  readonly key: string;
  readonly sign: ReactNode;
  readonly words: string;
}

const SIDES: readonly Entry[] = [
  { key: "left", sign: <i className={styles.block} data-shape="left" />, words: "rounded at the left: left side" },
  { key: "right", sign: <i className={styles.block} data-shape="right" />, words: "rounded at the right: right side" },
];
const COILS: Entry = {
  key: "coil",
  sign: (
    <>
      <CoilMark weight={1.1} />
      <CoilMark weight={3.4} />
    </>
  ),
  words: "a coil for each spring on, the thicker the stiffer",
};
const INK: readonly Entry[] = [
  { key: "ink", sign: <i className={styles.ink} />, words: "ink at the edge: how much of the time is talk" },
  { key: "over", sign: <i className={styles.ink} data-over />, words: "dark and hatched: more talk than time" },
  { key: "notch", sign: <i className={styles.notch} />, words: "notch: the heads-up" },
  { key: "gap", sign: <i className={styles.gap} />, words: "dotted gap: time to change, estimated; solid: planned" },
];
const PATTERNS: readonly Entry[] = (
  [
    ["push", "push"],
    ["pull", "pull"],
    ["trunk", "plank, flexion, extension, carry"],
    ["legs", "squat, hinge, lunge"],
    ["sides", "rotation, lateral"],
  ] as const
).map(([tint, words]) => ({ key: tint, sign: <i className={styles.pattern} data-tint={tint} />, words }));
const LANES: readonly Entry[] = [
  { key: "turn", sign: <i className={styles.turn} />, words: "dashes: springs change, put on and taken off" },
  {
    key: "talk",
    sign: <i className={styles.ink} data-over="lane" />,
    words: "talk above the line: more than there is time for",
  },
  { key: "voice", sign: <i className={styles.voice} />, words: "outlined speech: heads-up and count-in" },
  { key: "exhale", sign: <i className={styles.exhale} />, words: "thick half of a wave: breathe out" },
  { key: "muscle", sign: <i className={styles.weight} />, words: "high and dark: prime mover; half as high: helper" },
  { key: "must", sign: <i className={styles.mark} data-level="must" />, words: "must fix" },
  { key: "look", sign: <i className={styles.mark} data-level="look" />, words: "look again" },
  { key: "info", sign: <i className={styles.mark} data-level="info" />, words: "for information" },
];

export function Legend({ lanes = false, paper = false }: LegendProps) {
  const entries = lanes ? [...SIDES, ...PATTERNS, COILS, ...LANES] : [...SIDES, COILS, ...INK];
  return (
    <ul className={paper ? styles.paper : styles.list}>
      {entries.map(({ key, sign, words }) => (
        <li key={key}>
          <span className={styles.sign} aria-hidden="true">
            {sign}
          </span>
          {words}
        </li>
      ))}
    </ul>
  );
}

/** The same as a sheet over the page. */
export function LegendDialog({ lanes, onClose }: { lanes: boolean; onClose: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog ref={dialog} className={dialogs.dialog} aria-labelledby="marks-title" onClose={onClose}>
      <div className="dialog-head">
        <h2 id="marks-title">What the marks mean</h2>
        <button type="button" className="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
      <Legend lanes={lanes} />
      <p className="small quiet">
        No colour stands for a spring. What is red or ochre is also hatched, named or counted.
      </p>
    </dialog>
  );
}
