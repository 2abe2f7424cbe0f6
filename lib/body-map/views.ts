/** The body as the paths of a picture: standing, from the front or the back; or lying, its head to the left. */
import type { Group } from "#lib/plan/schema.ts";
import { type BodyLayout, bodyLines, bodyOutline, groupRegions, SEEN_FROM, type SeenFrom } from "./body.ts";
import { type Bend, type MapPoint, pathOf } from "./lines/curve.ts";

export interface BodyView {
  /** What it is seen from; a lying body shows its front in the upper half and its back in the lower. */
  readonly name: SeenFrom | "lying";
  /** Room that the body takes, with a margin for its line. */
  readonly frame: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  readonly outline: string;
  readonly lines: readonly string[];
  readonly regions: readonly ViewRegion[];
}
export interface ViewRegion {
  readonly group: Group;
  /** The closed lines of all its parts, and the same as a path. */
  readonly parts: readonly (readonly Bend[])[];
  readonly d: string;
}

/** Where a point of the body falls in the picture. */
type Place = (point: MapPoint) => MapPoint;
const asDrawn: Place = (point) => point;
const mirrored: Place = ([x, y]) => [-x, y];
/** Head to the left, the half to the viewer's right upwards. */
const upperHalf: Place = ([x, y]) => [y, -x];
const lowerHalf: Place = ([x, y]) => [y, x];

/** Half of the width that the arms take, and the height. */
const HALF = { standing: 216, lying: 183 } as const;
const HEIGHT = 1004;
const MARGIN = 6;

function standingView(side: SeenFrom): BodyView {
  const width = 2 * (HALF.standing + MARGIN);
  return {
    name: side,
    frame: { x: -width / 2, y: -MARGIN, width, height: HEIGHT + 2 * MARGIN },
    outline: drawn(bodyOutline("standing"), [asDrawn], true),
    lines: bodyLines(side, "standing").map((line) => drawn(line, [asDrawn, mirrored], false)),
    regions: regionsOf(side, "standing", [asDrawn, mirrored]),
  };
}

function lyingView(): BodyView {
  const height = 2 * (HALF.lying + MARGIN);
  const halves = [
    { side: "front", place: upperHalf },
    { side: "back", place: lowerHalf },
  ] as const;
  return {
    name: "lying",
    frame: { x: -MARGIN, y: -height / 2, width: HEIGHT + 2 * MARGIN, height },
    outline: drawn(bodyOutline("lying"), [upperHalf], true),
    lines: halves.flatMap(({ side, place }) => bodyLines(side, "lying").map((line) => drawn(line, [place], false))),
    regions: halves.flatMap(({ side, place }) => regionsOf(side, "lying", [place])),
  };
}

const regionsOf = (side: SeenFrom, layout: BodyLayout, places: readonly Place[]): readonly ViewRegion[] =>
  groupRegions(side, layout).map(({ group, parts: half }) => {
    const parts = half.flatMap((part) => places.map((place) => placedLine(part, place)));
    return { group, parts, d: parts.map((part) => pathOf(part, true)).join("") };
  });

const drawn = (line: readonly Bend[], places: readonly Place[], close: boolean): string =>
  places.map((place) => pathOf(placedLine(line, place), close)).join("");

const placedLine = (line: readonly Bend[], place: Place): Bend[] => line.map((bend) => placed(bend, place));

const placed = ({ from, out, into, to }: Bend, place: Place): Bend => ({
  from: place(from),
  out: place(out),
  into: place(into),
  to: place(to),
});

/** By layout, the pictures that show all groups between them. */
export const BODY_VIEWS: Readonly<Record<BodyLayout, readonly BodyView[]>> = {
  standing: SEEN_FROM.map(standingView),
  lying: [lyingView()],
};
