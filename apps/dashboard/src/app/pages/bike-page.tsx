export function BikePage() {
  return null;
}
