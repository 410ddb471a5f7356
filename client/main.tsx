import { render } from 'preact';
import { App } from './app.tsx';
import { savedTheme, showTheme } from './browser/theme.ts';
import { keepPages } from './offline/registration.ts';
import './theme.css';

showTheme(savedTheme());
render(<App />, document.getElementById('app') as HTMLElement);
void keepPages();
