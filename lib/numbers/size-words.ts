/** Sizes of files and disks in words. */

const MB = 1024 * 1024;

/** "12.3 MB", from a gigabyte on "1.2 GB"; both by 1,024. */
export const sizeWords = (bytes: number): string =>
  bytes >= 1024 * MB ? `${(bytes / 1024 / MB).toFixed(1)} GB` : `${(bytes / MB).toFixed(1)} MB`;
