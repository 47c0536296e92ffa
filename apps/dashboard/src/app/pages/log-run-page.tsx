export function LogRunPage() {
  return null;
}
