"use client";
/** How a feature asks for what is the page's to do, without being handed a function for each. */
import { createContext, use } from "react";
import type { Command } from "#app/_parts/commands/command.ts";
import { CommandButton } from "#app/_parts/commands/command-button.tsx";
import { type ItemCommand, itemCommands } from "./item-commands.ts";
import { commandHolds, type PageCommand, PLAN_COMMANDS } from "./plan-commands.ts";
import type { PlanSession } from "./session.ts";

export interface PageActs {
  readonly session: PlanSession;
  /** By command: what the page does. */
  readonly run: Readonly<Record<PageCommand | ItemCommand, () => void>>;
  /** An item was pressed: its plate opens, or closes when it is open. */
  pick(itemId: string): void;
  /** Chooses an item and opens nothing. */
  stand(itemId: string): void;
  /** Opens an item, from anywhere; null opens the class. */
  show(itemId: string | null): void;
}

/** What the page itself provides; what is done with the chosen item is the same wherever it is asked for. */
export const pageActs = (
  session: PlanSession,
  page: Readonly<Record<PageCommand, () => void>>,
  choosing: Pick<PageActs, "pick" | "stand" | "show">,
): PageActs => ({ session, run: { ...page, ...itemCommands(session) }, ...choosing });

export const PageActsContext = createContext<PageActs | null>(null);

/** Inside a plan's page only. */
export function usePageActs(): PageActs {
  const acts = use(PageActsContext);
  if (acts === null) throw new Error("there is no plan's page around this");
  return acts;
}

interface PlanButtonProps {
  readonly command: PageCommand | ItemCommand;
  /** The view that is open, whose keys count, or the plan's page as a whole. */
  readonly place?: "rail" | "lanes" | "read" | "rounds" | "plan";
  readonly className?: string;
  readonly pressed?: boolean;
  readonly children?: React.ReactNode;
}

/** A button for a command of the plan; nothing where it could do nothing. */
export function PlanButton({ command, pressed, ...rest }: PlanButtonProps) {
  const { session, run } = usePageActs();
  const asked: Command = PLAN_COMMANDS.commands[command];
  if (!(asked.needs ?? []).every(commandHolds(session))) return null;
  return (
    <CommandButton
      command={asked}
      onRun={run[command]}
      {...rest}
      {...(pressed === undefined ? {} : { "aria-pressed": pressed })}
    />
  );
}
