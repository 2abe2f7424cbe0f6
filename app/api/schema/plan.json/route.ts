import { planJsonSchema } from "#lib/plan/json-schema.ts";

/** The plan file's JSON Schema (2020-12), for editors and other programs; it holds nothing of the studio. */
export const dynamic = "force-static";
export const GET = () =>
  new Response(JSON.stringify(planJsonSchema(), null, 2), { headers: { "content-type": "application/schema+json" } });
