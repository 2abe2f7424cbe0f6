/** Keys that count anywhere on a plan's page: on the window, so that they also work while nothing has the focus. */
import { useEffect } from "react";
import { keyHandler } from "#app/_parts/commands/keys.ts";
import type { PageActs } from "#app/_session/page-acts.tsx";
import { commandHolds, PLAN_COMMANDS } from "#app/_session/plan-commands.ts";

export function usePageKeys({ session, run }: PageActs): void {
  useEffect(() => {
    const handle = keyHandler(PLAN_COMMANDS, "plan", { run, holds: commandHolds(session) });
    const onKeyDown = (event: KeyboardEvent) => {
      if (!document.querySelector("dialog[open]")) handle(event);
    };
    addEventListener("keydown", onKeyDown);
    return () => removeEventListener("keydown", onKeyDown);
  }, [session, run]);
}
