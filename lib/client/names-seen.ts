/**
 * Whose page a client id belongs to, by the name the server put on its presence. Names are remembered after people
 * leave, since their changes may arrive later. States of an unknown shape are skipped.
 */
import type { Awareness } from "y-protocols/awareness";
import * as z from "zod/mini";

const userSchema = z.object({ id: z.string(), name: z.string() });
const stateSchema = z.object({ user: userSchema });

/** Client ids with their people, as one page hands them to the next. */
export const namesSchema = z.array(z.tuple([z.number(), userSchema]));
export type Names = z.infer<typeof namesSchema>;

export class NamesSeen {
  private readonly users = new Map<number, z.infer<typeof userSchema>>();

  constructor(
    private readonly awareness: Pick<Awareness, "clientID" | "getStates" | "on" | "off">,
    /** This person's other windows count as theirs. */
    private readonly me: { readonly id: string },
  ) {
    this.note();
    awareness.on("change", this.note);
  }

  /** A name to begin a sentence with; undefined for a page that was never seen. */
  nameOf(clientId: number): string | undefined {
    const user = this.users.get(clientId);
    if (user?.id !== this.me.id) return user?.name;
    // A page of this person's that is gone may have been this very window, before it was loaded again.
    const isOther = clientId !== this.awareness.clientID && this.awareness.getStates().has(clientId);
    return isOther ? "You, in another window," : "You";
  }

  who(clientId: number): string {
    return this.nameOf(clientId) ?? "Somebody";
  }

  get all(): Names {
    return [...this.users];
  }

  /** Adds the names that an earlier page of this person had seen. */
  learn(names: Names): void {
    for (const [clientId, user] of names) if (!this.users.has(clientId)) this.users.set(clientId, user);
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
