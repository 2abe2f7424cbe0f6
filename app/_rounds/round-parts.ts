/** Fetched after the page in one go. */
import { ChangesBar, ReadCount } from "./changes-bar.tsx";
import { Comparing } from "./comparing.ts";
import { PlateChangePart } from "./plate-change.tsx";

export const ROUND_PARTS = { comparing: Comparing, bar: ChangesBar, count: ReadCount, plate: PlateChangePart };
