/** Tells the other tabs of this browser that something on the device has changed. */
export function tellTabs(subject: string): void {
  const channel = new BroadcastChannel(`loamledger-${subject}`);
  channel.postMessage('changed');
  channel.close();
}

/** Calls `onChange` when another tab has changed something; ends with the function it returns. */
export function hearTabs(subject: string, onChange: () => void): () => void {
  const channel = new BroadcastChannel(`loamledger-${subject}`);
  channel.onmessage = onChange;
  return () => channel.close();
}
