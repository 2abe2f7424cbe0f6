/** The proposal that this page took last: its sign offers to undo it. */
let last: string | null = null;

export function noteTaken(id: string): void {
  last = id;
}
export const isTakenHere = (id: string): boolean => last === id;
