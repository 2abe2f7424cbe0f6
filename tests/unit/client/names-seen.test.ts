/** Whose page made a change: one's own is never told of as another window. */
import { expect, it } from "vitest";
import { Awareness, applyAwarenessUpdate, encodeAwarenessUpdate, removeAwarenessStates } from "y-protocols/awareness";
import * as Y from "yjs";
import { NamesSeen } from "#lib/client/names-seen.ts";

function pageOf(user: { id: string; name: string }): Awareness {
  const awareness = new Awareness(new Y.Doc());
  awareness.setLocalState({ user });
  return awareness;
}

it("says you for this page and for one that is gone, and another window only while there is one", () => {
  const [here, there, other] = [
    pageOf({ id: "marta", name: "Marta" }),
    pageOf({ id: "marta", name: "Marta" }),
    pageOf({ id: "ines", name: "Ines" }),
  ];
  const names = new NamesSeen(here, { id: "marta" });
  for (const page of [there, other]) applyAwarenessUpdate(here, encodeAwarenessUpdate(page, [page.clientID]), "wire");
  expect(names.who(here.clientID)).toBe("You");
  expect(names.who(there.clientID)).toBe("You, in another window,");
  expect(names.who(other.clientID)).toBe("Ines");
  removeAwarenessStates(here, [there.clientID], "wire");
  expect(names.who(there.clientID)).toBe("You");
  expect(names.who(1)).toBe("Somebody");
  for (const page of [here, there, other]) page.destroy();
});
