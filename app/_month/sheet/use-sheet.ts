"use client";
/** The sheet as the page has room for it: its width and the heights of its days are measured, everything else is worked out. */
import { type RefObject, useEffect, useLayoutEffect, useMemo, useRef, useState } from "react";
import { useMedia } from "#app/_parts/use-media.ts";
import { HEAD_TO_FOOT } from "#lib/tide/columns.ts";
import { type TideLayout, tideLayout } from "#lib/tide/layout.ts";
import { daysBetween, hardestGroups, type TideOf, tideSheet } from "#lib/tide/sheet.ts";
import { SheetKept } from "#lib/tide/sheet-kept.ts";
import type { TideKind, TideSheet } from "#lib/tide/types.ts";
import { useMeasure } from "./measure.ts";

/** How many groups a phone has columns for beside the words. */
const FEW_GROUPS = 6;

export interface SheetOf extends Omit<TideOf, "groups"> {
  readonly allGroups: boolean;
  readonly allCoaches: boolean;
  /** In place of what the screen says: for paper. */
  readonly paper?: { readonly width: number } | undefined;
}

export interface MeasuredSheet {
  readonly sheet: TideSheet;
  readonly layout: TideLayout;
  readonly tops: readonly number[];
  /** What the sheet stands in, and the table's body. */
  readonly box: RefObject<HTMLDivElement | null>;
  readonly body: RefObject<HTMLTableSectionElement | null>;
}

export function useTideSheet(of: SheetOf): MeasuredSheet {
  const { month, sums, findings, regulars, rooms, allGroups, allCoaches, formats, holdsHours = false } = of;
  const kind = useKind(of.paper !== undefined);
  const [box, boxWidth] = useWidth();
  const measure = useMeasure(kind);
  const groups = useMemo(
    () => (kind === "phone" && !allGroups ? hardestGroups(sums, regulars, FEW_GROUPS) : HEAD_TO_FOOT),
    [kind, allGroups, sums, regulars],
  );
  const coaches = Object.keys(month.coaches).length;
  const width = of.paper?.width ?? boxWidth;
  const layout = useMemo(
    () => tideLayout({ kind, width, groups: groups.length, coaches, allCoaches, paper: of.paper !== undefined }),
    [kind, width, groups.length, coaches, allCoaches, of.paper],
  );
  const body = useRef<HTMLTableSectionElement>(null);
  const [tops, setTops] = useState<readonly number[]>([]);
  const [kept] = useState(() => new SheetKept());
  const sheet = useMemo(() => {
    const sizes = {
      kind,
      railWidth: layout.rail,
      groupWidth: layout.group,
      findingsWidth: layout.findings || layout.rail,
      tops,
      measure,
    };
    return tideSheet({ month, sums, findings, regulars, rooms, groups, holdsHours, formats }, sizes, kept);
  }, [kept, month, sums, findings, regulars, rooms, groups, holdsHours, formats, kind, layout, tops, measure]);
  const days = daysBetween(month.dates).length;
  // After every drawing: what a day says can make it taller.
  useLayoutEffect(() => {
    const now = topsOf(body.current, days);
    setTops((was) => (same(was, now) ? was : now));
  });
  return { sheet, layout, tops, box, body };
}

function useKind(paper: boolean): TideKind {
  const phone = useMedia("(max-width: 759px)");
  const narrow = useMedia("(max-width: 1179px)");
  const coarse = useMedia("(pointer: coarse)");
  if (paper) return "laptop";
  return phone ? "phone" : narrow || coarse ? "tablet" : "laptop";
}

function useWidth(): [RefObject<HTMLDivElement | null>, number] {
  const box = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => setWidth(box.current?.clientWidth ?? 0), []);
  useEffect(() => {
    const observer = new ResizeObserver(() => setWidth(box.current?.clientWidth ?? 0));
    if (box.current) observer.observe(box.current);
    return () => observer.disconnect();
  }, []);
  return [box, width];
}

function topsOf(body: HTMLTableSectionElement | null, days: number): number[] {
  if (!body || body.rows.length < days) return [];
  const top = body.getBoundingClientRect().top;
  const edges = [...body.rows].slice(0, days).map((row) => row.getBoundingClientRect());
  return [...edges.map((edge) => edge.top - top), (edges.at(-1)?.bottom ?? top) - top];
}

const same = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((n, i) => Math.abs(n - (b[i] ?? 0)) < 0.5);
