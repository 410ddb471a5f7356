import { render } from 'preact';
import { App } from './app.tsx';
import { savedTheme, showTheme } from './browser/theme.ts';
import { drawInOwnLanguage } from './language/draw.ts';
import { LANGUAGE_CHANGED, onScreen, savedLanguage, speakOnScreen } from './language/languages.ts';
import { keepPages } from './offline/registration.ts';
import './theme.css';

showTheme(savedTheme());
drawInOwnLanguage();
const draw = () => render(<App key={onScreen().code} />, document.getElementById('app') as HTMLElement);
// English needs nothing more. A language that cannot be fetched now leaves the page in English.
void speakOnScreen(savedLanguage()).then(() => {
  draw();
  addEventListener(LANGUAGE_CHANGED, draw);
});
// The worker fetches every page for later: on a slow phone it would hold this one up.
if (document.readyState === 'complete') void keepPages();
else addEventListener('load', () => void keepPages(), { once: true });
