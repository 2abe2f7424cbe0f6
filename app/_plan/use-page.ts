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
  /** There is room for the margin beside the rail. */
  readonly wide: boolean;
  /** The panel lies over the plan as a sheet. */
  readonly phone: boolean;
  readonly sheetOpen: boolean;
  readonly dialog: OpenDialog;
  readonly panel: RefObject<HTMLElement | null>;
  readonly acts: PageActs;
  openSheet(): void;
  closeDialog(): void;
}

const WIDE = "(min-width: 1180px)";
const PHONE = "(max-width: 759px)";

export function usePage(session: PlanSession): Page {
  const wide = useMedia(WIDE);
  const phone = useMedia(PHONE);
  const [dialog, setDialog] = useState<OpenDialog>(() => (location.hash === REHEARSALS_HASH ? "rehearsals" : null));
  const [sheetOpen, setSheetOpen] = useState(false);
  const [view, openView] = usePlanView();
  const panel = useRef<HTMLElement>(null);
  const acts = useMemo(() => {
    const run = pageCommands({ session, panel, setDialog, setSheetOpen, openView });
    return pageActs(session, run, (id) => {
      session.select(id);
      if (phone) setSheetOpen(true);
    });
  }, [session, phone, openView]);
  return {
    ...{ view, wide, phone, sheetOpen, dialog, panel, acts },
    openSheet: () => setSheetOpen(true),
    closeDialog: () => setDialog(null),
  };
}

interface Parts {
  readonly session: PlanSession;
  readonly panel: RefObject<HTMLElement | null>;
  readonly setDialog: (dialog: OpenDialog) => void;
  readonly setSheetOpen: (open: boolean) => void;
  readonly openView: (view: PlanView) => void;
}

function pageCommands(page: Parts): Readonly<Record<PageCommand, () => void>> {
  const { session, setSheetOpen } = page;
  const dialog = (which: OpenDialog) => () => page.setDialog(which);
  const view = (which: PlanView) => () => {
    setSheetOpen(false);
    page.openView(which);
  };
  const openItem = () => {
    setSheetOpen(true);
    requestAnimationFrame(() => focusPanel(page.panel.current));
  };
  const leavePanel = () => {
    setSheetOpen(false);
    requestAnimationFrame(() => focusMiddle(session.getSnapshot().selectedId));
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
