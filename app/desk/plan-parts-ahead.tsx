/** Lets the browser fetch, while the desk is read and nothing else is loading, the files that the first plan opened from it takes. */
import type { Env } from "#server/base/env.ts";
import { openPlanFiles } from "#server/http/plan-parts.ts";

export function PlanPartsAhead({ env }: { readonly env: Env }) {
  const { own, beside } = openPlanFiles(env);
  return [...own, ...beside].map((path) => (
    <link key={path} rel="prefetch" href={path} as={path.endsWith(".css") ? "style" : "script"} />
  ));
}
