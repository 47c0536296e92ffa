/** The track looked at last, per team, on this device; a browser that keeps nothing only forgets it. */
const keyOf = (teamId: string) => `loamledger.workbench.track.${teamId}`;

export function rememberTrack(teamId: string, trackId: string): void {
  try {
    localStorage.setItem(keyOf(teamId), trackId);
  } catch {
    // Private windows refuse storage; the page works without.
  }
}

export function rememberedTrack(teamId: string): string | undefined {
  try {
    return localStorage.getItem(keyOf(teamId)) ?? undefined;
  } catch {
    return undefined;
  }
}
