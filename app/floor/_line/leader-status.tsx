/** Beside the class's title on the screen that leads it: how many follow, who was lost, whether the line is there. */
import { followWords } from "#lib/line/line-words.ts";
import type { FloorLine } from "./use-line.ts";
import { hourMinuteSecond } from "./when.ts";

export function LeaderStatus({ line: { state } }: { line: FloorLine }) {
  const { line, you, contact, heardAt } = state;
  const words = line?.leader?.id === you && line ? followWords(line, you) : "";
  if (!words) return null;
  const gone = contact !== "on" && heardAt !== null;
  return <> · {gone ? `no contact since ${hourMinuteSecond(heardAt)}: the others run on` : words}</>;
}
