/** How much one screen may send: a burst that refills over time. */
export interface MessageQuota {
  /** Counts one message of `bytes`; false when that exceeds the quota. `now` in ms. */
  takes(bytes: number, now: number): boolean;
}

export interface MessageQuotaLimits {
  readonly burstMessages: number;
  readonly messagesPerSecond: number;
  readonly burstBytes: number;
  readonly bytesPerSecond: number;
}

export function createMessageQuota(limits: MessageQuotaLimits, start: number): MessageQuota {
  let messages: number = limits.burstMessages;
  let left: number = limits.burstBytes;
  let at = start;
  return {
    takes(bytes, now) {
      const seconds = Math.max(0, now - at) / 1000;
      at = now;
      messages = Math.min(limits.burstMessages, messages + seconds * limits.messagesPerSecond) - 1;
      left = Math.min(limits.burstBytes, left + seconds * limits.bytesPerSecond) - bytes;
      return messages >= 0 && left >= 0;
    },
  };
}
