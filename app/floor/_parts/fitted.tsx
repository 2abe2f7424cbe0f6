"use client";
/**
 * A part of the screen whose words fit it: tries sizes until nothing is cut (`lib/floor/screen-fit.ts` says which, in which order)
 * and says what gave way. Inside, `--main` is the type of what matters, `--side` of the rest, `--figure` of the seconds;
 * `data-gives={1}` is left out first, then 2; `data-fit` is looked at for words wider than their box.
 */
import { type ReactNode, useLayoutEffect, useRef } from "react";
import { droppedPartsWords, type LayoutTrial, ladders } from "#lib/floor/screen-fit.ts";
import styles from "./fitted.module.css";

interface Props {
  readonly className?: string | undefined;
  readonly label?: string;
  readonly distanceM: number;
  /** Fitted again when this changes: all that is shown, the seconds' figures as their number only. */
  readonly text: string;
  /** The largest sizes, from the room there is, CSS px. */
  sizes(width: number, height: number): { readonly main: number; readonly figure: number };
  /** Names of the parts that may give way, the first to go first. */
  readonly gives: readonly string[];
  readonly children: ReactNode;
}

export function Fitted({ className, label, distanceM, text, sizes, gives, children }: Props) {
  const box = useRef<HTMLElement>(null);
  const note = useRef<HTMLParagraphElement>(null);
  const asked = useRef({ sizes, gives, distanceM });
  asked.current = { sizes, gives, distanceM };
  // biome-ignore lint/correctness/useExhaustiveDependencies: the text is not read here, but what it fills is measured
  useLayoutEffect(() => {
    const element = box.current;
    const says = note.current;
    if (!element || !says) return;
    const choose = () => fitInto(element, says, asked.current);
    choose();
    const observer = new ResizeObserver(choose);
    observer.observe(element);
    document.fonts.ready.then(choose);
    return () => observer.disconnect();
  }, [distanceM, text]);
  return (
    <section ref={box} className={`${styles.fitted} ${className ?? ""}`} aria-label={label}>
      {children}
      <p ref={note} className={styles.note} data-gave-way />
    </section>
  );
}

function fitInto(
  box: HTMLElement,
  note: HTMLElement,
  { sizes, gives, distanceM }: Pick<Props, "sizes" | "gives" | "distanceM">,
): void {
  const { main, figure } = sizes(box.clientWidth, box.clientHeight);
  const take = (trial: LayoutTrial) => {
    box.style.setProperty("--main", `${trial.main}px`);
    box.style.setProperty("--side", `${trial.side}px`);
    box.style.setProperty("--figure", `${trial.figure}px`);
    box.dataset.gone = String(trial.gone);
    note.textContent = droppedPartsWords(trial, gives, distanceM);
  };
  const fits = (trial: LayoutTrial | undefined): boolean => {
    if (trial) take(trial);
    return trial !== undefined && hasRoom(box);
  };
  const ladder = ladders({ distanceM, mainMax: main, figureMax: figure, parts: gives.length }).find((one) =>
    fits(one.at(-1)),
  );
  if (ladder) fits(ladder[firstThat(ladder.length, (n) => fits(ladder[n]))]);
}

/** The first of `length` places at which `holds` does, which then holds at every later one; the last holds. */
function firstThat(length: number, holds: (n: number) => boolean): number {
  let [low, high] = [0, length - 1];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

function hasRoom(box: HTMLElement): boolean {
  if (box.scrollHeight > box.clientHeight + 1 || box.scrollWidth > box.clientWidth + 1) return false;
  for (const part of box.querySelectorAll("[data-fit]")) if (part.scrollWidth > part.clientWidth + 1) return false;
  return true;
}
