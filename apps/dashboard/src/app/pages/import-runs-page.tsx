export function ImportRunsPage() {
  return null;
}
