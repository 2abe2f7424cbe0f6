export function bundleFloor(root: string, pages: string): Promise<void>;
export function watchFloor(root: string, pages: string): Promise<void>;
