export function PitPage() {
  return null;
}
