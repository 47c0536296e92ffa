export function TrackPage() {
  return null;
}
