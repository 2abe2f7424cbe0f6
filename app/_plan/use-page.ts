"use client";
/** What is open on a plan's page (view, panel, sheet, dialog), and what the page's commands do to it. */
import { type RefObject, useMemo, useRef, useState } from "react";
import { useMedia } from "#app/_parts/use-media.ts";
import { REHEARSALS_HASH } from "#app/_rehearsal/rehearsals-hash.ts";
import { type PageActs, pageActs } from "#app/_session/page-acts.tsx";
import type { PageCommand } from "#app/_session/plan-commands.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { focusMiddle, focusPanel } from "./focus.ts";
import { type PlanView, usePlanView } from "./use-plan-view.ts";

type OpenDialog = "add" | "paste" | "fit" | "order" | "rehearsals" | "legend" | null;

export interface Page {
  readonly view: PlanView;
  /** What is beside the plan elsewhere lies over it as a sheet. */
  readonly phone: boolean;
  /** The item whose plate is open on the rail. */
  readonly openId: string | null;
  /** What the panel shows, beside or over the plan; null while it is closed. */
  readonly panelShows: "class" | "item" | null;
  readonly dialog: OpenDialog;
  readonly panel: RefObject<HTMLElement | null>;
  readonly acts: PageActs;
  closeDialog(): void;
}

const PHONE = "(max-width: 759px)";

export function usePage(session: PlanSession, selectedId: string | null): Page {
  const phone = useMedia(PHONE);
  const [dialog, setDialog] = useState<OpenDialog>(() => (location.hash === REHEARSALS_HASH ? "rehearsals" : null));
  const [sheetOpen, setSheetOpen] = useState(false);
  /** The chosen item while its plate is closed: walked over by keys, or closed again. */
  const [shutId, setShutId] = useState<string | null>(null);
  const [view, openView] = usePlanView();
  const panel = useRef<HTMLElement>(null);
  const openId = view === "rail" && selectedId !== shutId ? selectedId : null;
  const shown = useRef({ view, phone, openId });
  shown.current = { view, phone, openId };
  const acts = useMemo(() => {
    const parts: Parts = { session, panel, shown, setDialog, setSheetOpen, setShutId, openView };
    return walking(pageActs(session, pageCommands(parts), { pick: picking(parts), show: showing(parts) }), parts);
  }, [session, openView]);
  const beside = view !== "rail" && selectedId !== null && (!phone || sheetOpen);
  const panelShows = beside ? "item" : sheetOpen && selectedId === null ? "class" : null;
  return { view, phone, openId, panelShows, dialog, panel, acts, closeDialog: () => setDialog(null) };
}

interface Parts {
  readonly session: PlanSession;
  readonly panel: RefObject<HTMLElement | null>;
  readonly shown: RefObject<Pick<Page, "view" | "phone" | "openId">>;
  readonly setDialog: (dialog: OpenDialog) => void;
  readonly setSheetOpen: (open: boolean) => void;
  readonly setShutId: (id: string | null) => void;
  readonly openView: (view: PlanView) => void;
}

/** A press opens the plate; on the open one it closes it. In another view, on a phone, it opens the sheet. */
const picking =
  ({ session, shown, setShutId, setSheetOpen }: Parts) =>
  (id: string) => {
    setShutId(shown.current.openId === id ? id : null);
    session.select(id);
    setSheetOpen(shown.current.view !== "rail");
  };

/** An item in its plate, elsewhere in the panel; null shows the class in the panel. */
const showing =
  ({ session, shown, setShutId, setSheetOpen }: Parts) =>
  (id: string | null) => {
    setShutId(null);
    session.select(id);
    setSheetOpen(id === null || shown.current.view !== "rail");
  };

const WALKING = ["item-before", "item-after", "first-item", "last-item"] as const;

/** Keys that go from plate to plate open none: what is read while going does not move. */
function walking(acts: PageActs, { session, setShutId }: Parts): PageActs {
  const walks = WALKING.map((command) => [
    command,
    () => {
      acts.run[command]();
      setShutId(session.getSnapshot().selectedId);
    },
  ]);
  return { ...acts, run: { ...acts.run, ...Object.fromEntries(walks) } };
}

function pageCommands(page: Parts): Readonly<Record<PageCommand, () => void>> {
  const { session, setSheetOpen } = page;
  const dialog = (which: OpenDialog) => () => page.setDialog(which);
  const view = (which: PlanView) => () => {
    setSheetOpen(false);
    page.openView(which);
  };
  const openItem = () => {
    page.setShutId(null);
    setSheetOpen(session.getSnapshot().selectedId === null || page.shown.current.view !== "rail");
    requestAnimationFrame(() => requestAnimationFrame(() => focusPanel(page.panel.current)));
  };
  const leavePanel = () => {
    const { selectedId } = session.getSnapshot();
    page.setShutId(selectedId);
    setSheetOpen(false);
    requestAnimationFrame(() => focusMiddle(selectedId));
  };
  const withNothingChosen = (then: () => void) => () => {
    session.select(null);
    then();
  };
  return {
    "open-item": openItem,
    "leave-panel": leavePanel,
    "choose-nothing": withNothingChosen(leavePanel),
    "show-class": withNothingChosen(openItem),
    add: dialog("add"),
    "add-after": dialog("add"),
    paste: dialog("paste"),
    "fewer-set-ups": dialog("order"),
    "block-in-fewer": dialog("order"),
    fit: dialog("fit"),
    rehearse: dialog("rehearsals"),
    legend: dialog("legend"),
    rail: view("rail"),
    "whole-class": view("whole-class"),
    "read-through": view("read-through"),
  };
}
