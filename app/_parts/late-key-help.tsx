"use client";
/** Help in a page of the studio: its list is fetched once the page is idle. */
import { loadLater } from "#lib/client/late.ts";
import { KeyHelp } from "./key-help.tsx";

const lateKeyList = loadLater(() => import("./key-list.tsx").then(({ KeyList }) => KeyList));

export const LateKeyHelp = () => <KeyHelp list={lateKeyList} />;
