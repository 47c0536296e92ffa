export function NewSetupPage() {
  return null;
}
