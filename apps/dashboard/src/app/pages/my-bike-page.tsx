export function MyBikePage() {
  return null;
}
