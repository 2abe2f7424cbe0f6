/** Signing in and out, the present session and a new password; nothing else of the library answers. */

import { springline } from "#server/context/springline.ts";
import { writeRefusal } from "#server/http/respond.ts";
import { answerAuth } from "#server/people/auth-routes.ts";

export const dynamic = "force-dynamic";

const answer = async (request: Request) => {
  const app = springline();
  return writeRefusal(app, request) ?? answerAuth(app, request);
};

export { answer as DELETE, answer as GET, answer as PATCH, answer as POST, answer as PUT };
