/** Somebody else's caret: a bar and the name that the server knows. People are told apart by name, never by colour. */
import * as z from "zod/mini";

const userSchema = z.object({ id: z.string(), name: z.string() });

export function drawCaret(user: unknown): HTMLElement {
  const parsed = userSchema.safeParse(user);
  const caret = document.createElement("span");
  caret.className = "script-caret";
  caret.setAttribute("aria-hidden", "true");
  const name = document.createElement("span");
  name.className = "script-caret-name";
  name.textContent = parsed.success ? parsed.data.name : "somebody";
  caret.append(name);
  return caret;
}
