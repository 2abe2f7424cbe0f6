/** The studio's zone, week, and how dates and units are written for who has not chosen. */
import { guarded, needs } from "#server/http/respond.ts";
import {
  changeStudioFormats,
  showStudioFormats,
  studioFormatsChangeSchema,
} from "#server/studio/change-studio-formats.ts";

export const GET = guarded({ first: needs("standards.manage") }, ({ app, actor }) => showStudioFormats(app, actor));
export const PUT = guarded(
  { body: studioFormatsChangeSchema, first: needs("standards.manage") },
  ({ app, actor, body }) => changeStudioFormats(app, actor, body),
);
