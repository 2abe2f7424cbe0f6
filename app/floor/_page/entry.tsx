/**
 * Where the floor starts in the browser. A bundle of its own, outside the workspace's framework: a device in a room opens one
 * page, often over a poor wireless connection, and needs no router.
 */
import "@fontsource/atkinson-hyperlegible-next/400.css";
import "@fontsource/atkinson-hyperlegible-next/700.css";
import "@fontsource/atkinson-hyperlegible-mono/400.css";
import "@fontsource/atkinson-hyperlegible-mono/700.css";
import "../../look.css";
import "../../controls.css";
import "../../shared.css";
import "../floor.css";
import { createRoot } from "react-dom/client";
import { KeyHelp } from "../../_parts/key-help.tsx";
import { KeyList } from "../../_parts/key-list.tsx";
import { FloorApp } from "./floor-app.tsx";
import { Mishap } from "./mishap.tsx";

/** In the page from the start: a device has it with no network. */
const KEY_LIST = { here: KeyList, fetch: () => Promise.resolve(KeyList) };

const main = document.querySelector("main");
if (main)
  createRoot(main).render(
    <Mishap>
      <FloorApp />
      <KeyHelp list={KEY_LIST} />
    </Mishap>,
  );
