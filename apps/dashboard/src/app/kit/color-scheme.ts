/** Where the kit keeps the choice of light, dark or as the device; its own name, since it reads it too. */
const CHOICE = 'mantine-color-scheme-value';
const ATTRIBUTE = 'data-mantine-color-scheme';
const DARK = '(prefers-color-scheme: dark)';

/** Puts the chosen scheme on the page before the first paint, also where the kit is not loaded, and follows the device. */
export function followColorScheme(): void {
  const device = window.matchMedia(DARK);
  const apply = () => document.documentElement.setAttribute(ATTRIBUTE, schemeOf(device.matches));
  apply();
  device.addEventListener('change', apply);
}

function schemeOf(deviceIsDark: boolean): 'light' | 'dark' {
  const choice = localStorage.getItem(CHOICE);
  if (choice === 'light' || choice === 'dark') return choice;
  return deviceIsDark ? 'dark' : 'light';
}
