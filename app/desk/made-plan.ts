/** What the routes that make a plan answer with. */
import * as z from "zod/mini";

export const madeSchema = z.object({ id: z.string() });
