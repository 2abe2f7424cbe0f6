"use client";
/** Arrow keys between the days of a month: one day takes the Tab key, and keys lead on from it. */
import { type KeyboardEvent, useState } from "react";
import { keyHandler } from "#app/_parts/commands/keys.ts";
import { type DayCommand, MONTH_COMMANDS } from "./month-commands.ts";

export function useDayKeys(days: readonly string[], today: string) {
  const [chosen, setChosen] = useState<string | null>(null);
  const current = chosen ?? (days.includes(today) ? today : (days[0] ?? ""));

  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    if (!(event.target instanceof HTMLElement)) return;
    const from = days.indexOf(event.target.closest<HTMLElement>("[data-date]")?.dataset.date ?? "");
    const box = event.currentTarget;
    const goTo = (index: number) => () => {
      const day = days[index];
      if (day === undefined) return;
      setChosen(day);
      box.querySelector<HTMLElement>(`[data-day="${day}"]`)?.focus();
    };
    const run: Readonly<Record<DayCommand, () => void>> = {
      "day-before": goTo(from - 1),
      "day-after": goTo(from + 1),
      "week-before": goTo(from - 7),
      "week-after": goTo(from + 7),
      "first-day": goTo(0),
      "last-day": goTo(days.length - 1),
    };
    if (from >= 0) keyHandler(MONTH_COMMANDS, "days", { run })(event);
  };
  return { current, onKeyDown };
}
