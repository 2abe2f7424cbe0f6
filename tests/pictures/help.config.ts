/** `npm run -s pictures:help`: the pictures of help, light and dark, made anew in `app/help/pictures`. */
import { defineConfig } from "@playwright/test";
import usual from "./playwright.config.ts";

export default defineConfig({ ...usual, testMatch: "help.shots.ts" });
