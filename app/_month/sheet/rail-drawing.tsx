/** Behind the classes: the hours, and each day's two steel lines laid flat, cut where nothing ever happens. Decoration. */
import type { AxisPiece } from "#lib/tide/time-axis.ts";
import type { TideDay } from "#lib/tide/types.ts";
import styles from "./sheet.module.css";
import type { SheetShown } from "./sheet-types.ts";

/** Of a day's height down to its rail, on a tablet in px. */
const TABLET_RAIL = 15;

export function RailDrawing({ shown }: { readonly shown: SheetShown }) {
  const { sheet, layout, tops } = shown;
  if (layout.kind === "phone") return null;
  const foot = tops.at(-1) ?? 0;
  return (
    <svg className={styles.railDrawing} width={layout.rail} height={foot} aria-hidden="true">
      {sheet.axis.ticks.map(({ minute, x }) => (
        <line key={minute} className={styles.hour} x1={x} x2={x} y1={0} y2={foot} />
      ))}
      {sheet.days.map((day, i) => (
        <DayLines key={day.date} day={day} shown={shown} top={tops[i] ?? 0} foot={tops[i + 1] ?? 0} />
      ))}
      <PairBracket shown={shown} />
    </svg>
  );
}

interface DayLinesProps {
  readonly day: TideDay;
  readonly shown: SheetShown;
  readonly top: number;
  readonly foot: number;
}

/** Where the rail of a day runs; with three rooms or more there is a line for each. */
function railsOf({ sheet, layout }: SheetShown, top: number, foot: number): number[] {
  if (layout.kind === "tablet") return [top + TABLET_RAIL];
  const lanes = sheet.rooms.length > 2 ? sheet.rooms.length : 1;
  if (lanes === 1) return [foot - 10.5];
  return Array.from({ length: lanes }, (_, i) => foot - (lanes - i) * 11 + 5);
}

function DayLines({ day, shown, top, foot }: DayLinesProps) {
  const { axis } = shown.sheet;
  const rails = railsOf(shown, top, foot);
  if (day.holiday !== null && day.marks.length === 0)
    return <rect className={styles.closed} x={4} width={axis.width - 8} y={(rails[0] ?? 0) - 6} height={12} />;
  if (day.marks.length === 0) return <path className={styles.idle} d={`M4 ${rails[0]}H${axis.width}`} />;
  return rails.map((y) => (
    <g key={y}>
      <path
        className={styles.steel}
        d={axis.pieces.map((piece, i) => twoLines(piece, i, axis, y, rails.length > 1)).join("")}
      />
      {axis.cuts.map((x) => (
        <path key={x} className={styles.cut} d={`M${x - 4} ${y + 4}l3 -8M${x + 1} ${y + 4}l3 -8`} />
      ))}
    </g>
  ));
}

function twoLines(piece: AxisPiece, i: number, axis: SheetShown["sheet"]["axis"], y: number, thin: boolean): string {
  const from = i === 0 ? 0 : piece.x0 - 6;
  const to = i === axis.pieces.length - 1 ? axis.width : piece.x1 + 6;
  return thin ? `M${from} ${y}H${to}` : `M${from} ${y - 1.5}H${to}M${from} ${y + 1.5}H${to}`;
}

/** Two classes of the chosen finding, tied together at the left of their marks. */
function PairBracket({ shown }: { readonly shown: SheetShown }) {
  const { finding, sheet, tops } = shown;
  const places = (finding?.slots ?? []).flatMap((id) =>
    sheet.days.flatMap(({ marks }, i) =>
      marks
        .filter(({ slot }) => slot.id === id)
        .map(({ x }) => ({ x, y: railsOf(shown, tops[i] ?? 0, tops[i + 1] ?? 0)[0] ?? 0 })),
    ),
  );
  const [first, last] = [places[0], places.at(-1)];
  if (!finding || places.length < 2 || !first || !last || first.y === last.y) return null;
  const x = Math.max(8, Math.min(...places.map((place) => place.x)) - 6);
  return (
    <g>
      <path className={styles.bracket} d={`M${x} ${first.y}h-5V${last.y}h5`} />
      {finding.says !== "" && shown.layout.kind === "laptop" && (
        <text className={styles.bracketWords} x={x - 9} y={(first.y + last.y) / 2 + 4} textAnchor="end">
          {finding.says}
        </text>
      )}
    </g>
  );
}
