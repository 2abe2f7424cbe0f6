/** A count of springs that no page writes: the page stays a page. */
import { renderToStaticMarkup } from "react-dom/server";
import { expect, test } from "vitest";
import { Coils } from "#app/_parts/coils/coil.tsx";
import { MOST_OF_A_SPRING } from "#lib/plan/schema.ts";
import { exampleEquipment } from "#lib/rules/define/example-plan.ts";

test.each([100_000, 1e9, 2 ** 33, 1e308])("%d springs are drawn as the most there can be", (light) => {
  const html = renderToStaticMarkup(<Coils springs={{ light }} equipment={exampleEquipment} />);
  expect(html.match(/<svg/g)).toHaveLength(MOST_OF_A_SPRING);
});

test.each([-3, Number.NaN, 0])("%d springs are none", (light) => {
  expect(renderToStaticMarkup(<Coils springs={{ light }} equipment={exampleEquipment} />)).not.toContain("<svg");
});
