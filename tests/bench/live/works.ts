/** Every live work, in the order of the table. */
import type { Work } from "./work.ts";
import { burst } from "./works/burst.ts";
import { evening } from "./works/evening.ts";
import { idle } from "./works/idle.ts";
import { join } from "./works/join.ts";
import { monthScreen } from "./works/month-screen.ts";
import { open } from "./works/open.ts";
import { writersOf } from "./works/writers.ts";

export const WORKS: readonly Work[] = [evening, ...[2, 20, 50].map(writersOf), burst, join, open, idle, monthScreen];
