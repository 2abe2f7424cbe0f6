/** What the commands of a plan's page do: what they open, and where the keyboard then is. */
import type { RefObject } from "react";
import { takeProposed } from "#app/_draft/draft-acts.ts";
import { isAnyLeft, nextChanged } from "#app/_session/changes-shown.ts";
import type { PageActs } from "#app/_session/page-acts.tsx";
import type { PageCommand } from "#app/_session/plan-commands.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { focusMiddle, focusPanel, focusPlate, focusRounds, startComment } from "./focus.ts";
import type { PlanView } from "./use-plan-view.ts";

export type OpenDialog =
  | "add"
  | "paste"
  | "fit"
  | "order"
  | "rehearsals"
  | "legend"
  | "propose"
  | "propose-order"
  | "proposals"
  | null;

export interface Parts {
  readonly session: PlanSession;
  readonly panel: RefObject<HTMLElement | null>;
  /** What is on the screen just now. */
  readonly shown: RefObject<{ readonly view: PlanView; readonly openId: string | null }>;
  readonly setDialog: (dialog: OpenDialog) => void;
  readonly setSheetOpen: (open: boolean) => void;
  readonly setShutId: (id: string | null) => void;
  readonly openView: (view: PlanView) => void;
}

/** A press opens the plate; on the open one it closes it. In another view, on a phone, it opens the sheet. */
export const picking =
  ({ session, shown, setShutId, setSheetOpen }: Parts) =>
  (id: string) => {
    setShutId(shown.current.openId === id ? id : null);
    session.select(id);
    setSheetOpen(shown.current.view !== "rail");
  };

export const choosing =
  ({ session, setShutId }: Parts) =>
  (id: string) => {
    setShutId(id);
    session.select(id);
  };

/** An item in its plate, elsewhere in the panel; null shows the class in the panel. */
export const showing =
  ({ session, shown, setShutId, setSheetOpen }: Parts) =>
  (id: string | null) => {
    setShutId(null);
    session.select(id);
    setSheetOpen(id === null || shown.current.view !== "rail");
  };

const WALKING = ["item-before", "item-after", "first-item", "last-item"] as const;

/** Keys that go from plate to plate open none: what is read while going does not move. */
export function walking(acts: PageActs, { session, setShutId }: Parts): PageActs {
  const walks = WALKING.map((command) => [
    command,
    () => {
      acts.run[command]();
      setShutId(session.getSnapshot().selectedId);
    },
  ]);
  return { ...acts, run: { ...acts.run, ...Object.fromEntries(walks) } };
}

type Commands = Readonly<Record<PageCommand, () => void>>;

export const pageCommands = (page: Parts, goToFinding: () => void): Commands => ({
  ...panelCommands(page),
  ...dialogCommands(page),
  ...viewCommands(page),
  "next-finding": goToFinding,
  ...changedCommands(page),
  "take-draft": () => {
    const { selectedId } = page.session.getSnapshot();
    if (selectedId !== null) takeProposed(page.session, selectedId);
  },
});

function panelCommands({ session, shown, panel, setShutId, setSheetOpen }: Parts) {
  const openAt = (focus: (panel: HTMLElement | null) => void) => () => {
    setShutId(null);
    setSheetOpen(session.getSnapshot().selectedId === null || shown.current.view !== "rail");
    requestAnimationFrame(() => requestAnimationFrame(() => focus(panel.current)));
  };
  const leavePanel = () => {
    const { selectedId } = session.getSnapshot();
    setShutId(selectedId);
    setSheetOpen(false);
    requestAnimationFrame(() => focusMiddle(selectedId));
  };
  const withNothingChosen = (then: () => void) => () => {
    session.select(null);
    then();
  };
  const openItem = openAt((opened) => (shown.current.view === "rail" ? focusPlate : focusPanel)(opened));
  return {
    "open-item": openItem,
    comment: openAt(startComment),
    "leave-panel": leavePanel,
    "choose-nothing": withNothingChosen(leavePanel),
    "show-class": withNothingChosen(openItem),
  };
}

/** From changed plate to changed plate: each opens, and the keyboard stays on the rail, or comes there from nowhere. */
function changedCommands(page: Parts) {
  const { session } = page;
  const go = (by: 1 | -1) => () => {
    const { plan, selectedId } = session.getSnapshot();
    const places = plan.items.map(({ id }) => id);
    const next = nextChanged(session.changes.get(), places, selectedId, by);
    if (next === undefined) return;
    showing(page)(next);
    if (document.activeElement === document.body) requestAnimationFrame(() => focusMiddle(next));
  };
  const markRead = () => {
    const { selectedId } = session.getSnapshot();
    const changes = session.changes.get();
    if (selectedId === null) return;
    const on = changes.marks.get(selectedId)?.read !== true;
    changes.setRead?.(selectedId, on);
    if (!on) return session.say(NOT_READ);
    if (isAnyLeft(changes, selectedId)) go(1)();
    else session.say(ALL_READ);
  };
  return { "next-changed": go(1), "changed-before": go(-1), "mark-read": markRead };
}
const ALL_READ = "All changed plates are read.";
const NOT_READ = "The plate is marked as not read.";

function dialogCommands({ setDialog }: Parts) {
  const opening = (which: OpenDialog) => () => setDialog(which);
  return {
    add: opening("add"),
    "add-after": opening("add"),
    paste: opening("paste"),
    "fewer-set-ups": opening("order"),
    "block-in-fewer": opening("order"),
    fit: opening("fit"),
    rehearse: opening("rehearsals"),
    propose: opening("propose"),
    "propose-order": opening("propose-order"),
    proposals: opening("proposals"),
    legend: opening("legend"),
  };
}

function viewCommands({ setSheetOpen, openView }: Parts) {
  const view = (which: PlanView) => () => {
    setSheetOpen(false);
    openView(which);
  };
  const rounds = () => {
    view("rounds")();
    focusRounds();
  };
  return {
    rail: view("rail"),
    "whole-class": view("whole-class"),
    "read-through": view("read-through"),
    rounds,
  };
}
