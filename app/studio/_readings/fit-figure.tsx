"use client";
/** The readings as points, the line through them, and how far each is off it: force over travel. */
import { useFormats } from "#app/_parts/formats.tsx";
import type { Formats } from "#lib/formats/formats.ts";
import { forceWords, stiffnessWords, toNewtons } from "#lib/formats/units.ts";
import { plainNumber } from "#lib/plan/format.ts";
import { fromMm, type KeptReading } from "#lib/springs/readings.ts";
import { niceTicks } from "./nice-ticks.ts";
import styles from "./readings.module.css";
import type { SheetDraft, SheetRead } from "./sheet-draft.ts";

const WIDTH = 380;
const HEIGHT = 270;
const LEFT = 44;
const BOTTOM = 40;
const TOP = 14;
const RIGHT = 14;

interface FigureProps {
  readonly draft: SheetDraft;
  readonly read: SheetRead;
  readonly label: string;
}

interface Dot {
  readonly row: number;
  readonly reading: KeptReading;
}

export function FitFigure({ draft, read, label }: FigureProps) {
  const f = useFormats();
  const dots = draft.rows.flatMap(({ row }): Dot[] => {
    const typed = read.rows.get(row);
    return typed?.kind === "reading" ? [{ row, reading: typed.reading }] : [];
  });
  const scale = scaleOf(dots, fromUnit(draft), f);
  const { x, y } = scale;
  const { line } = read;
  const onLine = (mm: number) => (line ? line.preloadN + line.stiffnessNPerMm * mm : 0);
  return (
    <svg
      className={styles.figure}
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={figureWords(read, label, f)}
    >
      <Axes scale={scale} unit={fromUnit(draft)} unitWords={draft.travelUnit} forceUnit={f.force} />
      {line && <Line from={[x(0), y(onLine(0))]} to={[x(scale.xMost), y(onLine(scale.xMost))]} floor={y(0)} />}
      {dots.map(({ row, reading }) => {
        const at = [x(reading.travelMm), y(reading.newtons)] as const;
        const off = line && !reading.leftOut;
        return (
          <g key={row} data-left-out={reading.leftOut} data-doubtful={read.doubtful === row || undefined}>
            {off && <line className={styles.off} x1={at[0]} x2={at[0]} y1={at[1]} y2={y(onLine(reading.travelMm))} />}
            {read.doubtful === row && <circle className={styles.ring} cx={at[0]} cy={at[1]} r={10} />}
            <circle className={styles.dot} cx={at[0]} cy={at[1]} r={4.5} />
          </g>
        );
      })}
    </svg>
  );
}

interface FigureScale {
  /** In the unit the travel is typed in. */
  readonly xTicks: readonly number[];
  /** In the reader's unit of force. */
  readonly yTicks: readonly number[];
  /** Millimetres at the right edge. */
  readonly xMost: number;
  /** From millimetres and newtons to the drawing. */
  x(mm: number): number;
  y(newtons: number): number;
  /** Newtons of a tick. */
  tickNewtons(tick: number): number;
}

function scaleOf(dots: readonly Dot[], unit: number, { force }: Formats): FigureScale {
  const forceUnit = toNewtons(1, force);
  const xTicks = niceTicks(Math.max(100, ...dots.map((d) => d.reading.travelMm)) / unit);
  const yTicks = niceTicks(Math.max(10, ...dots.map((d) => d.reading.newtons)) / forceUnit);
  const [xMost, yMost] = [(xTicks.at(-1) ?? 1) * unit, (yTicks.at(-1) ?? 1) * forceUnit];
  return {
    xTicks,
    yTicks,
    xMost,
    x: (mm) => LEFT + (mm / xMost) * (WIDTH - LEFT - RIGHT),
    tickNewtons: (tick) => tick * forceUnit,
    y: (newtons) => HEIGHT - BOTTOM - (newtons / yMost) * (HEIGHT - BOTTOM - TOP),
  };
}

interface AxesProps {
  readonly scale: FigureScale;
  /** Millimetres. */
  readonly unit: number;
  readonly unitWords: string;
  readonly forceUnit: string;
}

function Axes({ scale: { xTicks, yTicks, x, y, tickNewtons }, unit, unitWords, forceUnit }: AxesProps) {
  return (
    <>
      {yTicks.map((tick) => (
        <g key={tick}>
          <line
            className={styles.grid}
            x1={LEFT}
            x2={WIDTH - RIGHT}
            y1={y(tickNewtons(tick))}
            y2={y(tickNewtons(tick))}
          />
          <text x={LEFT - 6} y={y(tickNewtons(tick)) + 4} textAnchor="end">
            {plainNumber(tick)}
          </text>
        </g>
      ))}
      {xTicks.map((tick) => (
        <text key={tick} x={x(tick * unit)} y={HEIGHT - BOTTOM + 16} textAnchor="middle">
          {plainNumber(tick)}
        </text>
      ))}
      <text x={WIDTH - RIGHT} y={HEIGHT - 6} textAnchor="end">
        travel, {unitWords}
      </text>
      <text x={4} y={HEIGHT - 6}>
        force, {forceUnit}
      </text>
    </>
  );
}

/** Millimetres in the unit the travel is typed in. */
const fromUnit = ({ travelUnit }: SheetDraft): number => 1 / fromMm(1, travelUnit);

interface LineProps {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  /** Where the force is 0: the line is cut off there. */
  readonly floor: number;
}

function Line({ from, to, floor }: LineProps) {
  const below = from[1] > floor;
  const cut = below ? from[0] + ((to[0] - from[0]) * (from[1] - floor)) / (from[1] - to[1]) : from[0];
  return <line className={styles.line} x1={cut} y1={below ? floor : from[1]} x2={to[0]} y2={Math.max(TOP, to[1])} />;
}

function figureWords(read: SheetRead, label: string, f: Formats): string {
  const { counted, line } = read;
  if (counted.length === 0) return `Force over travel of ${label}: no reading yet.`;
  const drawn = line
    ? ` and the line through them: ${stiffnessWords(line.stiffnessNPerMm, f)}, ${forceWords(line.preloadN, f, true)} at the start.`
    : ".";
  return `Force over travel of ${label}: ${counted.length} readings${drawn}`;
}
