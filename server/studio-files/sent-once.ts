/** A file that is read once, from its beginning to its end, and closed however that ends. */
import type { FileHandle } from "node:fs/promises";

const AT_ONCE = 64 * 1024;

/** Closes `handle` at the end, on an error, when the reader cancels, and when `gone` fires, though nobody ever read. */
export function sentOnce(handle: FileHandle, gone?: AbortSignal): ReadableStream<Uint8Array> {
  let closing: Promise<void> | undefined;
  const close = () => {
    closing ??= handle.close();
    return closing;
  };
  return new ReadableStream<Uint8Array>(
    {
      start(controller) {
        const leave = () => {
          controller.error(gone?.reason);
          // The file is gone from the disk and was only read: nothing is lost if it cannot be closed.
          close().catch(() => undefined);
        };
        if (gone?.aborted) leave();
        else gone?.addEventListener("abort", leave, { once: true });
      },
      async pull(controller) {
        try {
          const { bytesRead, buffer } = await handle.read(Buffer.alloc(AT_ONCE), 0, AT_ONCE);
          if (bytesRead > 0) return controller.enqueue(buffer.subarray(0, bytesRead));
          await close();
          controller.close();
        } catch (error) {
          await close();
          throw error;
        }
      },
      cancel: close,
    },
    { highWaterMark: 0 },
  );
}
