/** Beside the class's title on the screen that leads it: how many follow, who was lost, whether they can be reached. */
import { useFormats } from "#app/_parts/formats.tsx";
import { leaderStatusWords } from "./screens-words.ts";
import type { FloorLine } from "./use-line.ts";

export function LeaderStatus({ line }: { line: FloorLine }) {
  const words = leaderStatusWords(line, useFormats());
  return words ? <> · {words}</> : null;
}
