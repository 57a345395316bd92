import { render } from 'preact';
import './style/page.css';
import { Page } from './parts/page.js';
import { begin } from './state/begin.js';

render(<Page />, document.getElementById('page')!);
void begin();
