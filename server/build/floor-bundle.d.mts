import type { BuildOptions } from "esbuild";

export function bundleFloor(root: string, pages: string): Promise<void>;
export function watchFloor(root: string, pages: string): Promise<void>;
export function bundleSettings(root: string, out: string, dev: boolean): BuildOptions;
