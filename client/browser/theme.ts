import { browserStorage } from './storage.ts';

/** How bright the screen is: as the device is set, in the sun (black on white), or at night. */
export const THEMES = ['system', 'sun', 'night'] as const;
export type Theme = (typeof THEMES)[number];

const KEY = 'theme';

export function savedTheme(): Theme {
  const kept = browserStorage.read(KEY);
  return THEMES.find((theme) => theme === kept) ?? 'system';
}

/** At the start, before anything is drawn; and at a choice. */
export function showTheme(theme: Theme): void {
  if (theme === 'system') delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = theme;
}

export function chooseTheme(theme: Theme): void {
  browserStorage.write(KEY, theme);
  showTheme(theme);
}
