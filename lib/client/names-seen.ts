/**
 * Whose page a client id is, by the name the server put on its presence; remembered when they have gone, since what they
 * did may arrive after them. States of a foreign shape are passed over.
 */
import type { Awareness } from "y-protocols/awareness";
import * as z from "zod";

const stateSchema = z.object({ user: z.object({ id: z.string(), name: z.string() }) });

export class NamesSeen {
  private readonly users = new Map<number, { readonly id: string; readonly name: string }>();

  constructor(
    private readonly awareness: Pick<Awareness, "getStates" | "on" | "off">,
    /** Their own other pages are theirs. */
    private readonly me: { readonly id: string },
  ) {
    this.note();
    awareness.on("change", this.note);
  }

  /** To begin a sentence with. */
  who(clientId: number): string {
    const user = this.users.get(clientId);
    if (!user) return "Somebody";
    return user.id === this.me.id ? "You, in another window," : user.name;
  }

  stop(): void {
    this.awareness.off("change", this.note);
  }

  private readonly note = (): void => {
    for (const [clientId, state] of this.awareness.getStates()) {
      const parsed = stateSchema.safeParse(state);
      if (parsed.success) this.users.set(clientId, parsed.data.user);
    }
  };
}
