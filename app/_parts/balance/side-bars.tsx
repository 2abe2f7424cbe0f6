/** Left against right of the muscle groups: in the band, in the panel and in the whole class, by the same bars. */
import type { Balance } from "#lib/balance/balance.ts";
import { type GroupBar, groupBars } from "#lib/balance/uneven.ts";
import { groupShare, percent } from "#lib/formats/percent.ts";
import { plainNumber, tagWords } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { MirrorBars, type MirrorRow } from "./mirror-bars.tsx";

interface SideBarsProps {
  readonly plan: Pick<Plan, "theme">;
  readonly balance: Balance;
  /** At most this many groups, the lopsided ones first; all of them by default. */
  readonly most?: number;
  /** Bars without visible numbers, for a place of a few lines. */
  readonly narrow?: boolean;
}

const CAPTION = "Left against right, weighted seconds";

export function SideBars({ plan, balance, most, narrow = false }: SideBarsProps) {
  const bars = groupBars(plan, balance);
  const all = bars.reduce((sum, bar) => sum + bar.seconds, 0);
  const shown = most === undefined ? bars : urgentFirst(bars).slice(0, most);
  const heads = narrow ? {} : { heads: ["left", "right"] as const };
  return <MirrorBars caption={CAPTION} narrow={narrow} {...heads} rows={shown.map((bar) => rowOf(bar, all))} />;
}

/** Lopsided groups, then broken promises, then the most trained. */
function urgentFirst(bars: readonly GroupBar[]): GroupBar[] {
  const urgency = (bar: GroupBar) => 2 * Number(bar.lopsided) + Number(bar.missed);
  return bars.toSorted((a, b) => urgency(b) - urgency(a));
}

function rowOf(bar: GroupBar, all: number): MirrorRow {
  return {
    key: bar.group,
    label: tagWords(bar.group),
    left: bar.left,
    right: bar.right,
    leftWords: `${plainNumber(bar.left)} s`,
    rightWords: `${plainNumber(bar.right)} s`,
    wanted: bar.wanted === null ? undefined : (bar.wanted * all) / 2,
    share: groupShare(bar.share),
    note: noteOf(bar),
    uneven: bar.lopsided,
    missed: bar.missed,
  };
}

/** "the title promises 25% · 40 s more on the right". */
function noteOf({ wanted, lopsided, left, right }: GroupBar): string {
  const more = `${plainNumber(Math.abs(left - right))} s more on the ${left > right ? "left" : "right"}`;
  return [wanted !== null && `the title promises ${percent(wanted)}`, lopsided && more].filter(Boolean).join(" · ");
}
