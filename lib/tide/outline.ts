/** The outline of a drop as SVG path data: flat at its hour, thinning to nothing as the rest runs out. */
import type { TideDrop } from "./types.ts";

const px = (n: number) => Math.round(n * 10) / 10;

export function dropOutline({ x, width, top, end }: Pick<TideDrop, "x" | "width" | "top" | "end">): string {
  const half = width / 2;
  const [left, right, height] = [px(x - half), px(x + half), end - top];
  const [shoulder, waist] = [px(top + height * 0.42), px(top + height * 0.72)];
  const near = px(half * 0.62);
  return [
    `M${left} ${px(top)}H${right}`,
    `C${right} ${shoulder} ${px(x + near)} ${waist} ${px(x)} ${px(end)}`,
    `C${px(x - near)} ${waist} ${left} ${shoulder} ${left} ${px(top)}Z`,
  ].join("");
}
