import { render } from 'preact';
import { App } from './app.tsx';
import { keepPages } from './offline/registration.ts';
import './theme.css';

render(<App />, document.getElementById('app') as HTMLElement);
void keepPages();
