/** Signing in and out, the present session and a new password; nothing else of the library answers. */
import { answerAuth } from "#server/auth/paths.ts";
import { writeRefusal } from "#server/http/respond.ts";
import { springline } from "#server/springline.ts";

export const dynamic = "force-dynamic";

const answer = async (request: Request) => {
  const app = springline();
  return writeRefusal(app, request) ?? answerAuth(app, request);
};

export { answer as DELETE, answer as GET, answer as PATCH, answer as POST, answer as PUT };
