/** The sentence of a form that was sent without a role: beside the boxes, once, and nowhere before. */
import { renderToStaticMarkup } from "react-dom/server";
import { expect, test } from "vitest";
import { RoleBoxes } from "#app/people/role-boxes.tsx";
import { NO_ROLE } from "#lib/policy/can.ts";

test("the sentence stands once, in the group that it describes", () => {
  const html = renderToStaticMarkup(<RoleBoxes legend="Roles" problem={NO_ROLE} />);
  expect(html.split(NO_ROLE)).toHaveLength(2);
  const [, id] = /<fieldset aria-describedby="([^"]+)">/.exec(html) ?? [];
  expect(html).toContain(`<div id="${id}"><div role="alert"><p class="problem">${NO_ROLE}</p></div></div></fieldset>`);
  const before = renderToStaticMarkup(<RoleBoxes legend="Roles" problem={null} />);
  expect(before).toMatch(/^<fieldset><legend>/);
  expect(before).not.toContain(NO_ROLE);
});
