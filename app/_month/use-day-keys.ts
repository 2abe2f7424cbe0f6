"use client";
/** Arrow keys between days: left and right a day, up and down a week, Home and End the month's first and last. */
import { type KeyboardEvent, useState } from "react";

const STEPS: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowRight: 1, ArrowUp: -7, ArrowDown: 7 };

export function useDayKeys(days: readonly string[], today: string) {
  const [chosen, setChosen] = useState<string | null>(null);
  const current = chosen ?? (days.includes(today) ? today : (days[0] ?? ""));

  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    if (event.altKey || event.ctrlKey || event.metaKey || !(event.target instanceof HTMLElement)) return;
    const from = days.indexOf(event.target.closest<HTMLElement>("[data-date]")?.dataset.date ?? "");
    const to = from < 0 ? undefined : days[target(event.key, from, days.length)];
    if (to === undefined) return;
    event.preventDefault();
    setChosen(to);
    event.currentTarget.querySelector<HTMLElement>(`[data-day="${to}"]`)?.focus();
  };
  return { current, onKeyDown };
}

/** Index of the day a key leads to; -1 for other keys and beyond the month. */
function target(key: string, from: number, count: number): number {
  if (key === "Home") return 0;
  if (key === "End") return count - 1;
  const step = STEPS[key];
  return step === undefined ? -1 : from + step;
}
